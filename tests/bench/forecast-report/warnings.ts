/** Overshoot warnings: how long ahead, and how many that nothing followed. */
import { crossing, OVERSHOOT_WARNING } from '../../../hub/physics/forecast/crossing.ts';
import {
  type Forecaster,
  observe,
  standing,
  startForecaster,
} from '../../../hub/physics/forecast/forecaster.ts';
import {
  type Firing,
  PLACES,
  type Place,
  type Publishing,
  published,
  TRAITS,
  type TruePoint,
} from './firings.ts';

export interface WarningOutcome {
  readonly firing: Firing;
  /** When a true temperature first passed the upper tolerance, epoch ms; null: it never did. */
  readonly overAtMs: number | null;
  /** First warning before that; null: none. */
  readonly warnedAtMs: number | null;
}

/** Farther below the limit than this nothing is asked: two minutes of 0.8 °C/s. Saves time, changes nothing. */
const FAR_CELSIUS = 100;

/** Runs the forecasters of both places through the heated part of a firing. */
export function watch(firing: Firing, how: Publishing): WarningOutcome {
  const limit = upperLimit(firing);
  const heated = firing.truth.filter(({ segment }) => segment === 0 || segment === 1);
  const overAtMs = heated.find(({ chamber, steel }) => Math.max(chamber, steel) > limit)?.atMs ?? null;
  const untilMs = overAtMs ?? heated.at(-1)?.atMs ?? 0;
  const warnings = PLACES.map((place) => firstWarning(firing, place, how, limit, untilMs));
  const found = warnings.filter((instant) => instant !== null);
  return { firing, overAtMs, warnedAtMs: found.length > 0 ? Math.min(...found) : null };
}

function firstWarning(
  firing: Firing,
  place: Place,
  how: Publishing,
  limitCelsius: number,
  untilMs: number,
): number | null {
  let forecaster: Forecaster | null = null;
  for (const reading of published(firing.readings[place], how)) {
    if (reading.atMs >= untilMs) return null;
    forecaster = forecaster === null ? startForecaster(TRAITS[place], reading) : observe(forecaster, reading);
    if (standing(forecaster).celsius < limitCelsius - FAR_CELSIUS) continue;
    const { withinSeconds, probability } = OVERSHOOT_WARNING;
    const ahead = crossing(forecaster, { limitCelsius, direction: 'rising', withinSeconds });
    if (ahead.probability >= probability) return reading.atMs;
  }
  return null;
}

/** Upper end of the soak's tolerance, °C. */
export function upperLimit(firing: Firing): number {
  const soak = firing.wish.plan.segments.find((segment) => segment.kind === 'soak');
  if (soak?.kind !== 'soak') throw new Error(`${firing.wish.plan.name} has no soak`);
  return soak.targetCelsius + soak.toleranceCelsius;
}

/** Seconds of warning before the overshoot; null without an overshoot or a warning. */
export function leadSeconds({ overAtMs, warnedAtMs }: WarningOutcome): number | null {
  return overAtMs === null || warnedAtMs === null ? null : (overAtMs - warnedAtMs) / 1000;
}

/**
 * Seconds before the overshoot at which this firing first differed, by a twentieth of a degree, from the good firing
 * of the same seed. The same chance rules both, so nobody could have told them apart before.
 */
export function knowableSeconds(late: WarningOutcome, good: Firing): number | null {
  if (late.overAtMs === null) return null;
  const partedMs = firstDifferenceMs(late.firing, good);
  return partedMs === null ? null : (late.overAtMs - partedMs) / 1000;
}

/** When the chambers of two firings first differed, epoch ms; null: they never did. */
export function firstDifferenceMs(one: Firing, two: Firing): number | null {
  return one.truth.find((point, i) => differs(point, two.truth[i]))?.atMs ?? null;
}

function differs(one: TruePoint, two: TruePoint | undefined): boolean {
  return two === undefined || Math.abs(one.chamber - two.chamber) > 0.05;
}
