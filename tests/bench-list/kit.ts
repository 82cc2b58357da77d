import type { BenchInput } from '../../hub/bench/bench.ts';
import type { BenchFurnaceState } from '../../hub/bench/furnaces.ts';
import type { Piece, RouteStep, StepOutcome } from '../../hub/contract/piece.ts';
import type { RouteHeat } from '../../hub/contract/route-template.ts';
import { findGrade } from '../../hub/physics/steel/catalogue.ts';
import { type Steel, steelOfGrade } from '../../hub/physics/steel/own-steel.ts';

export function grade(name: string): Steel {
  const found = findGrade(name);
  if (!found) throw new Error(`no grade ${name}`);
  return steelOfGrade(found);
}

const plain = { title: '', note: '', optional: false, reminders: [] };

export function heatStep(
  step: RouteHeat,
  outcome: StepOutcome | null = null,
  scheduleId: string | null = null,
): RouteStep {
  const done = outcome === null ? null : { at: 1, by: '', firingId: null, outcome };
  return { kind: 'heat', step, scheduleId, id: step, done, ...plain };
}

export function piece(id: string, route: RouteStep[], extra: Partial<Piece> = {}): Piece {
  return {
    id,
    mark: id,
    title: '',
    note: '',
    steel: { grade: '1095', title: '', certificateId: null, composition: null },
    section: { shape: 'plate', thicknessMm: 6, massKilograms: null },
    route,
    archived: false,
    createdAt: 1,
    updatedAt: 1,
    ...extra,
  };
}

export function furnace(id: string, extra: Partial<BenchFurnaceState> = {}): BenchFurnaceState {
  return {
    id,
    name: id,
    kind: 'electric-oven',
    ratedCelsius: 1200,
    presentCelsius: 20,
    runs: false,
    ...extra,
  };
}

export function input(pieces: readonly Piece[], extra: Partial<BenchInput> = {}): BenchInput {
  return {
    pieces,
    steelOf: ({ steel }) => (steel.grade === null ? null : grade(steel.grade)),
    scheduleOf: () => null,
    furnaces: [furnace('oven')],
    firingOf: () => null,
    ...extra,
  };
}
