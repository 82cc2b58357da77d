/**
 * The same question put to the judge itself: how long ahead it raises an overshoot, how often for nothing, and how
 * often the 80 % band that the wall draws holds the truth. Run with
 * `node --import tsx tests/bench/forecast-report/judged.ts [seeds]`; it takes some minutes and asserts nothing.
 */
import type { Reading } from '../../../hub/contract/reading.ts';
import { judgementOf, startFiring, stepFiring } from '../../../hub/firing/judge.ts';
import { inputsInOrder } from '../../../hub/firing/replay.ts';
import type { FiringCase } from '../../../hub/firing/types.ts';
import { FORGE_ANNEAL, FORGE_NORMALISE, OVEN_HARDEN, type Plan } from '../../../sensors-sim/plans.ts';
import { type Firing, fire, PUBLISHING, published, START } from './firings.ts';
import { watch } from './warnings.ts';

const HORIZONS = [30, 60, 120, 300] as const;
const CASES: readonly { readonly plan: Plan; readonly minutes: number }[] = [
  { plan: FORGE_ANNEAL, minutes: 55 },
  { plan: FORGE_NORMALISE, minutes: 50 },
  { plan: OVEN_HARDEN, minutes: 115 },
];

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

interface Outcome {
  readonly overAtMs: number | null;
  readonly warnedAtMs: number | null;
  readonly held: number[];
  readonly tried: number[];
}

function judge(firing: Firing, seed: number): Outcome {
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
  const { overAtMs } = watch(firing, how);
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

const seeds = Number(process.argv[2] ?? 10);
const all = { over: 0, warned: 0, inTime: 0, good: 0, false: 0 };
const held = HORIZONS.map(() => 0);
const tried = HORIZONS.map(() => 0);
console.log(`Node ${process.version}, ${process.platform} ${process.arch}; seeds 101 to ${100 + seeds}`);
for (const { plan, minutes } of CASES) {
  const leads: number[] = [];
  for (let seed = 101; seed <= 100 + seeds; seed++) {
    for (const operator of ['good', 'late'] as const) {
      const outcome = judge(fire({ plan, seed, operator, minutes }), seed);
      outcome.tried.forEach((n, i) => {
        tried[i] = (tried[i] ?? 0) + n;
        held[i] = (held[i] ?? 0) + (outcome.held[i] ?? 0);
      });
      if (outcome.overAtMs === null) {
        all.good += 1;
        if (outcome.warnedAtMs !== null) all.false += 1;
        continue;
      }
      all.over += 1;
      const lead = outcome.warnedAtMs === null ? null : (outcome.overAtMs - outcome.warnedAtMs) / 1000;
      if (lead === null || lead <= 0) continue;
      leads.push(lead);
      all.warned += 1;
      if (lead >= 60) all.inTime += 1;
    }
  }
  leads.sort((a, b) => a - b);
  console.log(
    `${plan.name}: seconds ahead, least / median / most: ${leads[0]} / ${leads[leads.length >> 1]} / ${leads.at(-1)}`,
  );
}
console.log(
  `overshot ${all.over}, warned ${all.warned}, 60 s ahead ${all.inTime}; good ${all.good}, false ${all.false}`,
);
console.log(
  HORIZONS.map(
    (h, i) => `${h} s: ${((100 * (held[i] ?? 0)) / (tried[i] ?? 1)).toFixed(0)} % of ${tried[i]}`,
  ).join('; '),
);
