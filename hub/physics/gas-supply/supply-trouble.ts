/**
 * Which trouble of a gas supply a window of pressure, mass and temperature shows.
 *
 * Every cause says what must be so for it; a cause against which evidence speaks
 * is out, and a verdict is given only when one is left. Otherwise the answer is
 * that it cannot be told, with what is still possible. Never a reason to relight:
 * what to do is to close the gas first.
 *
 * The rules are trade practice (common practice, no source): outlet falling with
 * the cylinder is boiling that cannot keep up; outlet falling at good cylinder
 * pressure is droop, hose or restriction; outlet creeping up with nothing flowing
 * is a leaking seat; a sudden fall to nothing is a shut valve, a tripped
 * excess-flow device, or an empty cylinder. That mass lost past a dead outlet is
 * gas in the room is derived here.
 */
import { type SupplyFeatures, supplyFeatures } from './supply-features.ts';
import type { SupplySample } from './supply-sample.ts';

/**
 * - `cylinder-chill`: liquid is there but too cold to boil fast enough
 * - `empty-cylinder`: no liquid left
 * - `shut-valve`: cut off at once before the outlet gauge; a tripped excess-flow device looks the same
 * - `regulator-creep`: pressure climbs with nothing flowing: a leaking seat, stop use
 * - `regulator-droop`: pressure lower because more flows than the regulator holds
 * - `restriction`: ice, a kinked hose, a half shut valve: less comes through at good cylinder pressure
 * - `gas-escaping`: the cylinder loses mass with nothing at the outlet or with the burner shut: a hose off or
 *   burst, a leak, or a dead gauge
 * - `turned-down`, `turned-up`: someone set it; no trouble, but it looks like one
 * - `lock-up`: the small step up of a regulator when the burner shuts; no trouble
 */
export const SUPPLY_CAUSES = [
  'cylinder-chill',
  'empty-cylinder',
  'shut-valve',
  'regulator-creep',
  'regulator-droop',
  'restriction',
  'gas-escaping',
  'turned-down',
  'turned-up',
  'lock-up',
] as const;
export type SupplyCause = (typeof SUPPLY_CAUSES)[number];

export interface SupplyQuestion {
  readonly samples: readonly SupplySample[];
  /** Whether gas is wanted at the burner in the last third of the window; null where nobody knows. */
  readonly burnerOpen: boolean | null;
}

export interface SupplyVerdict {
  /** `steady`: the outlet did not change and nothing speaks for a cause; `cannot-tell`: several causes fit, or none does. */
  readonly verdict: SupplyCause | 'steady' | 'cannot-tell';
  /** true when all evidence for the verdict is there, false when part of it was not measured. */
  readonly complete: boolean;
  /** What is not ruled out. */
  readonly possible: readonly SupplyCause[];
  /** Evidence against the others, by code. */
  readonly ruledOut: readonly { readonly cause: SupplyCause; readonly by: readonly string[] }[];
  readonly features: SupplyFeatures;
}

/** true: so; false: not so; null: cannot be told. */
type Evidence = Readonly<Record<string, boolean | null>>;
type Seen = SupplyFeatures & { readonly burnerOpen: boolean | null };

const not = (value: boolean | null): boolean | null => (value === null ? null : !value);
const fellAtOutlet = ({ outlet }: Seen): boolean => outlet !== 'steady' && outlet !== 'rose';
const lostOutlet = (seen: Seen): boolean => fellAtOutlet(seen) && seen.outletGone;
const fellAs = ({ outlet }: Seen, shape: 'sagged' | 'dropped'): boolean | null =>
  outlet === 'fell' ? null : outlet === shape;
const flowIs = ({ flow }: Seen, ...wanted: readonly string[]): boolean | null =>
  flow === null ? null : wanted.includes(flow);
/** Evidence that speaks only when it speaks against. */
const unless = (against: boolean | null): boolean => against !== true;

const RULES: Readonly<Record<SupplyCause, (seen: Seen) => Evidence>> = {
  'cylinder-chill': (seen) => ({
    'outlet-sagged': fellAs(seen, 'sagged'),
    'liquid-left': seen.liquidLeft,
    'cylinder-cannot-feed': not(seen.cylinderFeeds),
    'flow-not-rising': unless(flowIs(seen, 'rose')),
    'gas-wanted': unless(not(seen.burnerOpen)),
  }),
  'empty-cylinder': (seen) => ({
    'outlet-fell': fellAtOutlet(seen),
    'no-liquid-left': not(seen.liquidLeft),
    'flow-less': unless(flowIs(seen, 'rose', 'steady')),
    'gas-wanted': unless(not(seen.burnerOpen)),
  }),
  'shut-valve': (seen) => ({
    'outlet-dropped': fellAs(seen, 'dropped'),
    'outlet-gone': seen.outletGone,
    'liquid-left': seen.liquidLeft,
    'flow-stopped': flowIs(seen, 'stopped', 'none'),
  }),
  'regulator-creep': (seen) => ({
    'outlet-rose': seen.outlet === 'rose',
    'still-rising': seen.stillRising,
    'nothing-flows': not(seen.burnerOpen) ?? flowIs(seen, 'stopped', 'none'),
  }),
  'regulator-droop': (seen) => ({
    'outlet-fell': fellAtOutlet(seen),
    'outlet-not-gone': !seen.outletGone,
    'flow-rose': flowIs(seen, 'rose'),
    'cylinder-feeds': seen.cylinderFeeds,
  }),
  restriction: (seen) => ({
    'outlet-fell': fellAtOutlet(seen),
    'outlet-not-gone': !seen.outletGone,
    'flow-fell': flowIs(seen, 'fell'),
    'cylinder-feeds': seen.cylinderFeeds,
    'liquid-left': unless(not(seen.liquidLeft)),
  }),
  'gas-escaping': (seen) => ({
    'nothing-should-flow': lostOutlet(seen) || seen.burnerOpen === false,
    // With pressure at the outlet only a scale that shows it can accuse a leak.
    'flow-goes-on': lostOutlet(seen)
      ? flowIs(seen, 'steady', 'rose')
      : flowIs(seen, 'fell', 'steady', 'rose') === true,
    'liquid-left': unless(not(seen.liquidLeft)),
  }),
  'turned-down': (seen) => ({
    'outlet-dropped': fellAs(seen, 'dropped'),
    'outlet-not-gone': !seen.outletGone,
    'flow-fell': flowIs(seen, 'fell'),
    'cylinder-feeds': seen.cylinderFeeds,
    'liquid-left': unless(not(seen.liquidLeft)),
  }),
  'turned-up': (seen) => ({
    'outlet-rose': seen.outlet === 'rose',
    'gas-wanted': seen.burnerOpen ?? flowIs(seen, 'rose', 'steady', 'fell'),
    'flow-rose': unless(flowIs(seen, 'stopped', 'none', 'fell')),
  }),
  'lock-up': (seen) => ({
    'outlet-rose': seen.outlet === 'rose',
    'no-longer-rising': !seen.stillRising,
    'nothing-flows': not(seen.burnerOpen) ?? flowIs(seen, 'stopped', 'none'),
  }),
};

/**
 * Tells the causes apart on a window that begins before the trouble and ends in it.
 *
 * @throws PhysicsError `bad-input` for fewer than 12 samples or time that does not rise
 */
export function supplyTrouble(question: SupplyQuestion): SupplyVerdict {
  const features = supplyFeatures(question.samples);
  const seen = { ...features, burnerOpen: question.burnerOpen };
  const heard = SUPPLY_CAUSES.map((cause) => ({ cause, evidence: RULES[cause](seen) }));
  const possible = heard.filter(({ evidence }) => against(evidence).length === 0);
  const [only] = possible;
  const isOne = possible.length === 1 && only !== undefined;
  return {
    verdict: isOne ? only.cause : features.outlet === 'steady' ? 'steady' : 'cannot-tell',
    complete: isOne && Object.values(only.evidence).every((value) => value === true),
    possible: possible.map(({ cause }) => cause),
    ruledOut: heard
      .filter(({ evidence }) => against(evidence).length > 0)
      .map(({ cause, evidence }) => ({ cause, by: against(evidence) })),
    features,
  };
}

function against(evidence: Evidence): string[] {
  return Object.entries(evidence).flatMap(([code, value]) => (value === false ? [code] : []));
}
