import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import type { Params } from '../contract/alarm.ts';
import { SUPPLY_CUTS, type SupplySample } from '../physics/gas-supply/supply-sample.ts';
import type { SupplyVerdict } from '../physics/gas-supply/supply-trouble.ts';
import { propaneVapourPressurePascals, STANDARD_ATMOSPHERE_PASCALS } from '../physics/propane.ts';
import { FLAME_PASCALS } from './flow.ts';
import type { GasSample, Trouble, TroubleKind } from './types.ts';
import { type Window, windowsOf } from './window.ts';

/**
 * Which trouble of the supply holds. One at a time: the recognition tells them apart, and what it cannot tell apart
 * is told as what it is, gas that is gone for a cause unknown.
 */

interface Signal {
  readonly kind: TroubleKind;
  readonly beforePascals: number;
  readonly params: Params;
}

/** The outlet is back when it stands at this share of what it was. Common practice, no source. */
const BACK_SHARE = 0.85;
/** A climb has ended when the outlet fell by this share from where it was. */
const CREPT_BACK_SHARE = 0.5;
/** What is seen no more for so long, without its own end, is over. */
const LONGEST_UNSEEN_MS = 1_200_000;

const LOOK_EVERY_MS = 30_000;

/** The next trouble; null: none. Pure. */
export function stepTrouble(old: Trouble | null, samples: readonly GasSample[], at: number): Trouble | null {
  const now = samples.at(-1);
  // Blind: what stands stays, what was about to be told starts anew.
  if (now === undefined || now.outletPascals === null) return old?.raised === true ? old : null;
  // Windows of minutes need no look every ten seconds, and they are what the judge's time goes into.
  if (at % LOOK_EVERY_MS !== 0) return old;
  const found = signalOf(samples);
  if (old === null || !old.raised) return pending(old, found, at);
  if (found !== null && (found.kind === old.kind || isNews(old, found))) return told(old, found, at);
  return isOver(old, samples, at) ? null : old;
}

function pending(old: Trouble | null, found: Signal | null, at: number): Trouble | null {
  if (found === null) return null;
  const same = old !== null && old.kind === found.kind;
  const since = same ? old.since : at;
  const raised = at - since >= ALARM_DEFINITIONS[found.kind].onDelayMs + recognitionMs(found.kind);
  return { ...found, since, raised, seenAt: at };
}

/** Danger is told without a delay of the alarm's own, so the recognition itself asks twice. */
function recognitionMs(kind: TroubleKind): number {
  return kind === 'gas-escaping' ? 60_000 : 0;
}

/** Worse than what stands, or at last the cause of what had none. */
function isNews({ kind }: Trouble, found: Signal): boolean {
  if (kind === found.kind || kind === 'gas-escaping') return false;
  // More flows while a regulator droops: that is the droop. What it flows to is for the smith to say.
  if (kind === 'gas-lost' || (found.kind === 'gas-escaping' && kind !== 'gas-droop')) return true;
  const gone = found.kind === 'gas-empty' || found.kind === 'gas-valve-shut';
  return gone && (kind === 'gas-restricted' || kind === 'gas-droop' || kind === 'gas-chill');
}

function told(old: Trouble, found: Signal, at: number): Trouble {
  if (found.kind !== old.kind)
    return { ...found, beforePascals: old.beforePascals, since: at, raised: true, seenAt: at };
  return { ...old, seenAt: at };
}

function isOver(old: Trouble, samples: readonly GasSample[], at: number): boolean {
  const now = samples.at(-1);
  const outlet = now?.outletPascals ?? null;
  if (now === undefined || outlet === null) return false;
  const silent = at - old.seenAt;
  switch (old.kind) {
    case 'gas-creep':
      return outlet < Math.max(FLAME_PASCALS, old.beforePascals * CREPT_BACK_SHARE);
    case 'gas-escaping':
      // Only a scale that has stood still for minutes says that it has ended; that it is safe it never says.
      return silent > 300_000;
    case 'gas-empty':
    case 'gas-valve-shut':
    case 'gas-chill':
    case 'gas-restricted':
    case 'gas-droop':
    case 'gas-lost': {
      if (now.wanted !== true) return true;
      const back = outlet >= Math.max(FLAME_PASCALS, old.beforePascals * BACK_SHARE);
      return (back && silent > 30_000) || (silent > LONGEST_UNSEEN_MS && outlet > FLAME_PASCALS);
    }
    default:
      return old.kind satisfies never;
  }
}

function signalOf(samples: readonly GasSample[]): Signal | null {
  const now = { wanted: samples.at(-1)?.wanted === true, lacks: lacksHeat(samples) };
  const signals = windowsOf(samples).flatMap((window) => signalFrom(window, now) ?? []);
  // A cause from any window says more than "gone" from another.
  return signals.find(({ kind }) => kind !== 'gas-lost') ?? signals[0] ?? null;
}

/** What of the moment the verdict is weighed with. */
interface Now {
  readonly wanted: boolean;
  readonly lacks: boolean;
}

/** Down by this from its highest of the last ten minutes, and still falling. Common practice, no source. */
const COOLS_KELVIN = 12;
/** Short of the target by this, and climbing by less than this a minute. Common practice, no source. */
const SHORT_KELVIN = 20;
const CLIMB_KELVIN = 2;

/**
 * A smith who turns the gas down at the target looks like a kinked hose to every gauge; the furnace tells them apart:
 * under the smith's hand it holds, under the kink it cools, or stands short of the target.
 */
function lacksHeat(samples: readonly GasSample[]): boolean {
  const last = samples.at(-1);
  if (last === undefined || last.wanted !== true || last.chamberCelsius === null) return false;
  const now = last.chamberCelsius;
  const recent = samples.filter(
    ({ atMs, chamberCelsius }) => atMs > last.atMs - 600_000 && chamberCelsius !== null,
  );
  const before = (ms: number) =>
    recent.findLast(({ atMs }) => atMs <= last.atMs - ms)?.chamberCelsius ?? null;
  const [minuteAgo, earlier] = [before(60_000), before(180_000)];
  if (minuteAgo === null || earlier === null) return false;
  const highest = Math.max(...recent.map(({ chamberCelsius }) => chamberCelsius ?? 0));
  const cools = highest - now > COOLS_KELVIN && now < minuteAgo - 1;
  const short = last.targetCelsius !== null && now < last.targetCelsius - SHORT_KELVIN;
  return cools || (short && now - earlier < 3 * CLIMB_KELVIN);
}

function signalFrom(window: Window, now: Now): Signal | null {
  const { verdict, samples } = window;
  const { features } = verdict;
  const kind = kindOf(window, now);
  if (kind === null) return null;
  const left = samples.at(-1)?.contentsKilograms ?? null;
  const params = {
    outletPascals: features.outletAfterPascals,
    beforePascals: features.outletBeforePascals,
    kilogramsPerHour: features.kilogramsPerHourAfter,
    leftKilograms: left,
    complete: verdict.complete ? 1 : 0,
    possible: verdict.possible.join(' '),
    where: features.outlet === 'steady' ? 'jet' : 'supply',
  };
  const rose = features.outlet === 'rose';
  return { kind, beforePascals: rose ? features.outletAfterPascals : features.outletBeforePascals, params };
}

function kindOf({ verdict, together, samples }: Window, { wanted, lacks }: Now): TroubleKind | null {
  const { features } = verdict;
  switch (verdict.verdict) {
    case 'gas-escaping':
      return verdict.complete && leaks(verdict) ? 'gas-escaping' : null;
    case 'regulator-creep':
      return features.outletAfterPascals > FLAME_PASCALS ? 'gas-creep' : null;
    case 'cylinder-chill':
      return wanted && verdict.complete && onBoilingLine(samples)
        ? 'gas-chill'
        : goneOf(verdict, samples, wanted);
    case 'empty-cylinder':
      return wanted && features.liquidLeft === false ? 'gas-empty' : goneOf(verdict, samples, wanted);
    case 'shut-valve':
      return wanted && verdict.complete ? 'gas-valve-shut' : goneOf(verdict, samples, wanted);
    case 'regulator-droop':
      // A leak, and a smith who turns down a while later, look the same over a long window.
      return wanted && together && verdict.complete ? 'gas-droop' : null;
    case 'restriction':
      return lacks && verdict.complete ? 'gas-restricted' : null;
    case 'steady':
      if (features.flow === 'rose') return takesMore(verdict) ? 'gas-escaping' : null;
      return lacks && features.flow === 'fell' ? 'gas-restricted' : null;
    case 'turned-down':
    case 'turned-up':
    case 'lock-up':
      return null;
    case 'cannot-tell':
      return goneOf(verdict, samples, wanted);
    default:
      return verdict.verdict satisfies never;
  }
}

/** More than a scale's wander, and more than a pilot flame. */
function leaks({ features }: SupplyVerdict): boolean {
  return (features.kilogramsPerHourAfter ?? 0) > SUPPLY_CUTS.leastKilogramsPerHour;
}

/** At the same pressure more leaves the cylinder than before: a leak, or a burner that nobody has entered. */
function takesMore({ features }: SupplyVerdict): boolean {
  const more = (features.kilogramsPerHourAfter ?? 0) - (features.kilogramsPerHourBefore ?? 0);
  return more > MORE_KILOGRAMS_PER_HOUR;
}

/** Well above what a scale's wander looks like over minutes. Derived here. */
const MORE_KILOGRAMS_PER_HOUR = 0.25;
/**
 * A gauge that shows less than this share of what the wall's temperature would boil is behind a shut valve. So near
 * to the boiling point that nothing comes out anyway, the gauge says nothing about the valve.
 */
const BOILS_SHARE = 0.3;
const LEAST_BOIL_PASCALS = 60_000;

function onBoilingLine(samples: readonly SupplySample[]): boolean {
  const { cylinderPascals = null, wallCelsius = null } = samples.at(-1) ?? {};
  if (cylinderPascals === null || wallCelsius === null || wallCelsius < -95 || wallCelsius > 90) return true;
  const boils = propaneVapourPressurePascals(wallCelsius) - STANDARD_ATMOSPHERE_PASCALS;
  return boils < LEAST_BOIL_PASCALS || cylinderPascals >= boils * BOILS_SHARE;
}

function goneOf(
  { features }: SupplyVerdict,
  samples: readonly SupplySample[],
  wanted: boolean,
): TroubleKind | null {
  const fell = features.outlet !== 'steady' && features.outlet !== 'rose';
  const still = (samples.at(-1)?.outletPascals ?? 0) < FLAME_PASCALS;
  return wanted && fell && still && features.outletGone ? 'gas-lost' : null;
}
