import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase } from '../../hub/contract/units.ts';
import { unitNamed } from '../words/format.ts';
import { coolingWords } from '../words/heat.ts';
import { duration } from '../words/time.ts';
import type { CoolAnswer, CoolingResult } from './ask-cooling.ts';
import type { PlotLine, PlotPicture } from './plot-types.ts';
import type { Cooling } from './questions.ts';

/** Every way to cool in one picture, from seconds to days. Pure. */

const FIRST_SECOND = 1;
const GRID = 260;
const TICKS = [1, 10, 60, 600, 3600, 36_000, 172_800];

/** Values of a curve at other times, straight between its points; null before its first and after its last. */
export function resampled(
  seconds: readonly number[],
  values: readonly number[],
  grid: readonly number[],
): (number | null)[] {
  let next = 0;
  return grid.map((at) => {
    while (next < seconds.length && (seconds[next] ?? 0) < at) next += 1;
    const [before, after] = [seconds[next - 1], seconds[next]];
    const [low, high] = [values[next - 1], values[next]];
    if (after === undefined || high === undefined) return null;
    if (before === undefined || low === undefined) return after === at ? high : null;
    return low + ((high - low) * (at - before)) / (after - before);
  });
}

/** Times that are evenly far apart as ratios, from one second to the end of the slowest. */
function gridTo(end: number): number[] {
  const ratio = Math.max(10, end) / FIRST_SECOND;
  return Array.from({ length: GRID }, (_, i) => FIRST_SECOND * ratio ** (i / (GRID - 1)));
}

export function coolingPicture(answer: CoolAnswer, picked: Cooling, unit: DisplayUnit): PlotPicture {
  const show = (celsius: number) => fromBase(celsius, unitNamed(unit));
  const drawn = answer.results.filter(({ curves }) => curves !== null);
  const end = Math.max(...drawn.map(lastSecond), 60);
  const grid = gridTo(end);
  const on = (curve: { readonly seconds: readonly number[]; readonly core: readonly number[] } | null) =>
    curve === null
      ? grid.map(() => null)
      : resampled(curve.seconds, curve.core, grid).map((value) => (value === null ? null : show(value)));
  const own = drawn.find(({ cooling }) => cooling === picked) ?? null;
  const surface = own?.curves?.surface ? { seconds: own.curves.seconds, core: own.curves.surface } : null;
  const others = drawn.filter(({ cooling }) => cooling !== picked);
  const lines: PlotLine[] = [
    { look: 'edge', words: '', y: on(own?.slowest ?? null) },
    { look: 'edge', words: '', y: on(own?.fastest ?? null) },
    { look: 'surface', words: '', y: on(surface) },
    { look: 'core', words: coolingWords.short[picked], wordsAt: HEIGHTS[picked], y: on(own?.curves ?? null) },
    ...others.map(({ cooling, curves }) => line(cooling, on(curves))),
  ];
  return {
    x: grid,
    logarithmic: true,
    xScale: { from: FIRST_SECOND, to: end },
    yScale: { from: show(0), to: show(answer.plan.fromCelsius * 1.06) },
    ticks: TICKS.filter((tick) => tick <= end),
    tick: (at) => duration(at),
    lines,
    fills: own?.slowest ? [[0, 1]] : [],
    band: { from: show(answer.plan.rule.toCelsius), to: show(answer.plan.rule.fromCelsius) },
    marks: [],
  };
}

/** Names stand at different heights, so that those of neighbours do not lie over each other. */
const HEIGHTS: Readonly<Record<Cooling, number>> = {
  'still-water': 0.3,
  'still-oil': 0.6,
  'still-air': 0.45,
  vermiculite: 0.55,
  ash: 0.25,
  'closed-furnace': 0.8,
};

function line(cooling: Cooling, y: (number | null)[]): PlotLine {
  return { look: 'other', words: coolingWords.short[cooling], wordsAt: HEIGHTS[cooling], y };
}

function lastSecond({ curves, slowest }: CoolingResult): number {
  return Math.max(curves?.seconds.at(-1) ?? 0, slowest?.seconds.at(-1) ?? 0);
}
