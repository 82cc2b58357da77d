/**
 * Records of a load thermocouple made with our own conduction model: a piece in
 * a furnace or in air, read at an interval, with noise and digitiser steps.
 */
import { makeBody, type Shape } from '../../hub/physics/heat/body.ts';
import type { Material } from '../../hub/physics/heat/material.ts';
import { type PieceState, startPiece, stepPiece } from '../../hub/physics/heat/piece.ts';
import type { LoadPoint } from '../../hub/physics/time-at-temperature/arrest-legs.ts';
import { seededNoise } from './seeded-noise.ts';

export interface RecordPlan {
  readonly material: Material;
  readonly shape?: Shape;
  readonly sectionMetres?: number;
  readonly startCelsius: number;
  /** °C after so many seconds. */
  readonly chamber: (seconds: number) => number;
  readonly seconds: number;
  readonly everySeconds?: number;
  /** Standard deviation of the reading, K. Default 0.3. */
  readonly noiseCelsius?: number;
  readonly seed?: number;
  readonly withChamber?: boolean;
  readonly read?: (state: PieceState) => number;
}

const START_MS = 1_700_000_000_000;

export function loadRecord(plan: RecordPlan): LoadPoint[] {
  const { material, shape = 'bar', sectionMetres = 0.016, everySeconds = 5 } = plan;
  const read = plan.read ?? ((state: PieceState) => state.coreCelsius);
  const noise = seededNoise(plan.seed ?? 1);
  let state = startPiece(makeBody({ shape, sectionMetres, material, intervals: 8 }), plan.startCelsius);
  const record: LoadPoint[] = [];
  for (let at = 0; at <= plan.seconds; at += everySeconds) {
    if (at > 0) {
      const surroundingsCelsius = plan.chamber(at);
      const surroundingsWereCelsius = plan.chamber(at - everySeconds);
      const film = { emissivity: 0.8, film: 10 };
      state = stepPiece(state, {
        seconds: everySeconds,
        surroundingsCelsius,
        surroundingsWereCelsius,
        ...film,
      });
    }
    const reading = read(state) + noise() * (plan.noiseCelsius ?? 0.3);
    const point = { atMs: START_MS + at * 1000, celsius: quarters(reading) };
    record.push(plan.withChamber === true ? { ...point, chamberCelsius: quarters(plan.chamber(at)) } : point);
  }
  return record;
}

function quarters(celsius: number): number {
  return Math.round(celsius * 4) / 4;
}
