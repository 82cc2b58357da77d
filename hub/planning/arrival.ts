import { PhysicsError } from '../physics/errors.ts';
import { makeBody } from '../physics/heat/body.ts';
import { structuralSteel } from '../physics/heat/material.ts';
import { startPiece } from '../physics/heat/piece.ts';
import { timeToTolerance } from '../physics/heat/soak-time.ts';
import type { PlanFurnace, PlanPiece } from './types.ts';

/** How long the middle of a piece lags behind the air of the furnace. */

export interface Lag {
  /** After the air is at the target, until the core is inside tolerance, s: likely, and with a slow furnace. */
  readonly seconds: number;
  readonly slowSeconds: number;
}

export interface LagQuestion {
  readonly piece: PlanPiece;
  readonly furnace: PlanFurnace;
  readonly fromCelsius: number;
  readonly targetCelsius: number;
  readonly toleranceCelsius: number;
  /** °C/h; null: the furnace is hot when the piece goes in. */
  readonly rateCelsiusPerHour: number | null;
}

const INTERVALS = 10;
const LONGEST_SECONDS = 24 * 3600;

/** @returns null when the core does not arrive within a day */
export function coreLag(question: LagQuestion): Lag | null {
  const { exposure, slowExposure } = question.furnace;
  const seconds = lagWith(question, exposure);
  const slowSeconds = lagWith(question, slowExposure);
  return seconds === null || slowSeconds === null ? null : { seconds, slowSeconds };
}

function lagWith(question: LagQuestion, { emissivity, film }: PlanFurnace['exposure']): number | null {
  const { piece, fromCelsius, targetCelsius, toleranceCelsius, rateCelsiusPerHour } = question;
  const rampSeconds =
    rateCelsiusPerHour === null ? 0 : (Math.abs(targetCelsius - fromCelsius) / rateCelsiusPerHour) * 3600;
  const body = makeBody({
    shape: piece.shape,
    sectionMetres: piece.thicknessMm / 1000,
    material: structuralSteel(),
    intervals: INTERVALS,
  });
  const surroundings = (seconds: number): number =>
    rampSeconds === 0 || seconds >= rampSeconds
      ? targetCelsius
      : fromCelsius + ((targetCelsius - fromCelsius) * seconds) / rampSeconds;
  try {
    const arrival = timeToTolerance({
      from: startPiece(body, fromCelsius),
      surroundings: rampSeconds === 0 ? targetCelsius : surroundings,
      emissivity,
      film,
      targetCelsius,
      toleranceCelsius,
      limitSeconds: rampSeconds + LONGEST_SECONDS,
    });
    return Math.max(0, arrival.seconds - rampSeconds);
  } catch (fault) {
    if (fault instanceof PhysicsError && fault.code === 'no-solution') return null;
    throw fault;
  }
}
