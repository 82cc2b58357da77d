import type { FurnaceFit } from '../../hub/contract/furnace-fit.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { differenceFromBase } from '../../hub/contract/units.ts';
import { number, temperature, unitNamed } from '../words/format.ts';
import { heatWords } from '../words/heat.ts';
import { duration } from '../words/time.ts';
import { aboutDifference, aboutTime, timeBand } from './about.ts';
import type { HeatAnswer } from './ask.ts';
import type { HeatPlan } from './form.ts';
import { type FurnaceKind, isFarFromFit } from './furnace.ts';
import { growth, type OwnArrival, ownArrival } from './heating-picture.ts';

/** What the heating comes to, in sentences. Pure. */

export interface Said {
  readonly headline: string;
  readonly facts: readonly string[];
  /** What to know before trusting them. */
  readonly notes: readonly string[];
}

export function saidOf(answer: HeatAnswer, unit: DisplayUnit, kind: FurnaceKind): Said {
  const { plan, heat, conduction } = answer;
  const arrival = ownArrival(answer);
  const { emissivity, filmWattsPerSquareMetreKelvin } = conduction.exposure;
  const film = number(filmWattsPerSquareMetreKelvin, filmWattsPerSquareMetreKelvin < 10 ? 1 : 0);
  const far = heat.fit !== null && isFarFromFit(heat.fit, plan.chamberCelsius);
  const notes = [
    ...(far ? [heatWords.farFromFit] : []),
    heatWords.honesty,
    `${heatWords.reckoned(number(emissivity, 2), film)} ${heatWords.source(conduction.source)}`,
  ];
  if (arrival === null) return { headline: neverSaid(plan, unit), facts: [], notes };
  const { low, usual, high } = arrival;
  const time = aboutTime(usual, low, high ?? usual);
  const tolerance = toleranceText(plan, unit);
  const headline = heatWords.headline(plan.shape, tolerance, temperature(plan.targetCelsius, unit), time);
  return {
    headline,
    facts: [
      bandSaid(arrival, heat.fit, kind),
      ...outSaid(plan, arrival, unit),
      ...widestSaid(answer, arrival, unit),
    ],
    notes,
  };
}

function bandSaid({ low, high }: OwnArrival, fit: FurnaceFit | null, kind: FurnaceKind): string {
  if (high === null) return heatWords.bandOpen(aboutTime(low));
  const band = timeBand(low, high);
  if (band === null) return heatWords.bandSame;
  return fit === null ? heatWords.bandKind(kind, band) : heatWords.bandFit(band);
}

function outSaid({ holdSeconds }: HeatPlan, arrival: OwnArrival, unit: DisplayUnit): string[] {
  const { low, usual, high, lagCelsius, surfaceBeyondBand } = arrival;
  const unknown = (high ?? usual) - low;
  const out = aboutTime(
    usual + holdSeconds,
    usual + holdSeconds - unknown / 2,
    usual + holdSeconds + unknown / 2,
  );
  const lag = differenceFromBase(Math.abs(lagCelsius), unitNamed(unit));
  return [
    ...(holdSeconds > 0 ? [heatWords.takeOut(duration(holdSeconds), out)] : []),
    lag < 1 ? heatWords.lagLittle : heatWords.lag(aboutDifference(lagCelsius, unit)),
    ...(surfaceBeyondBand ? [heatWords.beyondBand] : []),
  ];
}

function neverSaid(plan: HeatPlan, unit: DisplayUnit): string {
  const { targetCelsius, toleranceCelsius, chamberCelsius } = plan;
  const target = temperature(targetCelsius, unit);
  const tolerance = toleranceText(plan, unit);
  const outside = Math.abs(chamberCelsius - targetCelsius) >= toleranceCelsius;
  return outside
    ? heatWords.never(tolerance, target, temperature(chamberCelsius, unit))
    : heatWords.neverPlain(tolerance, target);
}

/** A tolerance as it was typed: a difference has no offset. */
export function toleranceText({ toleranceCelsius }: HeatPlan, unit: DisplayUnit): string {
  const { label } = unitNamed(unit);
  return `${Number(differenceFromBase(toleranceCelsius, unitNamed(unit)).toPrecision(3))} ${label}`;
}

/** The arrival for people who do not see the chart. */
export function questionsLeft(answer: HeatAnswer): string {
  const arrival = ownArrival(answer);
  return arrival === null
    ? ''
    : heatWords.summaryArrival(aboutTime(arrival.usual, arrival.low, arrival.high ?? arrival.usual));
}

/** Below this power the skin sets the pace, above the other the steel does; between them both. */
const SKIN_BELOW = 1.25;
const STEEL_ABOVE = 1.6;

/** What the comparison of sections teaches; empty when it is not known. */
export function growthSaid(answer: HeatAnswer): string {
  const grown = growth(answer);
  if (grown === null) return '';
  const times = number(grown.times, 1);
  if (grown.power < 0.5) return heatWords.growthClimb;
  if (grown.power < SKIN_BELOW) return heatWords.growthSkin(times);
  return grown.power > STEEL_ABOVE ? heatWords.growthSteel(times) : heatWords.growthBoth(times);
}

/** The moment at which the furnace thermometer hides the most; nothing when it hides less than a degree. */
function widestSaid(
  { conduction }: HeatAnswer,
  { low, usual, high }: OwnArrival,
  unit: DisplayUnit,
): string[] {
  const { seconds, coreCelsius, surfaceCelsius } = conduction.curves;
  const lags = surfaceCelsius.map((surface, index) => surface - (coreCelsius[index] ?? surface));
  const widest = Math.max(...lags);
  const at = seconds[lags.indexOf(widest)] ?? 0;
  // Everything on the way is as uncertain as the arrival.
  const slower = (end: number) => (usual > 0 ? end / usual : 1);
  const shown = differenceFromBase(widest, unitNamed(unit));
  return shown < 1
    ? []
    : [
        heatWords.lagOnTheWay(
          aboutDifference(widest, unit),
          aboutTime(at, at * slower(low), at * slower(high ?? usual)),
        ),
      ];
}
