/** One simulated firing put through the judge itself: when it warned, and whether the wall's band held. */
import type { Reading } from '../../../hub/contract/reading.ts';
import { judgementOf, startFiring, stepFiring } from '../../../hub/firing/judge.ts';
import { inputsInOrder } from '../../../hub/firing/replay.ts';
import type { FiringCase } from '../../../hub/firing/types.ts';
import { HORIZONS } from './coverage.ts';
import { type Firing, PUBLISHING, published, START } from './firings.ts';
import { upperLimit } from './warnings.ts';

function caseOf(firing: Firing): FiringCase {
  const { plan } = firing.wish;
  return {
    firingId: 'bench',
    furnaceId: plan.furnace,
    furnaceName: plan.furnace,
    furnaceKind: plan.furnace === 'forge' ? 'gas-forge' : 'electric-oven',
    startedAt: START,
    schedule: {
      id: plan.name,
      name: plan.title,
      note: '',
      displayUnit: 'Cel',
      segments: [...plan.segments],
      version: 1,
      createdAt: START,
      archived: false,
    } as FiringCase['schedule'],
    watched: [{ id: 'chamber', staleAfterSeconds: 40, role: 'chamber' }],
    pieces: [],
    fit: null,
    settings: {
      overshootAheadSeconds: 120,
      soakStalledSeconds: 180,
      rampStalledSeconds: 600,
      language: 'en',
    },
  };
}

export interface Judged {
  /** When the chamber truly passed the upper tolerance, epoch ms; null: it never did. */
  readonly overAtMs: number | null;
  /** When the judge first raised an overshoot ahead, its on-delay included; null: never. */
  readonly warnedAtMs: number | null;
  /** Forecasts whose band held, and all, for each horizon. */
  readonly held: number[];
  readonly tried: number[];
}

/** Runs the judge through the heated part of a firing, with the chamber's thermocouple alone. */
export function judge(firing: Firing, seed: number): Judged {
  const how = PUBLISHING[seed % PUBLISHING.length];
  if (how === undefined) throw new Error('no way of publishing');
  const c = caseOf(firing);
  const readings = published(firing.readings.chamber, how).map(
    ({ atMs, celsius }): Reading & { channel: string } => ({
      channel: 'chamber',
      at: atMs,
      value: celsius,
      quality: 'good',
    }),
  );
  const to = firing.truth.findLast(({ segment }) => segment === 0 || segment === 1)?.atMs ?? START;
  const limit = upperLimit(firing);
  const over = firing.truth.find(
    ({ segment, chamber }) => (segment === 0 || segment === 1) && chamber > limit,
  );
  const overAtMs = over?.atMs ?? null;
  const held = HORIZONS.map(() => 0);
  const tried = HORIZONS.map(() => 0);
  let warnedAtMs: number | null = null;
  let state = startFiring(c);
  const span = {
    readings: [readings],
    confirmations: [],
    from: state.at,
    to,
    startedAt: START,
    tickMs: 1000,
  };
  for (const input of inputsInOrder(span)) {
    state = stepFiring(c, state, input);
    if (state.conditions['overshoot-ahead'].raised) warnedAtMs ??= state.at;
    const second = (state.at - START) / 1000;
    if (input.kind === 'tick' && second > 180 && second % 30 === 0)
      tally(firing, judgementOf(c, state), held, tried);
  }
  return { overAtMs, warnedAtMs, held, tried };
}

function tally(
  firing: Firing,
  { forecast, judgedTo }: ReturnType<typeof judgementOf>,
  held: number[],
  tried: number[],
): void {
  for (const [i, horizon] of HORIZONS.entries()) {
    const at = judgedTo + horizon * 1000;
    const point = forecast?.points.findLast((one) => Math.abs(one.at - at) <= 15_000);
    if (point === undefined) continue;
    const truth = firing.truth[Math.round((point.at - (firing.truth[0]?.atMs ?? 0)) / 1000)];
    if (truth === undefined || truth.segment === null || truth.segment > 1) continue;
    tried[i] = (tried[i] ?? 0) + 1;
    if (truth.chamber >= point.low && truth.chamber <= point.high) held[i] = (held[i] ?? 0) + 1;
  }
}
