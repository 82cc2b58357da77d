import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeBody, type Shape } from '../../../hub/physics/heat/body.ts';
import { type Material, plainMaterial, structuralSteel } from '../../../hub/physics/heat/material.ts';
import { heatContentJKg, type PieceState, startPiece, stepPiece } from '../../../hub/physics/heat/piece.ts';
import { transformingSteel } from '../../../hub/physics/heat/transforming-steel.ts';

const STEEL = structuralSteel();
const EUTECTOID = transformingSteel();
const RECALESCING = transformingSteel({ undercoolingCelsius: 25, coolingSeconds: 60 });

const shape = fc.constantFrom<Shape>('plate', 'bar', 'sphere');
const steel = fc.constantFrom<Material>(STEEL, EUTECTOID, RECALESCING);
const single = fc.constantFrom<Material>(STEEL, EUTECTOID);
const section = fc.double({ min: 0.001, max: 0.15, noNaN: true });
const temperature = fc.double({ min: 0, max: 1250, noNaN: true });
/** From a fast node to one that was away for most of a day. */
const interval = fc.constantFrom(0.1, 1, 10, 60, 600, 3600, 40_000);
const surroundings = fc.record({
  surroundingsCelsius: temperature,
  emissivity: fc.double({ min: 0, max: 1, noNaN: true }),
  film: fc.double({ min: 0, max: 3000, noNaN: true }),
});

function start(material: Material, form: Shape, sectionMetres: number, celsius: number): PieceState {
  return startPiece(makeBody({ shape: form, sectionMetres, material, intervals: 8 }), celsius);
}

/**
 * What double precision alone can cost, J/kg: a flux is the difference of two
 * temperatures near 1000 °C, known to eps, times the conductance of a node
 * distance, times the time. Measured over six decades of step and section the
 * error stays within 30 times this; 50 is allowed.
 */
function rounding(state: PieceState, seconds: readonly number[]): number {
  const { chain, massKg } = state.body;
  const conductance = 53 * Math.max(...chain.pathMetres);
  const time = seconds.reduce((sum, each) => sum + each, 0);
  return 1e-6 + (50 * Number.EPSILON * conductance * 1250 * time) / massKg;
}

describe('energy in the piece', () => {
  it('what comes in through the skin is what the piece holds, at any step and across any peak', () => {
    fc.assert(
      fc.property(
        steel,
        shape,
        section,
        temperature,
        fc.array(fc.tuple(interval, surroundings), { minLength: 1, maxLength: 6 }),
        (material, form, sectionMetres, celsius, steps) => {
          const before = start(material, form, sectionMetres, celsius);
          const after = steps.reduce((s, [seconds, around]) => stepPiece(s, { seconds, ...around }), before);
          const gained = heatContentJKg(after) - heatContentJKg(before);
          expect(Math.abs(gained - after.heatInJKg)).toBeLessThan(
            rounding(
              before,
              steps.map(([seconds]) => seconds),
            ),
          );
        },
      ),
      { numRuns: 100, seed: 11 },
    );
  });

  it('a piece left where it is as hot as its surroundings does not change', () => {
    const state = start(STEEL, 'bar', 0.03, 735);
    const later = stepPiece(state, { seconds: 3600, surroundingsCelsius: 735, emissivity: 0.8, film: 10 });
    expect(later.coreCelsius).toBeCloseTo(735, 6);
    expect(later.heatInJKg).toBeCloseTo(0, 3);
  });
});

describe('order and bounds', () => {
  it('no node ever leaves the range between its start and its surroundings', () => {
    fc.assert(
      fc.property(
        single,
        shape,
        section,
        temperature,
        interval,
        surroundings,
        (m, form, size, at, seconds, around) => {
          const after = stepPiece(start(m, form, size, at), { seconds, ...around });
          const low = Math.min(at, around.surroundingsCelsius) - 1e-6;
          const high = Math.max(at, around.surroundingsCelsius) + 1e-6;
          expect(Math.min(...after.celsius)).toBeGreaterThanOrEqual(low);
          expect(Math.max(...after.celsius)).toBeLessThanOrEqual(high);
        },
      ),
      { numRuns: 80, seed: 12 },
    );
  });

  it('a piece that heats is hotter outside than inside, and never falls back', () => {
    fc.assert(
      fc.property(steel, shape, section, interval, (material, form, sectionMetres, seconds) => {
        let state = start(material, form, sectionMetres, 20);
        for (let i = 0; i < 8; i++) {
          const next = stepPiece(state, { seconds, surroundingsCelsius: 850, emissivity: 0.8, film: 10 });
          expect(next.surfaceCelsius).toBeGreaterThanOrEqual(next.coreCelsius - 1e-6);
          expect(next.coreCelsius).toBeGreaterThanOrEqual(state.coreCelsius - 1e-6);
          expect(next.meanCelsius).toBeGreaterThanOrEqual(state.meanCelsius - 1e-6);
          state = next;
        }
      }),
      { numRuns: 40, seed: 13 },
    );
  });

  it('a thicker piece is never ahead of a thinner one, a sphere never behind a plate', () => {
    fc.assert(
      fc.property(section, shape, fc.double({ min: 1.05, max: 3, noNaN: true }), (thin, form, ratio) => {
        const heat = (f: Shape, size: number): number => {
          let state = start(STEEL, f, size, 20);
          for (let i = 0; i < 10; i++) {
            state = stepPiece(state, { seconds: 30, surroundingsCelsius: 830, emissivity: 0.8, film: 10 });
          }
          return state.coreCelsius;
        };
        expect(heat(form, Math.min(1, thin * ratio))).toBeLessThanOrEqual(heat(form, thin) + 0.5);
        expect(heat('sphere', thin)).toBeGreaterThanOrEqual(heat('plate', thin) - 0.5);
      }),
      { numRuns: 25, seed: 14 },
    );
  });

  it('with constant properties, heating and cooling mirror each other', () => {
    fc.assert(
      fc.property(
        shape,
        section,
        fc.double({ min: 1, max: 3000, noNaN: true }),
        interval,
        (form, size, film, seconds) => {
          const plain = plainMaterial({ densityKgM3: 7850, specificHeatJKgK: 600, conductivityWmK: 30 });
          let up = start(plain, form, size, 20);
          let down = start(plain, form, size, 800);
          for (let i = 0; i < 4; i++) {
            up = stepPiece(up, { seconds, surroundingsCelsius: 800, emissivity: 0, film });
            down = stepPiece(down, { seconds, surroundingsCelsius: 20, emissivity: 0, film });
          }
          expect(up.coreCelsius + down.coreCelsius).toBeCloseTo(820, 4);
          expect(up.surfaceCelsius + down.surfaceCelsius).toBeCloseTo(820, 4);
        },
      ),
      { numRuns: 40, seed: 15 },
    );
  });

  it('one long step and many short ones end close together', () => {
    const from = start(STEEL, 'plate', 0.025, 20);
    const around = { surroundingsCelsius: 815, emissivity: 0.8, film: 10 };
    const long = stepPiece(from, { seconds: 1200, ...around });
    let short = from;
    for (let i = 0; i < 1200; i++) short = stepPiece(short, { seconds: 1, ...around });
    expect(Math.abs(long.coreCelsius - short.coreCelsius)).toBeLessThan(4);
  });

  it('follows a chamber that ramps within the step', () => {
    const from = start(STEEL, 'plate', 0.006, 20);
    const ramped = stepPiece(from, {
      seconds: 600,
      surroundingsWereCelsius: 20,
      surroundingsCelsius: 820,
      emissivity: 0.8,
      film: 10,
    });
    const atOnce = stepPiece(from, { seconds: 600, surroundingsCelsius: 820, emissivity: 0.8, film: 10 });
    expect(ramped.coreCelsius).toBeLessThan(atOnce.coreCelsius - 50);
    expect(ramped.coreCelsius).toBeGreaterThan(100);
  });
});

describe('refusals of the stepper', () => {
  const state = start(STEEL, 'plate', 0.01, 20);
  const around = { surroundingsCelsius: 800, emissivity: 0.8, film: 10 };
  const refused = (code: string) => expect.objectContaining({ code });

  it('refuses time that runs backwards, NaN and a week and a day', () => {
    for (const seconds of [-1, Number.NaN, 8 * 86_400]) {
      expect(() => stepPiece(state, { seconds, ...around })).toThrow(refused('out-of-range'));
    }
    expect(stepPiece(state, { seconds: 0, ...around })).toBe(state);
  });

  it('refuses surroundings, emissivity and films that make no sense', () => {
    const step = { seconds: 1, ...around };
    expect(() => stepPiece(state, { ...step, surroundingsCelsius: 2000 })).toThrow(refused('out-of-range'));
    expect(() => stepPiece(state, { ...step, emissivity: 1.2 })).toThrow(refused('out-of-range'));
    expect(() => stepPiece(state, { ...step, film: -1 })).toThrow(refused('out-of-range'));
    expect(() => stepPiece(state, { ...step, film: [] })).toThrow(refused('bad-input'));
    const falling = [
      { surfaceCelsius: 100, wM2K: 10 },
      { surfaceCelsius: 50, wM2K: 20 },
    ];
    expect(() => stepPiece(state, { ...step, film: falling })).toThrow(refused('bad-input'));
  });

  it('refuses a section of nothing, a fractional cut and an impossible share', () => {
    const body = { shape: 'plate', material: STEEL } as const;
    expect(() => makeBody({ ...body, sectionMetres: 0 })).toThrow(refused('out-of-range'));
    expect(() => makeBody({ ...body, sectionMetres: 0.01, intervals: 2.5 })).toThrow(refused('bad-input'));
    expect(() => startPiece(state.body, 20, 1.5)).toThrow(refused('bad-input'));
    expect(() => plainMaterial({ densityKgM3: 0, specificHeatJKgK: 500, conductivityWmK: 1 })).toThrow(
      refused('out-of-range'),
    );
  });
});
