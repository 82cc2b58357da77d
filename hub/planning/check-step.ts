import { type RouteHeat, windowStepOf } from '../contract/route-template.ts';
import type { SoakSegment } from '../contract/schedule.ts';
import { PhysicsError } from '../physics/errors.ts';
import { criticalTemperatures } from '../physics/steel/critical.ts';
import type { Answer, Estimate } from '../physics/steel/estimate.ts';
import { EUTECTOID_CARBON_PERCENT } from '../physics/steel/iron-carbon.ts';
import { temperedHardness } from '../physics/steel/tempered-hardness.ts';
import { hardensThrough, type QuenchMedium } from '../physics/steel/through-hardening.ts';
import type { CheckQuestion } from './check.ts';
import { hottest, mainSoak } from './course.ts';
import type { Fault, PlanPiece } from './types.ts';
import { windowFor } from './windows.ts';

/** Whether the temperatures of a schedule do to this steel what the step is for. */

/** No window of steel goes higher but forging's: above this a forging steel burns or its grain is lost, °C. Ours. */
const ABOVE_ANY_WINDOW = 60;

/** What of a question is looked at: what was reached can be asked the same way as what is planned. */
export type StepQuestion = Pick<CheckQuestion, 'segments' | 'wantedHrc'>;

export function checkStep(question: StepQuestion, piece: PlanPiece): Fault[] {
  const { step, steel } = piece;
  if (step === null) return tooHot(question, piece);
  const fault = faultOf(piece);
  if (steel.notRecommended.includes(windowStepOf(step))) {
    return [fault('step-not-recommended', 'wrong', null, { step, steel: steel.title })];
  }
  const main = mainSoak(question.segments);
  if (main === null) return tooHot(question, piece);
  const { index, soak } = main;
  return [...tooHot(question, piece), ...stepFaults(question, piece, step, index, soak)];
}

type Make = (
  code: Fault['code'],
  weight: Fault['weight'],
  segment: number | null,
  params: Fault['params'],
) => Fault;

function faultOf(piece: PlanPiece): Make {
  return (code, weight, segment, params) => ({ code, weight, segment, piece, params });
}

/** Above every window that this steel has, whatever the step; forging counts only for forging. */
function tooHot({ segments }: StepQuestion, piece: PlanPiece): Fault[] {
  const windows = piece.steel.windows.filter(({ step }) => piece.step === 'forge' || step !== 'forge');
  if (windows.length === 0) return [];
  const top = Math.max(...windows.map((w) => w.highCelsius + w.uncertaintyCelsius));
  const { index, celsius } = hottest(segments);
  if (celsius <= top) return [];
  const weight = celsius > top + ABOVE_ANY_WINDOW ? 'wrong' : 'doubt';
  const params = { targetCelsius: celsius, limitCelsius: top, steel: piece.steel.title };
  return [faultOf(piece)('too-hot-for-steel', weight, index, params)];
}

function stepFaults(
  question: StepQuestion,
  piece: PlanPiece,
  step: RouteHeat,
  index: number,
  soak: SoakSegment,
): Fault[] {
  switch (step) {
    case 'normalise':
      return [...outsideWindow(piece, step, index, soak), ...upperCritical(piece, index, soak)];
    case 'harden':
    case 'austenitise':
      return [...hardening(piece, step, index, soak), ...section(piece, step)];
    case 'temper':
      return tempering(question, piece, index, soak);
    case 'sub-critical-anneal':
    case 'stress-relief':
    case 'spheroidise':
      return [...outsideWindow(piece, step, index, soak), ...belowAc1(piece, step, index, soak)];
    case 'full-anneal':
      return outsideWindow(piece, step, index, soak);
    case 'forge':
      return [];
    default:
      return step satisfies never;
  }
}

/** A window with no number to hold against is itself worth a word. */
function outsideWindow(piece: PlanPiece, step: RouteHeat, index: number, soak: SoakSegment): Fault[] {
  const window = windowFor(piece.steel, step);
  const make = faultOf(piece);
  if (window === null) return [make('no-window-known', 'doubt', index, { step, steel: piece.steel.title })];
  const { lowCelsius, highCelsius, uncertaintyCelsius } = window;
  const { targetCelsius } = soak;
  if (targetCelsius < lowCelsius - uncertaintyCelsius) {
    return [make('never-that-hot', 'wrong', index, { targetCelsius, limitCelsius: lowCelsius, step })];
  }
  if (targetCelsius <= highCelsius + uncertaintyCelsius) return [];
  const params = { targetCelsius, limitCelsius: highCelsius, steel: piece.steel.title };
  return [make('too-hot-for-steel', 'doubt', index, params)];
}

/** Normalising wants the whole steel turned: Ac3, or Acm above the eutectoid. */
function upperCritical(piece: PlanPiece, index: number, soak: SoakSegment): Fault[] {
  const { composition } = piece.steel;
  const { ac3, acm } = safely(() => criticalTemperatures(composition)) ?? { ac3: null, acm: null };
  const upper = known(composition.C > EUTECTOID_CARBON_PERCENT ? acm : ac3) ?? known(ac3);
  if (upper === null) return [];
  const reached = soak.targetCelsius;
  if (reached >= upper.high) return [];
  const weight = reached < upper.value ? 'wrong' : 'doubt';
  const params = {
    targetCelsius: reached,
    limitCelsius: upper.value,
    lowCelsius: upper.low,
    highCelsius: upper.high,
  };
  return [faultOf(piece)('normalise-below-upper-critical', weight, index, params)];
}

function hardening(piece: PlanPiece, step: RouteHeat, index: number, soak: SoakSegment): Fault[] {
  const window = windowFor(piece.steel, step);
  const make = faultOf(piece);
  if (window === null) return [make('no-window-known', 'doubt', index, { step, steel: piece.steel.title })];
  const { lowCelsius, highCelsius, uncertaintyCelsius } = window;
  const { targetCelsius, toleranceCelsius } = soak;
  if (targetCelsius > highCelsius) {
    const weight = targetCelsius > highCelsius + uncertaintyCelsius ? 'wrong' : 'doubt';
    return [make('harden-above-window', weight, index, { targetCelsius, limitCelsius: highCelsius })];
  }
  if (targetCelsius < lowCelsius) {
    const weight = targetCelsius + toleranceCelsius < lowCelsius - uncertaintyCelsius ? 'wrong' : 'doubt';
    return [make('harden-below-window', weight, index, { targetCelsius, limitCelsius: lowCelsius })];
  }
  return [];
}

const FLUIDS: Readonly<Record<string, QuenchMedium>> = {
  water: 'still-water',
  brine: 'still-brine',
  'fast-oil': 'good-oil',
  oil: 'still-oil',
  'warm-oil': 'still-oil',
  air: 'still-air',
};

/** Whether the recommended fluid hardens this section to its middle. */
function section(piece: PlanPiece, step: RouteHeat): Fault[] {
  if (step !== 'harden' || piece.shape === 'sphere') return [];
  const fluid = piece.steel.quench?.fluids[0];
  const medium = fluid === undefined ? undefined : FLUIDS[fluid];
  if (medium === undefined || medium === 'still-air') return [];
  const { composition } = piece.steel;
  const shape = piece.shape;
  const answer = safely(() => hardensThrough({ composition, shape, sectionMm: piece.thicknessMm, medium }));
  if (answer === null || answer.hardensThrough !== 'no') return [];
  const params = { thicknessMm: piece.thicknessMm, criticalMm: answer.critical.value, fluid: fluid ?? '' };
  return [faultOf(piece)('section-does-not-harden', 'doubt', null, params)];
}

function tempering(question: StepQuestion, piece: PlanPiece, index: number, soak: SoakSegment): Fault[] {
  const { wantedHrc } = question;
  const make = faultOf(piece);
  const { composition, measured } = piece.steel;
  const { ac1 } = safely(() => criticalTemperatures(composition)) ?? { ac1: null };
  const start = known(ac1);
  if (start !== null && soak.targetCelsius + soak.toleranceCelsius > start.low) {
    const params = { targetCelsius: soak.targetCelsius, limitCelsius: start.low, step: 'temper' };
    return [make('sub-critical-above-ac1', 'wrong', index, params)];
  }
  if (wantedHrc === null) return [];
  const hours = soak.durationSeconds / 3600;
  const history = { kind: 'hold', celsius: soak.targetCelsius, hours } as const;
  const answer = safely(() => temperedHardness({ composition, measured }, history).hardnessHrc);
  if (answer === null || answer.value === null) return [];
  const { value, low, high } = answer;
  const params = { wantedHrc, valueHrc: value, lowHrc: low, highHrc: high };
  if (low > wantedHrc) return [make('temper-leaves-too-hard', 'wrong', index, params)];
  return high < wantedHrc ? [make('temper-leaves-too-soft', 'wrong', index, params)] : [];
}

function belowAc1(piece: PlanPiece, step: RouteHeat, index: number, soak: SoakSegment): Fault[] {
  const window = windowFor(piece.steel, step);
  const { ac1 } = safely(() => criticalTemperatures(piece.steel.composition)) ?? { ac1: null };
  const start = known(ac1);
  // Some grades are spheroidised a little above Ac1 on purpose: then their own window speaks.
  if (start === null || (step === 'spheroidise' && window !== null)) return [];
  const top = soak.targetCelsius + soak.toleranceCelsius;
  if (top <= start.low) return [];
  const weight = soak.targetCelsius > start.value ? 'wrong' : 'doubt';
  const params = { targetCelsius: soak.targetCelsius, limitCelsius: start.low, step };
  return [faultOf(piece)('sub-critical-above-ac1', weight, index, params)];
}

function known(answer: Answer | null): Estimate | null {
  return answer !== null && answer.value !== null ? answer : null;
}

/** A steel that the formulas refuse has no fault by them. */
function safely<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}
