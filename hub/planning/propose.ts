import { type RouteHeat, windowStepOf } from '../contract/route-template.ts';
import type { Segment } from '../contract/schedule.ts';
import { PhysicsError } from '../physics/errors.ts';
import { coreLag, type Lag } from './arrival.ts';
import { coolingOf } from './cooling.ts';
import { COLD_CELSIUS, rampRateOf } from './course.ts';
import { type Hold, holdOf, rounded } from './holds.ts';
import { type Target, targetOf, toleranceOf, toleranceReason } from './target.ts';
import { type CoolMedium, HABIT, type PlanFurnace, type PlanPiece, type Reason } from './types.ts';
import { carbideFormers, windowFor } from './windows.ts';

/** A schedule out of steel, step, section and furnace, with the reason of every number. */

export interface ProposalQuestion {
  readonly step: RouteHeat;
  /** At least one. All are fired together. */
  readonly pieces: readonly PlanPiece[];
  readonly furnace: PlanFurnace;
  readonly wantedHrc: number | null;
  readonly coolIn: CoolMedium | null;
  /**
   * What the soak clock will run on. `core`: the pieces are known to the firing, and the soak is the hold alone.
   * `air`: they are not, and the soak must hold the lag of the core too.
   */
  readonly clock: 'core' | 'air';
}

export interface ProposedPlan {
  readonly segments: readonly Segment[];
  readonly reasons: readonly Reason[];
  readonly target: Target;
  /** Until the end of the soak from a cold furnace, s; null: not known. */
  readonly expectedSeconds: number | null;
}

/** Even heating in an electric oven, °C/h: slow enough that thin and thick pieces come along. Ours. */
const OVEN_RAMP = 600;
/**
 * Proposes a schedule. Pure.
 *
 * @throws PhysicsError `not-applicable` when nothing is known to propose (a forging heat, a step that must not be
 *   done to this steel, no window), `no-solution` when the hardness cannot be had or the core never arrives
 */
export function proposePlan(question: ProposalQuestion): ProposedPlan {
  const { step, pieces, furnace } = question;
  refuse(step, pieces);
  const thickest = pieces.reduce((a, b) => (b.thicknessMm > a.thicknessMm ? b : a));
  const hold = longestHold(question, thickest);
  const target = targetOf(pieces, step, question.wantedHrc, hold.seconds / 3600);
  const tolerance = toleranceOf(furnace, step);
  const rate = furnace.kind === 'electric-oven' ? OVEN_RAMP : null;
  const lag = slowestLag(question, target.celsius, tolerance);
  const soakSeconds = question.clock === 'core' ? hold.seconds : rounded(hold.seconds + lag.slowSeconds);
  const cooling = coolingOf(question, target.celsius);
  const targetCelsius = target.celsius;
  const ramp: Segment = {
    kind: 'ramp',
    targetCelsius,
    toleranceCelsius: tolerance,
    rateCelsiusPerHour: rate,
  };
  const soak: Segment = {
    kind: 'soak',
    targetCelsius,
    toleranceCelsius: tolerance,
    durationSeconds: soakSeconds,
  };
  const reasons = [
    { path: '/segments/0/targetCelsius', ...target.reason },
    rampReason(rate),
    { path: '/segments/1/targetCelsius', ...target.reason },
    { path: '/segments/1/toleranceCelsius', ...toleranceReason(furnace, tolerance) },
    ...soakReasons(question, hold, lag, thickest),
    ...cooling.reasons,
  ];
  const rampSeconds = ((targetCelsius - COLD_CELSIUS) / rampRateOf(ramp, furnace)) * 3600;
  const expectedSeconds = rampSeconds + lag.seconds + hold.seconds;
  return { segments: [ramp, soak, cooling.segment], reasons, target, expectedSeconds };
}

function refuse(step: RouteHeat, pieces: readonly PlanPiece[]): void {
  if (pieces.length === 0) throw new PhysicsError('bad-input', 'name at least one piece');
  if (step === 'forge') {
    throw new PhysicsError(
      'not-applicable',
      'a forging heat is led by the work, not by a schedule: see the steel for where to start and stop',
    );
  }
  for (const { steel } of pieces) {
    if (!steel.notRecommended.includes(windowStepOf(step))) continue;
    throw new PhysicsError(
      'not-applicable',
      `${step} must not be done to ${steel.title}: it would harden or crack. Choose another step`,
    );
  }
}

function longestHold({ step, pieces }: ProposalQuestion, thickest: PlanPiece): Hold {
  return pieces
    .map(({ steel }) => holdOf(step, thickest.thicknessMm, carbideFormers(steel), windowFor(steel, step)))
    .reduce((a, b) => (b.seconds > a.seconds ? b : a));
}

/** The lag of the slowest piece behind an even ramp, or behind a furnace that is hot already. */
function slowestLag({ pieces, furnace }: ProposalQuestion, targetCelsius: number, tolerance: number): Lag {
  const lags = pieces.map((piece) =>
    coreLag({
      piece,
      furnace,
      fromCelsius: COLD_CELSIUS,
      targetCelsius,
      toleranceCelsius: tolerance,
      rateCelsiusPerHour: furnace.kind === 'electric-oven' ? OVEN_RAMP : null,
    }),
  );
  return lags.reduce<Lag>(
    (worst, lag) => {
      if (lag === null) {
        throw new PhysicsError(
          'no-solution',
          'the middle of the thickest piece does not arrive within a day',
        );
      }
      return lag.slowSeconds > worst.slowSeconds ? lag : worst;
    },
    { seconds: 0, slowSeconds: 0 },
  );
}

function rampReason(rate: number | null): Reason {
  const path = '/segments/0/rateCelsiusPerHour';
  return rate === null
    ? { path, code: 'ramp-free', params: {}, from: HABIT }
    : { path, code: 'ramp-even', params: { rateCelsiusPerHour: rate }, from: HABIT };
}

function soakReasons(
  { clock, furnace }: ProposalQuestion,
  hold: Hold,
  lag: Lag,
  thickest: PlanPiece,
): Reason[] {
  const path = '/segments/1/durationSeconds';
  const { thicknessMm } = thickest;
  const params = {
    seconds: Math.round(lag.seconds),
    slowSeconds: Math.round(lag.slowSeconds),
    thicknessMm,
    furnace: furnace.name,
  };
  const code = clock === 'core' ? 'soak-core-clock' : 'soak-core-lag';
  return [
    { path, code: 'soak-hold', params: { seconds: hold.seconds, thicknessMm }, from: hold.from },
    { path, code, params, from: furnace.exposureFrom },
  ];
}
