import type { Channel, Furnace } from '../../hub/contract/shop.ts';
import { type Api, makeApi } from './api-client.ts';

const HOUR_MS = 3_600_000;
/** So many firings have room before the present: the clock stands still, since every second of it costs a tick. */
const ROOM = 100;
const STEP_MS = 5000;
const RAMP_SECONDS = 120;
export const SOAK_SECONDS = 120;
export const TARGET = 800;

export interface BatchShop extends Api {
  readonly oven: Furnace;
  readonly chamber: Channel;
  readonly scheduleId: string;
  /** Records a firing, each an hour after the one before: the soak stands `off` °C beside its target. Returns its id. */
  record(of?: RecordedOf): Promise<string>;
}

export interface RecordedOf {
  readonly off?: number;
  readonly rampSeconds?: number;
  readonly pieces?: readonly object[];
  readonly scheduleId?: string;
  readonly title?: string;
  readonly target?: number;
  /** How long it is held, s: a load soaks by its core, which comes later than the air. */
  readonly holdSeconds?: number;
}

/** A shop with an oven that has been fired hour by hour. Readings every five seconds. */
export async function batchShop(): Promise<BatchShop> {
  const api = makeApi();
  const oven = api.furnace('Oven', 'electric-oven');
  const chamber = api.channel({ name: 'chamber', furnace: oven });
  const draft = {
    name: 'Harden',
    segments: [
      { kind: 'ramp', targetCelsius: TARGET, toleranceCelsius: 10 },
      { kind: 'soak', targetCelsius: TARGET, toleranceCelsius: 10, durationSeconds: SOAK_SECONDS },
    ],
  };
  const made = await api.call('POST', '/api/v1/schedules', draft);
  let recorded = 0;
  const record: BatchShop['record'] = async (of = {}) => {
    const { off = 0, rampSeconds = RAMP_SECONDS, pieces = [], title = '', target = TARGET } = of;
    const { holdSeconds = SOAK_SECONDS + 30 } = of;
    recorded += 1;
    const endedAt = api.clock.now() - (ROOM - recorded) * HOUR_MS;
    const startedAt = endedAt - (rampSeconds + holdSeconds) * 1000;
    const readings = [];
    for (let at = startedAt; at <= endedAt; at += STEP_MS) {
      const share = Math.min(1, (at - startedAt) / 1000 / rampSeconds);
      const value = 20 + (target + off - 20) * share;
      readings.push({ name: 'chamber', quantity: 'temperature', at, value, quality: 'good' } as const);
    }
    api.archive.commitIntake([{ node: 'bench-node', receivedAt: api.clock.now(), readings, refusals: [] }]);
    const scheduleId = of.scheduleId ?? made.body.id;
    const answer = await api.call('POST', '/api/v1/firings', {
      ...{ furnaceId: oven.id, scheduleId, title, startedAt, endedAt, pieces },
    });
    if (answer.status !== 201) throw new Error(`not recorded: ${JSON.stringify(answer.body)}`);
    return answer.body.id;
  };
  return { ...api, oven, chamber, scheduleId: made.body.id, record };
}
