import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase } from '../../hub/contract/units.ts';
import { glowAt } from '../wall/glow.ts';
import { unitNamed } from '../words/format.ts';
import { heatWords } from '../words/heat.ts';
import { duration } from '../words/time.ts';
import { type Arrival, type HeatAnswer, isOwn } from './ask.ts';
import { inLength, type LengthUnit, length } from './lengths.ts';
import type { PlotPicture } from './plot-types.ts';
import { chamberAt } from './questions.ts';

/** What the charts of the heating show. Pure. */

/** The section's own arrivals with the weakest, the usual and the strongest heating, sorted; null: it never arrives. */
export interface OwnArrival {
  readonly low: number;
  readonly usual: number;
  /** Null: with the weakest heating it does not arrive. */
  readonly high: number | null;
  readonly lagCelsius: number;
  readonly surfaceBeyondBand: boolean;
}

export function ownArrival(answer: HeatAnswer): OwnArrival | null {
  const own = isOwn(answer.plan);
  const usual = answer.usual.find(own);
  if (usual === undefined || usual.seconds === null) return null;
  const ends = [answer.weak.find(own)?.seconds ?? null, answer.strong.find(own)?.seconds ?? null];
  const known = [usual.seconds, ...ends].filter((end) => end !== null);
  return {
    low: Math.min(...known),
    usual: usual.seconds,
    high: ends.includes(null) ? null : Math.max(...known),
    lagCelsius: usual.lagCelsius ?? 0,
    surfaceBeyondBand: usual.surfaceBeyondBand,
  };
}

/** Furnace, skin and core over time, the tolerance, the arrival with its band, and the piece cut through. */
export function heatingPicture(answer: HeatAnswer, unit: DisplayUnit): PlotPicture {
  const { plan, conduction } = answer;
  const { seconds, coreCelsius, surfaceCelsius } = conduction.curves;
  const show = (celsius: number) => fromBase(celsius, unitNamed(unit));
  const chamber = seconds.map((at) => chamberAt(plan, at));
  const arrival = ownArrival(answer);
  const { targetCelsius: target, toleranceCelsius: tolerance } = plan;
  const all = [...coreCelsius, ...chamber, target - tolerance, target + tolerance];
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const room = Math.max(5, (high - low) * 0.07);
  const last = seconds.at(-1) ?? 1;
  return {
    x: seconds,
    xScale: { from: 0, to: last },
    yScale: { from: show(low - room), to: show(high + room) },
    tick: (at) => duration(at),
    lines: [
      { look: 'furnace', words: heatWords.furnace, wordsAt: 0.5, y: chamber.map(show) },
      { look: 'surface', words: '', y: surfaceCelsius.map(show) },
      { look: 'core', words: '', y: coreCelsius.map(show) },
    ],
    band: { from: show(target - tolerance), to: show(target + tolerance) },
    span: arrival ? { from: arrival.low, to: arrival.high ?? last } : undefined,
    marks: arrival ? [{ x: arrival.usual, words: heatWords.coreArrives }] : [],
    cut: {
      core: coreCelsius,
      surface: surfaceCelsius,
      colourAt: (celsius) => glowAt(celsius).colour,
      skin: heatWords.skin,
      middle: heatWords.coreShort,
    },
  };
}

const TICK_SHARES = [0.5, 1, 1.5, 2] as const;

/** Minutes until the core arrives against the section, with the band of the furnace where it is known. */
export function sectionPicture(answer: HeatAnswer, lengthUnit: LengthUnit): PlotPicture {
  const { usual, weak, strong, plan } = answer;
  const x = usual.map(({ thicknessMm }) => inLength(thicknessMm, lengthUnit));
  const minutes = (arrivals: readonly Arrival[]) =>
    usual.map(({ thicknessMm }) => {
      const seconds = arrivals.find((one) => one.thicknessMm === thicknessMm)?.seconds ?? null;
      return seconds === null ? null : seconds / 60;
    });
  const known = [usual, weak, strong].flatMap(minutes).filter((value) => value !== null);
  const own = inLength(plan.thicknessMm, lengthUnit);
  return {
    x,
    xScale: { from: 0, to: (x.at(-1) ?? 1) * 1.05 },
    yScale: { from: 0, to: Math.max(1e-6, ...known) * 1.08 },
    ticks: TICK_SHARES.map((share) => share * own),
    tick: (value) => String(Number(value.toPrecision(3))),
    lines: [
      { look: 'edge', words: '', y: minutes(weak) },
      { look: 'edge', words: '', y: minutes(strong) },
      { look: 'surface', words: '', y: minutes(usual) },
    ],
    fills: [[0, 1]],
    marks: [{ x: own, words: heatWords.thisSection(length(plan.thicknessMm, lengthUnit)) }],
  };
}

/**
 * By which power of the section the time grows, between the section and twice of it: about 1 while the wait is for
 * heat to get into the skin, towards 2 when it is for heat to get through the steel. Null: not known.
 */
export function growth(answer: HeatAnswer): { readonly times: number; readonly power: number } | null {
  const at = (mm: number) => answer.usual.find(({ thicknessMm }) => thicknessMm === mm)?.seconds ?? null;
  const [one, two] = [at(answer.plan.thicknessMm), at(2 * answer.plan.thicknessMm)];
  if (one === null || two === null || one <= 0) return null;
  return { times: two / one, power: Math.log2(two / one) };
}
