import type { z } from 'zod';
import type { Answer } from '../../hub/contract/compute/estimate.ts';
import type { TemperingCurveAnswer } from '../../hub/contract/compute/tempering.ts';

/** The tempering curve as runs that can be drawn, and who speaks where. Pure; °C and HRC. */

export type TemperPoint = z.infer<typeof TemperingCurveAnswer>['points'][number];

export interface HardnessPoint {
  readonly celsius: number;
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** What to know of a stretch of the curve. */
export interface Remark {
  readonly text: string;
  readonly fromCelsius: number;
  readonly toCelsius: number;
}

/** Where one formula speaks without a gap. */
export interface FormulaRun {
  readonly formula: string;
  readonly standing: NonNullable<Answer['standing']>;
  readonly source: string;
  readonly fromCelsius: number;
  readonly toCelsius: number;
  readonly cautions: readonly Remark[];
  readonly points: readonly HardnessPoint[];
}

/** Runs of neighbouring points by the same formula. Points without a number break a run: nothing is drawn across. */
export function formulaRuns(points: readonly TemperPoint[]): readonly FormulaRun[] {
  const runs: FormulaRun[] = [];
  let open = false;
  for (const { celsius, hardnessHrc } of points) {
    if (hardnessHrc.value === null) {
      open = false;
      continue;
    }
    const { low, value, high, formula, standing, source, flags } = hardnessHrc;
    const point = { celsius, low, value, high };
    const remarks = flags.map(({ message }) => ({ text: message, fromCelsius: celsius, toCelsius: celsius }));
    const before = runs.at(-1);
    if (open && before?.formula === formula) {
      const cautions = joined([...before.cautions, ...remarks]);
      runs[runs.length - 1] = { ...before, toCelsius: celsius, cautions, points: [...before.points, point] };
    } else {
      const ends = { fromCelsius: celsius, toCelsius: celsius };
      runs.push({ formula, standing, source, ...ends, cautions: remarks, points: [point] });
    }
    open = true;
  }
  return runs;
}

/** Why some points have no number, each reason once. */
export function refusals(points: readonly TemperPoint[]): readonly Remark[] {
  return joined(
    points.flatMap(({ celsius, hardnessHrc }) =>
      hardnessHrc.value === null
        ? [{ text: hardnessHrc.reason.message, fromCelsius: celsius, toCelsius: celsius }]
        : [],
    ),
  );
}

/** Each remark once, from the first temperature it was made at to the last. */
function joined(remarks: readonly Remark[]): readonly Remark[] {
  const found = new Map<string, Remark>();
  for (const remark of remarks) {
    const known = found.get(remark.text);
    found.set(remark.text, known ? { ...known, toCelsius: remark.toCelsius } : remark);
  }
  return [...found.values()];
}

/** Hardness at the foot and the top of the drawing: multiples of 10 around every band. */
export function hardnessEnds(runs: readonly FormulaRun[]): { readonly low: number; readonly high: number } {
  const points = runs.flatMap((run) => run.points);
  const low = Math.min(60, ...points.map((point) => point.low));
  const high = Math.max(20, ...points.map((point) => point.high));
  return { low: Math.floor(low / 10) * 10, high: Math.ceil(high / 10) * 10 };
}

type Place = (value: number) => number;

/** The band of a run as a closed SVG path. */
export function bandOutline(points: readonly HardnessPoint[], x: Place, y: Place): string {
  const there = points.map((point) => `${x(point.celsius).toFixed(1)} ${y(point.high).toFixed(1)}`);
  const back = [...points]
    .reverse()
    .map((point) => `${x(point.celsius).toFixed(1)} ${y(point.low).toFixed(1)}`);
  return points.length === 0 ? '' : `M${[...there, ...back].join('L')}Z`;
}

/** The middle line of a run as an SVG path. */
export function middleLine(points: readonly HardnessPoint[], x: Place, y: Place): string {
  const along = points.map((point) => `${x(point.celsius).toFixed(1)} ${y(point.value).toFixed(1)}`);
  return points.length === 0 ? '' : `M${along.join('L')}`;
}
