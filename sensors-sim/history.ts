/** The shop's past: which firings lie behind it, and which are under way when it goes live. */
import { SimError } from './errors.ts';
import { ListedAgenda } from './operators/agenda.ts';
import type { PlannedFiring } from './operators/firing-desk.ts';
import {
  type FiringKind,
  FORGE_ANNEAL,
  FORGE_NORMALISE,
  type FurnaceName,
  OVEN_HARDEN,
  OVEN_TEMPER,
  type Plan,
} from './plans.ts';
import { seededRandom } from './random.ts';
import { Shop } from './shop.ts';

/** A firing of the past or one under way, as others need to know it. */
export interface HistoricFiring {
  readonly furnace: FurnaceName;
  readonly plan: string;
  readonly kind: FiringKind;
  /** `overshoot`: the heat was turned down too late. */
  readonly course: 'good' | 'overshoot';
  readonly startMs: number;
}

/** A firing that is over. */
export interface PastFiring extends HistoricFiring {
  /** When the last segment began: for a cooling outside the furnace, when the steel came out. */
  readonly lastSegmentMs: number;
  /** When the furnace itself had cooled. */
  readonly endMs: number;
}

/** Everything that lies between the start of the past and the start of the live shop. */
export interface HistoryPlan {
  readonly seed: number;
  readonly startMs: number;
  readonly nowMs: number;
  /** Oldest first. */
  readonly past: readonly PastFiring[];
  readonly live: readonly HistoricFiring[];
}

/** How the past is laid out. */
export interface HistoryOptions {
  /** Length of the past, 0 to 48 h. Default 10: room for five firings. */
  readonly hours?: number;
  /** What the forge and the oven are doing when the shop goes live; null: nothing. */
  readonly forgePlan?: Plan | null;
  readonly ovenPlan?: Plan | null;
}

interface Placed {
  readonly plan: Plan;
  readonly minutesBefore: number;
  readonly operator: 'good' | 'late';
}

/** Far enough apart that a furnace has cooled in between. */
const PAST: readonly Placed[] = [
  { plan: OVEN_HARDEN, minutesBefore: 585, operator: 'good' },
  { plan: FORGE_ANNEAL, minutesBefore: 345, operator: 'late' },
  { plan: OVEN_TEMPER, minutesBefore: 285, operator: 'good' },
  { plan: FORGE_NORMALISE, minutesBefore: 175, operator: 'good' },
];

/** Under way so long that the forge is about to reach its soak and the oven is in it. */
const FORGE_UNDER_WAY_MINUTES = 23;
const OVEN_UNDER_WAY_MINUTES = 70;
const DEFAULT_HOURS = 10;
const MOST_HOURS = 48;
/** A firing of the past begins up to this much earlier, so that seeds differ. */
const JITTER_SECONDS = 240;

/**
 * The past of a seed. Ends are found by running the shop, so they are those
 * that the published readings show.
 *
 * @param nowMs when the shop goes live, epoch ms, whole seconds
 * @throws SimError `bad-option` for a length outside 0 to 48 h or an instant between seconds
 */
export function historyPlan(seed: number, nowMs: number, options: HistoryOptions = {}): HistoryPlan {
  const { startMs, firings } = plannedHistory(seed, nowMs, options);
  const shop = new Shop({ seed, startMs, agenda: new ListedAgenda(firings) });
  while (shop.nowMs < nowMs) shop.step(1);
  const described = firings.map((firing) => describe(firing, shop));
  return {
    seed,
    startMs,
    nowMs,
    past: described.flatMap(({ endMs, lastSegmentMs, ...each }) =>
      endMs === null ? [] : [{ ...each, endMs, lastSegmentMs: lastSegmentMs ?? endMs }],
    ),
    live: described.flatMap(({ endMs, lastSegmentMs: _, ...each }) => (endMs === null ? [each] : [])),
  };
}

/** The firings themselves, oldest first, for an engine to run. */
export function plannedHistory(
  seed: number,
  nowMs: number,
  options: HistoryOptions = {},
): { startMs: number; firings: readonly PlannedFiring[] } {
  const hours = options.hours ?? DEFAULT_HOURS;
  if (!(hours >= 0 && hours <= MOST_HOURS)) {
    throw new SimError('bad-option', `A past of ${hours} h: it may be 0 to ${MOST_HOURS} h long`);
  }
  if (!Number.isInteger(nowMs / 1000)) {
    throw new SimError('bad-option', `The shop goes live on a whole second, not at ${nowMs} ms`);
  }
  const startMs = nowMs - Math.round(hours * 3600) * 1000;
  const random = seededRandom(seed, 'history');
  const past = PAST.map(({ plan, minutesBefore, operator }) => {
    const jitter = Math.round(random.between(0, JITTER_SECONDS));
    return { plan, operator, startMs: nowMs - (minutesBefore * 60 + jitter) * 1000 };
  }).filter((firing) => firing.startMs > startMs);
  const live = [
    underWay(options.forgePlan, FORGE_ANNEAL, FORGE_UNDER_WAY_MINUTES),
    underWay(options.ovenPlan, OVEN_TEMPER, OVEN_UNDER_WAY_MINUTES),
  ].flatMap((each) => (each === null ? [] : [each]));
  const begun = live.map(({ plan, minutes }) => {
    const operator = 'good' as const;
    return { plan, operator, startMs: Math.max(startMs, nowMs - minutes * 60_000) };
  });
  const firings = [...past, ...begun].sort((one, two) => one.startMs - two.startMs);
  return { startMs, firings };
}

function underWay(chosen: Plan | null | undefined, usual: Plan, minutes: number) {
  const plan = chosen === undefined ? usual : chosen;
  return plan === null ? null : { plan, minutes };
}

interface Described extends HistoricFiring {
  readonly lastSegmentMs: number | null;
  readonly endMs: number | null;
}

/** What became of a firing: a furnace that was still hot may have begun it later than planned. */
function describe(firing: PlannedFiring, shop: Shop): Described {
  const { plan, startMs } = firing;
  const mine = shop.events.filter((event) => event.furnace === plan.furnace && event.atMs >= startMs);
  const started = mine.find((event) => event.what === 'started' && event.plan === plan.name);
  const last = mine.find(
    (event) =>
      event.what === 'segment' && event.plan === plan.name && event.segmentIndex === plan.segments.length - 1,
  );
  const ended = mine.find((event) => event.what === 'ended' && event.plan === plan.name);
  return {
    furnace: plan.furnace,
    plan: plan.name,
    kind: plan.kind,
    course: firing.operator === 'late' ? 'overshoot' : 'good',
    startMs: started?.atMs ?? startMs,
    lastSegmentMs: last?.atMs ?? null,
    endMs: ended?.atMs ?? null,
  };
}
