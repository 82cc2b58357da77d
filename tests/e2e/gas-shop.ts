import type { RealHub } from '../hub/real-hub.ts';
import type { BenchNode } from './bench-node.ts';

const MINUTE_MS = 60_000;
const STEP_MS = 10_000;
/** 0.889 mm, 0.85, at 15 and at 6 psi: 1.06 and 0.70 kg/h (isentropic nozzle flow). */
const [HARD, HOLD] = [103_421, 41_368];

const CHANNELS = [
  { name: 'forge', label: 'Back wall', quantity: 'temperature' },
  { name: 'gas', label: 'Gas', quantity: 'pressure' },
  { name: 'scale', label: 'Scale', quantity: 'mass' },
] as const;

/** A forge with gauge and scale, with so many firings behind it, and one that burns now. */
export async function gasShop(hub: RealHub, node: BenchNode, count: number): Promise<string> {
  const gas = { boreMm: 0.889, lowPascals: 14_000, highPascals: 138_000 };
  const forge = await hub.api('POST', 'furnaces', {
    name: 'Forge',
    kind: 'gas-forge',
    ratedCelsius: 1300,
    gas,
  });
  await hub.api('PATCH', 'shop', {
    gasPricePerKilogram: 3.2,
    currency: '€',
    gasCylinderKilograms: 11,
    gasTareKilograms: 0,
  });
  for (const each of CHANNELS) {
    await hub.api('POST', 'channels', { node: 'bench', ...each, furnaceId: forge.id });
  }
  const schedule = await hub.api('POST', 'schedules', {
    name: 'Anneal 1084',
    segments: [
      { kind: 'ramp', targetCelsius: 860, toleranceCelsius: 15, rateCelsiusPerHour: null },
      { kind: 'soak', targetCelsius: 860, toleranceCelsius: 15, durationSeconds: 1200 },
    ],
  });
  const now = Math.floor(Date.now() / STEP_MS) * STEP_MS;
  let kilograms = 10.6;
  for (let n = 0; n <= count; n += 1) {
    const startedAt = now - (count - n) * 100 * MINUTE_MS - 25 * MINUTE_MS;
    const minutes = n === count ? 25 : 35 + ((n * 7) % 20);
    const { pack, left } = burn(startedAt, minutes, kilograms);
    kilograms = left;
    await node.backfill(pack);
    const draft = { furnaceId: forge.id, scheduleId: schedule.id, title: `Chisels ${n + 1}`, startedAt };
    const endedAt = n === count ? {} : { endedAt: startedAt + minutes * MINUTE_MS };
    await hub.api('POST', 'firings', { ...draft, ...endedAt });
  }
  // From now on the node says them itself, second by second.
  await node.set('forge', 858);
  await node.set('gas', HOLD, 'Pa');
  await node.set('scale', Math.round(kilograms * 100) / 100, 'kg');
  await hub.api('POST', 'gas/changes', {
    kilograms: 10.6,
    furnaceId: forge.id,
    by: 'Kim',
    note: 'new 11 kg',
  });
  return forge.id;
}

function burn(startedAt: number, minutes: number, from: number) {
  const pack = [];
  let kilograms = from;
  for (let at = startedAt; at <= startedAt + minutes * MINUTE_MS; at += STEP_MS) {
    const minute = (at - startedAt) / MINUTE_MS;
    const pascals = minute < 18 ? HARD : HOLD;
    kilograms -= ((minute < 18 ? 1.06 : 0.7) * STEP_MS) / 3.6e6;
    const t = at / 1000;
    pack.push({ n: 'forge', u: 'Cel', t, v: Math.min(858, 20 + minute * 50) });
    pack.push({ n: 'gas', u: 'Pa', t, v: pascals });
    pack.push({ n: 'scale', u: 'kg', t, v: Math.round(kilograms * 100) / 100 });
  }
  return { pack, left: kilograms };
}
