import type { SupplySample } from '../physics/gas-supply/supply-sample.ts';
import { type SupplyVerdict, supplyTrouble } from '../physics/gas-supply/supply-trouble.ts';
import type { GasSample } from './types.ts';

/** The last minutes of a supply, as the recognition of its troubles takes them. */

/** Windows that are looked at, ms: a valve is shut in seconds, a cylinder chills over half an hour. */
const WINDOWS_MS = [300_000, 1_200_000, 2_400_000] as const;
/** Samples that are kept: the longest window in cells of ten seconds. */
export const MOST_SAMPLES = 241;
/** A scale that jumps by this between two cells was touched: a cylinder changed, a foot on it. Derived here. */
const TOUCHED_KILOGRAMS = 0.12;
const TOUCHED_SHARE_OF_GAP = 30_000;

export interface Window {
  readonly verdict: SupplyVerdict;
  /** The window is the shortest: what is seen in it happened together. */
  readonly together: boolean;
  readonly samples: readonly SupplySample[];
}

/**
 * What each window says. A window that holds no pressure at its end says nothing: nobody can see.
 */
export function windowsOf(all: readonly GasSample[]): readonly Window[] {
  const last = all.at(-1);
  if (last === undefined || last.outletPascals === null) return [];
  return WINDOWS_MS.flatMap((length): Window[] => {
    const within = all.filter(({ atMs }) => atMs > last.atMs - length);
    const samples = weighedOnlyIfStill(within.flatMap(seen));
    const [first] = samples;
    // Half filled it would be the shorter window over again.
    if (first === undefined || samples.length < 12 || last.atMs - first.atMs < length / 2) return [];
    const open = burnerOpen(within.filter(({ atMs }) => atMs >= last.atMs - length / 3));
    return [
      { verdict: supplyTrouble({ samples, burnerOpen: open }), together: length === WINDOWS_MS[0], samples },
    ];
  });
}

/** A chamber that lost this over a third of the window without rising has no flame. Common practice, no source. */
const COOLED_KELVIN = 8;
const COLD_CELSIUS = 60;

/**
 * In a stretch: wanted by a firing, open. Never wanted, and the chamber cold or falling all the while: shut, or so it
 * should be. Else nobody knows.
 */
function burnerOpen(stretch: readonly GasSample[]): boolean | null {
  if (stretch.at(-1)?.wanted === true) return true;
  const chamber = stretch.flatMap(({ chamberCelsius }) => (chamberCelsius === null ? [] : [chamberCelsius]));
  const [first, last] = [chamber[0], chamber.at(-1)];
  if (first === undefined || last === undefined || stretch.some(({ wanted }) => wanted === true)) return null;
  const highest = Math.max(...chamber);
  const falling = first >= highest - 1 && last < first - COOLED_KELVIN;
  return falling || (highest < COLD_CELSIUS && last - first < 2) ? false : null;
}

function seen(sample: GasSample): SupplySample[] {
  const { atMs, outletPascals, cylinderPascals, contentsKilograms, wallCelsius } = sample;
  if (outletPascals === null) return [];
  return [
    {
      atMs,
      outletPascals,
      cylinderPascals: cylinderPascals ?? null,
      contentsKilograms: contentsKilograms ?? null,
      wallCelsius: wallCelsius ?? null,
    },
  ];
}

/** A scale that was touched in the window tells nothing about the flow in it. */
function weighedOnlyIfStill(samples: readonly SupplySample[]): readonly SupplySample[] {
  const touched = samples.some((sample, i) => isTouch(samples[i - 1], sample));
  return touched ? samples.map((sample) => ({ ...sample, contentsKilograms: null })) : samples;
}

function isTouch(before: SupplySample | undefined, after: SupplySample): boolean {
  const [was, is] = [before?.contentsKilograms ?? null, after.contentsKilograms ?? null];
  if (before === undefined || was === null || is === null) return false;
  return after.atMs - before.atMs <= TOUCHED_SHARE_OF_GAP && Math.abs(is - was) > TOUCHED_KILOGRAMS;
}

/** Middle value. */
export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return ((sorted[Math.floor(middle)] ?? 0) + (sorted[Math.ceil(middle) - 1] ?? 0)) / 2;
}

/** Over this long, ms. */
const SCALE_FLOW_MS = 300_000;

/** Flow by the scale over the last minutes, kg/h; null: no scale, or too few readings. Positive: it loses. */
export function scaleFlow(samples: readonly GasSample[]): number | null {
  const last = samples.at(-1);
  if (last === undefined) return null;
  const weighed = samples.flatMap(({ atMs, contentsKilograms }) =>
    contentsKilograms === null || contentsKilograms === undefined || atMs < last.atMs - SCALE_FLOW_MS
      ? []
      : [{ atMs, kilograms: contentsKilograms }],
  );
  const third = Math.floor(weighed.length / 3);
  const [early, late] = [weighed.slice(0, third), weighed.slice(-third)];
  const [was, is] = [
    median(early.map(({ kilograms }) => kilograms)),
    median(late.map(({ kilograms }) => kilograms)),
  ];
  const [from, to] = [median(early.map(({ atMs }) => atMs)), median(late.map(({ atMs }) => atMs))];
  if (third < 4 || was === null || is === null || from === null || to === null) return null;
  return ((was - is) * 3.6e6) / (to - from);
}
