/** What the behaviours of the plant make of the shop at one moment. */
import { HEAT_UP_PASCALS } from '../operators/forge-operator.ts';
import type { FurnaceName } from '../plans.ts';
import type { CylinderStart } from '../plant/cylinder.ts';
import { type Behaviour, isActive, named } from './behaviour.ts';

/** How far the watch over a furnace slips: as the plan of the firing says, not at all, or by some °C. */
export type Attention = 'as-planned' | 'good' | { readonly excessCelsius: number };

/** The state of the shop that is not physics. */
export interface Conditions {
  readonly attention: Readonly<Record<FurnaceName, Attention>>;
  /** No more than this gets through to the burner, Pa gauge. */
  readonly gasCeilingPascals: number;
  readonly equivalenceRatio: number;
  readonly escapeShare: number;
  readonly airChangesPerHour: number;
}

/** Door open and fan on; the burner tuned a little rich, as smiths do against scale. All invented: the
 * share of CO that escapes a forge is not known and has to be measured in a real shop. */
const ORDINARY = { equivalenceRatio: 1.03, escapeShare: 0.01, airChangesPerHour: 8 };

const UNDISTURBED: Conditions = {
  attention: { forge: 'as-planned', oven: 'as-planned' },
  gasCeilingPascals: Number.MAX_VALUE,
  ...ORDINARY,
};

/** The conditions some seconds after the start of the simulation. */
export function conditionsAt(behaviours: readonly Behaviour[], elapsedSeconds: number): Conditions {
  const active = behaviours.filter((each) => isActive(each, elapsedSeconds));
  if (active.length === 0) return UNDISTURBED;
  const air = named(active, 'co-buildup').at(-1) ?? ORDINARY;
  const ice = named(active, 'falling-gas').map((each) =>
    Math.max(
      each.floorPascals,
      HEAT_UP_PASCALS * 0.5 ** ((elapsedSeconds - each.startSeconds) / 60 / each.halvingMinutes),
    ),
  );
  return {
    attention: { forge: attention(active, 'forge'), oven: attention(active, 'oven') },
    gasCeilingPascals: Math.min(Number.MAX_VALUE, ...ice),
    equivalenceRatio: air.equivalenceRatio,
    escapeShare: air.escapeShare,
    airChangesPerHour: air.airChangesPerHour,
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

/** The cylinder that is put on in the given stretch of time, if any. */
export function cylinderChange(
  behaviours: readonly Behaviour[],
  fromSeconds: number,
  toSeconds: number,
): CylinderStart | null {
  const due = named(behaviours, 'weak-cylinder');
  return due.find((each) => each.startSeconds >= fromSeconds && each.startSeconds < toSeconds) ?? null;
}
