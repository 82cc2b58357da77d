/** What the behaviours of the plant make of the shop at one moment. */
import type { Habits } from '../operators/habits.ts';
import type { FurnaceName } from '../plans.ts';
import { VENTILATION } from './air-behaviours.ts';
import { type Behaviour, isActive, named } from './behaviour.ts';
import { type GasConditions, gasConditions, SOUND_SUPPLY } from './gas-conditions.ts';

/** How far the watch over a furnace slips: as the plan of the firing says, not at all, or by some °C. */
export type Attention = 'as-planned' | 'good' | { readonly excessCelsius: number };

/** The air of the shop, apart from what the furnaces do. */
export interface AirConditions {
  /** Above 1 the burner runs rich. */
  readonly equivalenceRatio: number;
  /** Share of the chamber's CO that does not burn at the mouth. */
  readonly escapeShare: number;
  readonly airChangesPerHour: number;
  /** CO from something that is no furnace, kg/s. */
  readonly otherKilogramsPerSecond: number;
}

/** The state of the shop that is not physics. */
export interface Conditions {
  readonly attention: Readonly<Record<FurnaceName, Attention>>;
  /** What is forced on the person at each furnace. */
  readonly habits: Readonly<Record<FurnaceName, Partial<Habits>>>;
  /** Share of what the load thermocouple shows that is the chamber. */
  readonly loadProbeAirShare: Readonly<Record<FurnaceName, number>>;
  readonly ovenUnevenness: number;
  readonly gas: GasConditions;
  readonly air: AirConditions;
}

/** Door open and fan on; the burner tuned a little rich, as smiths do against scale. All invented: the
 * share of CO that escapes a forge is not known and has to be measured in a real shop. */
const ORDINARY = { equivalenceRatio: 1.03, escapeShare: 0.01, airChangesPerHour: VENTILATION.fan };
/** A thermocouple wired to the piece sees a little of what is around it. */
const TIGHT_PROBE_SHARE = 0.03;

const UNDISTURBED: Conditions = {
  attention: { forge: 'as-planned', oven: 'as-planned' },
  habits: { forge: {}, oven: {} },
  loadProbeAirShare: { forge: TIGHT_PROBE_SHARE, oven: TIGHT_PROBE_SHARE },
  ovenUnevenness: 1,
  gas: SOUND_SUPPLY,
  air: { ...ORDINARY, otherKilogramsPerSecond: 0 },
};

/** The conditions some seconds after the start of the simulation. */
export function conditionsAt(behaviours: readonly Behaviour[], elapsedSeconds: number): Conditions {
  const active = behaviours.filter((each) => isActive(each, elapsedSeconds));
  if (active.length === 0) return UNDISTURBED;
  return {
    attention: { forge: attention(active, 'forge'), oven: attention(active, 'oven') },
    habits: { forge: habits(active, 'forge'), oven: habits(active, 'oven') },
    loadProbeAirShare: { forge: probeShare(active, 'forge'), oven: probeShare(active, 'oven') },
    ovenUnevenness: Math.max(1, ...named(active, 'uneven-oven').map((each) => each.factor)),
    gas: gasConditions(active, elapsedSeconds),
    air: airConditions(active),
  };
}

/** The narrower of two that touch the same thing counts. */
function airConditions(active: readonly Behaviour[]): AirConditions {
  const built = named(active, 'co-buildup').at(-1) ?? ORDINARY;
  const rich = named(active, 'rich-flame').at(-1);
  const vented = named(active, 'ventilation').at(-1);
  const other = named(active, 'other-co-source').reduce((sum, each) => sum + each.gramsPerHour, 0);
  const changes = vented === undefined ? built.airChangesPerHour : VENTILATION[vented.state];
  return {
    equivalenceRatio: rich?.equivalenceRatio ?? built.equivalenceRatio,
    escapeShare: built.escapeShare,
    airChangesPerHour: vented?.airChangesPerHour ?? changes,
    otherKilogramsPerSecond: other / 3.6e6,
  };
}

/** Of several, the one that began last counts. */
function attention(active: readonly Behaviour[], furnace: FurnaceName): Attention {
  const all = [...named(active, 'good-firing'), ...named(active, 'overshoot')];
  const mine = all.filter((each) => each.furnace === furnace);
  const last = mine.sort((one, two) => one.startSeconds - two.startSeconds).at(-1);
  if (last === undefined) return 'as-planned';
  return last.name === 'good-firing' ? 'good' : { excessCelsius: last.excessCelsius };
}

function habits(active: readonly Behaviour[], furnace: FurnaceName): Partial<Habits> {
  const slow = named(active, 'slow-operator').findLast((each) => each.furnace === furnace);
  const early = named(active, 'early-stop').findLast((each) => each.furnace === furnace);
  const byAir = named(active, 'goes-by-air').some((each) => each.furnace === furnace);
  return {
    ...(slow === undefined ? {} : { reactionSeconds: slow.reactionSeconds }),
    ...(early === undefined ? {} : { soakShare: early.soakShare }),
    ...(byAir ? { goesBy: 'chamber' as const } : {}),
  };
}

function probeShare(active: readonly Behaviour[], furnace: FurnaceName): number {
  const loose = named(active, 'loose-load-probe').findLast((each) => each.furnace === furnace);
  return loose?.airShare ?? TIGHT_PROBE_SHARE;
}
