import type { FiringVerdict } from '../contract/firing.ts';
import { integrate } from '../physics/time-at-temperature/curve.ts';
import type { PlanPiece } from '../planning/types.ts';
import { windowFor } from '../planning/windows.ts';
import { type Achieved, achievedBy } from './achieved.ts';
import { coolingFound } from './cooling-reasons.ts';
import { coreReasons } from './core-reasons.ts';
import { surfaceFigures } from './figures.ts';
import { curveOf, heatOf, type PieceHeat } from './heat.ts';
import { segmentReasons } from './segment-reasons.ts';
import { temperFound } from './temper.ts';
import {
  doubt,
  type JudgedPiece,
  note,
  type Reason,
  type RecordedPiece,
  type RecordQuestion,
} from './types.ts';
import { windowReasons } from './window-reasons.ts';

/** Rules by which pieces are judged; a change of any of them gets a new name. */
export const RECORD_VERSION = 'record-1';

/** Every piece of a firing judged by what its steel went through, in the order of the load. */
export function judgePieces(question: RecordQuestion): JudgedPiece[] {
  return question.pieces.map((piece) => judgePiece(question, piece));
}

function judgePiece(question: RecordQuestion, piece: RecordedPiece): JudgedPiece {
  const heat = heatOf(question, piece);
  const { schedule, segments } = question;
  const achieved = achievedBy(heat, schedule.segments, segments);
  const { plan } = piece;
  const cooling = plan === null ? null : coolingFound(plan, heat, achieved, question.curves.corrected);
  const temper = plan === null ? null : temperFound(plan, heat, schedule.basis);
  const reasons = [
    ...coreReasons(heat, achieved),
    ...(plan === null ? [] : windowReasons(plan, achieved)),
    ...(temper?.reasons ?? []),
    ...(cooling?.reasons ?? []),
    ...segmentReasons(question, heat),
    ...stateReasons(question, plan),
  ].toSorted((a, b) => gravity(b) - gravity(a));
  return {
    pieceId: piece.pieceId,
    mark: piece.mark,
    verdict: question.status === 'running' ? 'pending' : verdictOf(reasons),
    reasons,
    basis: heat.basis,
    coreOf: heat.coreOf,
    ...figuresOf(achieved, question),
    ...windowOf(plan, heat),
    coolingCelsiusPerHour: cooling?.celsiusPerHour ?? null,
    figures: plan === null ? [] : [...(temper?.figures ?? []), ...surfaceFigures(plan.steel, heat)],
    curve: heat.basis === 'core' ? coreCurve(heat) : [],
  };
}

function stateReasons({ status }: RecordQuestion, plan: PlanPiece | null): Reason[] {
  return [
    ...(status === 'running' ? [note('not-judged-yet')] : []),
    ...(status === 'abandoned' ? [doubt('abandoned')] : []),
    ...(plan === null ? [doubt('steel-not-known')] : []),
    ...(plan !== null && plan.step === null ? [note('step-not-said')] : []),
  ];
}

const GRAVITY = { good: 0, note: 1, doubt: 2, wrong: 3 } as const;
const gravity = ({ weight }: Reason): number => GRAVITY[weight];

/** The gravest reason decides. */
export function verdictOf(reasons: readonly Reason[]): FiringVerdict {
  if (reasons.some(({ weight }) => weight === 'wrong')) return 'not-met';
  return reasons.some(({ weight }) => weight === 'doubt') ? 'met-with-doubts' : 'met';
}

function figuresOf(achieved: Achieved, { segments }: RecordQuestion) {
  const { main, heldCelsius, soakSeconds, peakCelsius, surfacePeakCelsius } = achieved;
  const result = segments.find(({ index }) => index === main?.index);
  return {
    segment: main?.index ?? null,
    heldCelsius,
    soakSeconds,
    airSoakSeconds: result?.soakSecondsAir ?? null,
    peakCelsius,
    surfacePeakCelsius,
  };
}

function windowOf(
  plan: PlanPiece | null,
  { points }: PieceHeat,
): Pick<JudgedPiece, 'window' | 'secondsAboveWindow'> {
  const window = plan === null || plan.step === null ? null : windowFor(plan.steel, plan.step);
  if (window === null) return { window: null, secondsAboveWindow: null };
  const { lowCelsius, highCelsius, uncertaintyCelsius, from } = window;
  const skin = curveOf(points, 'surface', 'value');
  const known = skin.length >= 2;
  const above = known
    ? integrate(skin, { low: -273, high: highCelsius + uncertaintyCelsius }, () => 0).secondsAbove
    : null;
  return {
    window: { lowCelsius, highCelsius, uncertaintyCelsius, source: from.source },
    secondsAboveWindow: above,
  };
}

/** For a chart: more points than this it cannot show. */
const MOST_CURVE_POINTS = 300;

function coreCurve({ points }: PieceHeat): JudgedPiece['curve'] {
  const stride = Math.ceil(points.length / MOST_CURVE_POINTS);
  const kept = points.filter((_, i) => i % stride === 0 || i === points.length - 1);
  return kept.map(({ atMs, core }) => ({
    at: atMs,
    celsius: tenth(core.value),
    low: tenth(core.low),
    high: tenth(core.high),
  }));
}

const tenth = (celsius: number): number => Math.round(celsius * 10) / 10;
