import type { Params } from '../alarm.ts';
import type { PlanFaultCode } from '../planning.ts';
import type { DisplayUnit } from '../schedule.ts';
import type { PlanReasonCode } from '../schedule-basis.ts';
import { difference, duration, numberOf, rate, temperature, textOf } from './format.ts';

/** Why a schedule is what it is, and what speaks against one. English. */

const STEPS: Readonly<Record<string, string>> = {
  normalise: 'normalising',
  'full-anneal': 'a full anneal',
  spheroidise: 'spheroidising',
  'sub-critical-anneal': 'a sub-critical anneal',
  'stress-relief': 'stress relief',
  austenitise: 'austenitising',
  harden: 'hardening',
  temper: 'tempering',
  forge: 'forging',
};

export function stepName(step: string): string {
  return STEPS[step] ?? step;
}

interface Say {
  temp(name: string): string;
  diff(name: string): string;
  rate(name: string): string;
  time(name: string): string;
  text(name: string): string;
  number(name: string): string;
}

function sayer(params: Params, unit: DisplayUnit): Say {
  return {
    temp: (name) => temperature(numberOf(params, name), unit),
    diff: (name) => difference(numberOf(params, name), unit),
    rate: (name) => rate(numberOf(params, name), unit),
    time: (name) => duration(numberOf(params, name) ?? 0),
    text: (name) => textOf(params, name, ''),
    number: (name) => String(Math.round((numberOf(params, name) ?? 0) * 10) / 10),
  };
}

/** Why a number of a schedule is what it is, as a sentence. */
export function planReasonWords(code: PlanReasonCode, params: Params, unit: DisplayUnit): string {
  const say = sayer(params, unit);
  switch (code) {
    case 'target-window':
      return `The middle of the window from ${say.temp('lowCelsius')} to ${say.temp('highCelsius')}; the window itself is known to ±${say.diff('uncertaintyCelsius')}`;
    case 'target-for-hardness':
      return `${say.number('hours')} h here should leave about ${say.number('valueHrc')} HRC (${say.number('lowHrc')} to ${say.number('highHrc')}) for the ${say.number('wantedHrc')} HRC wanted`;
    case 'tolerance-furnace':
      return `±${say.diff('toleranceCelsius')}: what a furnace of this kind can be held within`;
    case 'ramp-free':
      return 'As fast as the furnace goes; thick and thin pieces part, so the soak waits for the middle';
    case 'ramp-even':
      return `${say.rate('rateCelsiusPerHour')}: slow enough that thick and thin come along together`;
    case 'soak-hold':
      return `${say.time('seconds')} at heat for ${say.number('thicknessMm')} mm`;
    case 'soak-core-lag':
      return `With the time that the middle lags behind the air: about ${say.time('seconds')}, ${say.time('slowSeconds')} in a slow furnace`;
    case 'soak-core-clock':
      return `The clock waits for the middle: about ${say.time('seconds')} after the air, ${say.time('slowSeconds')} in a slow furnace`;
    case 'cool-rule':
      return `No faster than ${say.rate('limitCelsiusPerHour')} down to ${say.temp('toCelsius')}; below that the rate does not matter`;
    case 'cool-bury':
      return 'Buried straight and dry, so that it cools slowly; a thin piece alone cools too fast: bury it with a hot companion';
    case 'cool-air':
      return 'In still air, out of draughts, on something that does not draw the heat out of one side';
    case 'cool-furnace':
      return 'In the closed furnace';
    case 'cool-quench':
      return quenchWords(say, params);
    default:
      throw code satisfies never;
  }
}

function quenchWords(say: Say, params: Params): string {
  const start = numberOf(params, 'msCelsius');
  const fluids = say.text('fluids') === '' ? '' : ` in ${say.text('fluids')}`;
  const thin = numberOf(params, 'oilBelowMm');
  const above =
    thin === null ? '' : `; above ${say.number('oilBelowMm')} mm only the first of them hardens it`;
  const until =
    start === null
      ? ''
      : `. Martensite starts at about ${say.temp('msCelsius')}: temper as soon as it can be held in the hand`;
  return `Quench${fluids}${above}${until}`;
}

/** What speaks against a schedule, as a sentence. */
export function planFaultWords(code: PlanFaultCode, params: Params, unit: DisplayUnit): string {
  const say = sayer(params, unit);
  const target = say.temp('targetCelsius');
  const limit = say.temp('limitCelsius');
  switch (code) {
    case 'beyond-rating':
      return `${target} is more than ${say.text('furnace')} is rated for (${limit})`;
    case 'too-hot-for-steel':
      return `${target} is too hot for ${say.text('steel')}: at most ${limit}`;
    case 'step-not-recommended':
      return `${say.text('steel')} must not go through ${stepName(say.text('step'))}: it hardens or cracks`;
    case 'no-window-known':
      return `No temperature for ${stepName(say.text('step'))} is known for ${say.text('steel')}: take it from the maker's data sheet`;
    case 'soak-shorter-than-core':
      return `Too short for ${say.number('thicknessMm')} mm: ${say.time('plannedSeconds')} planned; the middle comes about ${say.time('lagSeconds')} after the air (${say.time('slowSeconds')} in a slow furnace) and then wants ${say.time('holdSeconds')}`;
    case 'never-reaches-core':
      return 'The middle of this piece does not come within tolerance in a day';
    case 'anneal-cools-too-fast':
      return `Cools at about ${say.rate('measuredCelsiusPerHour')} this way; this steel wants at most ${say.rate('limitCelsiusPerHour')} down to ${say.temp('toCelsius')}`;
    case 'anneal-stops-too-hot':
      return `The slow cooling ends at ${target}; this steel wants it down to ${say.temp('toCelsius')}`;
    case 'normalise-below-upper-critical':
      return `${target} may leave part of the steel as it was: it is wholly austenite from about ${limit} (${say.temp('lowCelsius')} to ${say.temp('highCelsius')})`;
    case 'harden-above-window':
      return `${target} is above the hardening window (to ${limit}): coarse grain, retained austenite`;
    case 'harden-below-window':
      return `${target} is below the hardening window (from ${limit}): it may not harden`;
    case 'never-that-hot':
      return `${target} is below the window for ${stepName(say.text('step'))} (from ${limit})`;
    case 'section-does-not-harden':
      return `${say.number('thicknessMm')} mm will not harden to the middle in ${say.text('fluid')}: about ${say.number('criticalMm')} mm does`;
    case 'temper-leaves-too-hard':
      return `Leaves about ${say.number('valueHrc')} HRC (${say.number('lowHrc')} to ${say.number('highHrc')}), harder than the ${say.number('wantedHrc')} wanted: hotter or longer`;
    case 'temper-leaves-too-soft':
      return `Leaves about ${say.number('valueHrc')} HRC (${say.number('lowHrc')} to ${say.number('highHrc')}), softer than the ${say.number('wantedHrc')} wanted: cooler or shorter`;
    case 'sub-critical-above-ac1':
      return `${target} with its tolerance reaches the start of transformation (Ac1, from about ${limit}): it would undo what it is for`;
    case 'gas-will-not-suffice':
      return `The gas will not last this firing: ${say.time('neededSeconds')} of fire, gas for ${say.time('lowSeconds')} to ${say.time('highSeconds')}`;
    case 'gas-may-not-suffice':
      return `The gas may not last this firing: ${say.time('neededSeconds')} of fire, gas for ${say.time('lowSeconds')} to ${say.time('highSeconds')}`;
    case 'gas-not-known':
      return `Nobody knows how much gas is left; this firing wants ${say.time('neededSeconds')} of fire`;
    case 'ends-after-closing':
      return `${say.time('neededSeconds')} of fire, and the shop closes in ${say.time('seconds')}`;
    default:
      throw code satisfies never;
  }
}

/** What a proposal does not know, in sentences. */
export function planUncertaintyWords(
  known: { readonly uncertaintyCelsius: number; readonly fitted: boolean },
  unit: DisplayUnit,
): string[] {
  return [
    `The window of the steel is known to ±${difference(known.uncertaintyCelsius, unit)}; a thermocouple adds its own error`,
    known.fitted
      ? 'How fast the middle follows comes from a fit of this furnace to one recorded firing'
      : 'How fast the middle follows comes from usual values of such furnaces: fit this one to a firing with a thermocouple on the piece',
    'Pieces that touch each other or the floor heat and cool more slowly than reckoned here',
  ];
}

/** What to look up in the steel maker's data sheet first. */
export function dataSheetWords(step: string, steel: string): string[] {
  const common = [`Its temperature for ${stepName(step)}`, 'Time at heat for this section'];
  switch (step) {
    case 'harden':
    case 'austenitise':
      return [...common, `Quenching fluid for this section of ${steel}`, 'Whether it wants preheating'];
    case 'temper':
      return [...common, 'Its tempering curve, and temperatures to keep away from', 'How many tempers'];
    case 'full-anneal':
    case 'spheroidise':
      return [...common, 'Cooling rate, and down to what temperature', 'Hardness to expect afterwards'];
    default:
      return common;
  }
}

/** What a check looked at, and what it could not. */
export function planScopeWords(known: {
  readonly pieces: number;
  readonly withoutStep: readonly string[];
  readonly gasKnown: boolean;
  readonly hardnessAsked: boolean;
}): { checked: string[]; notChecked: string[] } {
  const checked = ['Rating of the furnace'];
  const notChecked: string[] = [];
  if (known.pieces > 0)
    checked.push('Temperatures, soak and cooling against the steel and section of each piece');
  else notChecked.push('Anything about steel: no pieces are named');
  if (known.withoutStep.length > 0) {
    notChecked.push(`What the heat is for: no step named for ${known.withoutStep.join(', ')}`);
  }
  if (known.gasKnown) checked.push('Gas against the hours of fire');
  else notChecked.push('Gas: nothing measures what is left');
  if (!known.hardnessAsked) notChecked.push('Hardness after tempering: none was asked for');
  return { checked, notChecked };
}
