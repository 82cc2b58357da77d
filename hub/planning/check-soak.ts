import { coreLag } from './arrival.ts';
import type { CheckQuestion } from './check.ts';
import { COLD_CELSIUS, mainSoak } from './course.ts';
import { holdOf } from './holds.ts';
import type { Fault, PlanPiece } from './types.ts';
import { carbideFormers, windowFor } from './windows.ts';

/** Whether the soak is long enough for the middle of this piece. */

/** Shorter than the usual hold by more than this share is worth a word. Ours. */
const SHORT_SHARE = 0.5;

export function checkSoak(question: CheckQuestion, piece: PlanPiece): Fault[] {
  const main = mainSoak(question.segments);
  if (main === null || piece.step === null || piece.step === 'forge') return [];
  const { index, soak } = main;
  const before = question.segments[index - 1];
  const lag = coreLag({
    piece,
    furnace: question.furnace,
    fromCelsius: COLD_CELSIUS,
    targetCelsius: soak.targetCelsius,
    toleranceCelsius: soak.toleranceCelsius,
    rateCelsiusPerHour: before?.kind === 'ramp' ? before.rateCelsiusPerHour : null,
  });
  if (lag === null) {
    return [{ code: 'never-reaches-core', weight: 'wrong', segment: index, piece, params: {} }];
  }
  const window = windowFor(piece.steel, piece.step);
  const hold = holdOf(piece.step, piece.thicknessMm, carbideFormers(piece.steel), window).seconds;
  const params = {
    plannedSeconds: soak.durationSeconds,
    lagSeconds: Math.round(lag.seconds),
    slowSeconds: Math.round(lag.slowSeconds),
    holdSeconds: hold,
    thicknessMm: piece.thicknessMm,
  };
  const atHeat = question.clock === 'core' ? soak.durationSeconds : soak.durationSeconds - lag.seconds;
  const surely = question.clock === 'core' ? soak.durationSeconds : soak.durationSeconds - lag.slowSeconds;
  if (atHeat <= 0)
    return [{ code: 'soak-shorter-than-core', weight: 'wrong', segment: index, piece, params }];
  if (surely < hold * SHORT_SHARE) {
    return [{ code: 'soak-shorter-than-core', weight: 'doubt', segment: index, piece, params }];
  }
  return [];
}
