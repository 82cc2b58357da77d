import { findGrade } from '../../hub/physics/steel/catalogue.ts';
import { steelOfGrade } from '../../hub/physics/steel/own-steel.ts';
import type { CheckQuestion } from '../../hub/planning/check.ts';
import type { ProposalQuestion } from '../../hub/planning/propose.ts';
import { HABIT, type PlanFurnace, type PlanPiece, type PlanSteel } from '../../hub/planning/types.ts';

/** Steels, pieces and furnaces to plan with. */

export function steel(name: string): PlanSteel {
  const grade = findGrade(name);
  if (grade === null) throw new Error(`no grade ${name}`);
  return { ...steelOfGrade(grade), quench: grade.quench, notRecommended: grade.notRecommended };
}

export function piece(name: string, step: PlanPiece['step'], thicknessMm = 12): PlanPiece {
  return { id: 'p1', mark: 'K-1', steel: steel(name), shape: 'bar', thicknessMm, step };
}

/** Usual effective emissivities and film coefficients: common practice, no source. */
export const oven: PlanFurnace = {
  name: 'Oven',
  kind: 'electric-oven',
  ratedCelsius: 1200,
  exposure: { emissivity: 0.7, film: 10 },
  slowExposure: { emissivity: 0.5, film: 5 },
  exposureFrom: HABIT,
};

export const forge: PlanFurnace = {
  name: 'Forge',
  kind: 'gas-forge',
  ratedCelsius: 1300,
  exposure: { emissivity: 0.75, film: 25 },
  slowExposure: { emissivity: 0.6, film: 10 },
  exposureFrom: HABIT,
};

export function ask(extra: Partial<ProposalQuestion> = {}): ProposalQuestion {
  return {
    step: 'full-anneal',
    pieces: [piece('1084', 'full-anneal')],
    furnace: oven,
    wantedHrc: null,
    coolIn: null,
    clock: 'core',
    ...extra,
  };
}

export function plan(extra: Partial<CheckQuestion> & Pick<CheckQuestion, 'segments'>): CheckQuestion {
  return { furnace: oven, pieces: [], clock: 'core', wantedHrc: null, secondsToClosing: null, ...extra };
}

export function heat(
  celsius: number,
  soakSeconds: number,
  cool: { medium: 'still-air' | 'furnace' | 'ash' | 'vermiculite' | 'quench'; to: number; most?: number },
): CheckQuestion['segments'] {
  return [
    { kind: 'ramp', targetCelsius: celsius, toleranceCelsius: 8, rateCelsiusPerHour: 600 },
    { kind: 'soak', targetCelsius: celsius, toleranceCelsius: 8, durationSeconds: soakSeconds },
    {
      kind: 'cool',
      targetCelsius: cool.to,
      medium: cool.medium,
      maximumRateCelsiusPerHour: cool.most ?? null,
      minimumRateCelsiusPerHour: null,
    },
  ];
}
