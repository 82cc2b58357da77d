import type { RealHub } from '../hub/real-hub.ts';
import type { BenchNode } from './bench-node.ts';

const MINUTE_MS = 60_000;
const STEP_MS = 10_000;
const RAMP_MINUTES = 6;
const TARGET = 830;

export interface Batch {
  readonly scheduleId: string;
  readonly furnaceId: string;
  /** The oldest first. */
  readonly firings: readonly string[];
}

/** A number between -1 and 1 that is always the same for the same place. */
const scatter = (n: number): number => Math.sin(n * 12.9898 + 78.233) * Math.cos(n * 4.1414);

/**
 * A shop with so many firings of one schedule behind it, two hours apart. From the changed one on, the thermocouple
 * reads six degrees higher; the last overshoots.
 */
export async function batchShop(
  hub: RealHub,
  node: BenchNode,
  count: number,
  changed: number,
): Promise<Batch> {
  const oven = await hub.api('POST', 'furnaces', { name: 'Oven', kind: 'electric-oven', ratedCelsius: 1200 });
  const channel = { node: 'bench', name: 'forge', label: 'Back wall', quantity: 'temperature' };
  await hub.api('POST', 'channels', { ...channel, furnaceId: oven.id });
  const schedule = await hub.api('POST', 'schedules', {
    name: 'Harden 1095',
    segments: [
      { kind: 'ramp', targetCelsius: TARGET, toleranceCelsius: 10, rateCelsiusPerHour: null },
      { kind: 'soak', targetCelsius: TARGET, toleranceCelsius: 10, durationSeconds: 600 },
    ],
  });
  const now = Math.floor(Date.now() / STEP_MS) * STEP_MS;
  const firings: string[] = [];
  for (let n = 0; n < count; n += 1) {
    const endedAt = now - (count - n) * 120 * MINUTE_MS;
    const minutes = RAMP_MINUTES + scatter(n + 50) + 11;
    const startedAt = endedAt - Math.round(minutes * 6) * STEP_MS;
    const off = 2 * scatter(n) + (n >= changed ? 6 : 0);
    const pack = [];
    for (let at = startedAt; at <= endedAt; at += STEP_MS) {
      const minute = (at - startedAt) / MINUTE_MS;
      const late = minutes - 11;
      const bump = n === count - 1 && minute > late && minute < late + 2 ? 9 : 0;
      const v =
        minute < late
          ? 20 + ((TARGET + off - 20) * minute) / late
          : TARGET + off + bump + scatter(minute + n);
      pack.push({ n: 'forge', u: 'Cel', t: at / 1000, v });
    }
    await node.backfill(pack);
    const title = `Batch ${n + 1}`;
    const draft = { furnaceId: oven.id, scheduleId: schedule.id, title, startedAt, endedAt };
    firings.push((await hub.api('POST', 'firings', draft)).id);
    if (n === changed - 1) {
      const change = { kind: 'probe', furnaceId: oven.id, text: 'type N in place of type K' };
      await hub.api('POST', 'shop-changes', { ...change, at: endedAt + MINUTE_MS });
    }
  }
  return { scheduleId: schedule.id, furnaceId: oven.id, firings };
}
