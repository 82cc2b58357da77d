import type { PieceReasonCode } from '../contract/firing-record-piece.ts';
import { checkStep } from '../planning/check-step.ts';
import type { Fault, PlanPiece } from '../planning/types.ts';
import { windowFor } from '../planning/windows.ts';
import type { Achieved } from './achieved.ts';
import { good, type Reason } from './types.ts';

/** What was reached, held against the windows of the steel by the very rules that a schedule is checked with. */

type Asked = 'held' | 'peak' | 'either';

/** Which of the check's faults are about too little heat (asked of what was held) and which about too much. */
const SAID: Partial<Record<Fault['code'], { readonly asked: Asked; readonly code: PieceReasonCode }>> = {
  'never-that-hot': { asked: 'held', code: 'too-cold-for-step' },
  'normalise-below-upper-critical': { asked: 'held', code: 'normalise-below-upper-critical' },
  'harden-below-window': { asked: 'held', code: 'harden-below-window' },
  'too-hot-for-steel': { asked: 'peak', code: 'too-hot-for-steel' },
  'harden-above-window': { asked: 'peak', code: 'harden-above-window' },
  'sub-critical-above-ac1': { asked: 'peak', code: 'above-ac1' },
  'no-window-known': { asked: 'either', code: 'no-window-known' },
  'step-not-recommended': { asked: 'either', code: 'step-not-recommended' },
  'section-does-not-harden': { asked: 'either', code: 'section-does-not-harden' },
};

export function windowReasons(plan: PlanPiece, achieved: Achieved): Reason[] {
  const { heldCelsius, surfacePeakCelsius, main } = achieved;
  if (main === null || heldCelsius === null || surfacePeakCelsius === null) return [];
  const { durationSeconds } = main.soak;
  const held = faultsAt(plan, heldCelsius, durationSeconds, ['held', 'either']);
  const peak = faultsAt(plan, surfacePeakCelsius, durationSeconds, ['peak']);
  const found = once([...held, ...peak]);
  return found.length > 0 ? found : inWindow(plan, heldCelsius, surfacePeakCelsius);
}

function faultsAt(
  plan: PlanPiece,
  celsius: number,
  durationSeconds: number,
  asked: readonly Asked[],
): Reason[] {
  const soak = { kind: 'soak', targetCelsius: celsius, toleranceCelsius: 0, durationSeconds } as const;
  // A temper's hardness is judged by the whole curve, not by its hold: no hardness is asked for here.
  return checkStep({ segments: [soak], wantedHrc: null }, plan).flatMap(({ code, weight, params }) => {
    const said = SAID[code];
    if (said === undefined || !asked.includes(said.asked)) return [];
    const told = { ...params, reachedCelsius: celsius };
    return [{ code: said.code, weight: isNear(plan, said.code, celsius) ? 'doubt' : weight, params: told }];
  });
}

/** Two rules may say the same of one heat: the graver counts, and among equals the one of the step's own window. */
function once(reasons: readonly Reason[]): Reason[] {
  const kept = new Map<string, Reason>();
  for (const reason of reasons) {
    const before = kept.get(reason.code);
    if (before?.weight !== 'wrong' || reason.weight === 'wrong') kept.set(reason.code, reason);
  }
  return [...kept.values()];
}

/**
 * A plan that stays below a window by more than the window is known to is wrong. What was measured has an error of its
 * own, of the same size for a usual thermocouple: so as much again only leaves doubts.
 */
function isNear(plan: PlanPiece, code: PieceReasonCode, celsius: number): boolean {
  const window = plan.step === null ? null : windowFor(plan.steel, plan.step);
  if (window === null || code !== 'too-cold-for-step') return false;
  return celsius >= window.lowCelsius - 2 * window.uncertaintyCelsius;
}

function inWindow(plan: PlanPiece, heldCelsius: number, peakCelsius: number): Reason[] {
  const window = plan.step === null ? null : windowFor(plan.steel, plan.step);
  if (window === null) return [];
  const { lowCelsius, highCelsius, uncertaintyCelsius: slack } = window;
  if (heldCelsius < lowCelsius - slack || peakCelsius > highCelsius + slack) return [];
  const params = {
    reachedCelsius: heldCelsius,
    peakCelsius,
    lowCelsius,
    highCelsius,
    uncertaintyCelsius: slack,
  };
  return [good('in-window', params)];
}
