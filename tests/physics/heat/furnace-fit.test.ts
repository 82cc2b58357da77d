import { describe, expect, it } from 'vitest';
import { makeBody } from '../../../hub/physics/heat/body.ts';
import { fitFurnace, type RunPoint } from '../../../hub/physics/heat/furnace-fit.ts';
import { structuralSteel } from '../../../hub/physics/heat/material.ts';
import { type PieceState, startPiece, stepPiece } from '../../../hub/physics/heat/piece.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';

const BODY = makeBody({ shape: 'bar', sectionMetres: 0.02, material: structuralSteel(), intervals: 6 });

interface Truth {
  readonly emissivity: number;
  readonly film: number;
  readonly chamber: (minute: number) => number;
  readonly minutes: number;
  readonly noiseCelsius?: number;
  readonly startCelsius?: number;
}

/** A run of a furnace that we know, read in quarter degrees every 30 s. */
function record(truth: Truth, read = (state: PieceState) => state.coreCelsius): RunPoint[] {
  const noise = seededNoise(7);
  let state = startPiece(BODY, truth.startCelsius ?? 20);
  const { emissivity, film } = truth;
  const points: RunPoint[] = [];
  for (let i = 0; i <= truth.minutes * 2; i++) {
    const chamberCelsius = truth.chamber(i / 2);
    const surroundingsWereCelsius = points.at(-1)?.chamberCelsius ?? chamberCelsius;
    const seconds = i === 0 ? 0 : 30;
    state = stepPiece(state, {
      seconds,
      surroundingsCelsius: chamberCelsius,
      surroundingsWereCelsius,
      emissivity,
      film,
    });
    const loadCelsius = Math.round((read(state) + noise() * (truth.noiseCelsius ?? 0)) * 4) / 4;
    points.push({ atMs: 1_700_000_000_000 + i * 30_000, chamberCelsius, loadCelsius });
  }
  return points;
}

const TWO_STAGES = (minute: number): number => (minute < 25 ? 450 : 850);

describe('furnace fit', () => {
  it('finds the emissivity and film of a run through quarter-degree steps and noise', () => {
    const run = record({ emissivity: 0.62, film: 18, chamber: TWO_STAGES, minutes: 50, noiseCelsius: 0.5 });
    const fit = fitFurnace({ body: BODY, run });
    expect(Math.abs(fit.emissivity - 0.62)).toBeLessThan(0.01);
    expect(Math.abs(fit.filmWM2K - 18)).toBeLessThan(1);
    expect(fit.rmsCelsius).toBeLessThan(0.8);
    expect(fit.separated).toBe(true);
    expect(Math.abs(fit.emissivity - 0.62)).toBeLessThan(4 * fit.emissivityStandardError + 0.002);
  });

  it('reads a thermocouple on the surface when told so', () => {
    const truth = { emissivity: 0.8, film: 10, chamber: TWO_STAGES, minutes: 50 };
    const run = record(truth, (state) => state.surfaceCelsius);
    const fit = fitFurnace({ body: BODY, run, loadAt: 'surface' });
    expect(Math.abs(fit.emissivity - 0.8)).toBeLessThan(0.01);
    expect(Math.abs(fit.filmWM2K - 10)).toBeLessThan(1);
  });

  it('shows a large residual when the record is not of this piece', () => {
    const run = record({ emissivity: 0.62, film: 18, chamber: TWO_STAGES, minutes: 50 });
    const dropped = run.map((p, i) => (i > 40 && i < 70 ? { ...p, loadCelsius: p.loadCelsius - 120 } : p));
    expect(fitFurnace({ body: BODY, run: dropped }).rmsCelsius).toBeGreaterThan(10);
  });

  it('tells when a run over a small range cannot part radiation from convection', () => {
    const chamber = (): number => 850;
    const run = record({
      emissivity: 0.6,
      film: 30,
      chamber,
      minutes: 20,
      startCelsius: 740,
      noiseCelsius: 1,
    });
    expect(fitFurnace({ body: BODY, run }).separated).toBe(false);
  });

  it('refuses a run that says nothing, and a record out of order', () => {
    const idle = record({ emissivity: 0.6, film: 18, chamber: () => 22, minutes: 30 });
    expect(() => fitFurnace({ body: BODY, run: idle })).toThrow(
      expect.objectContaining({ code: 'not-applicable' }),
    );
    const run = record({ emissivity: 0.6, film: 18, chamber: TWO_STAGES, minutes: 10 });
    expect(() => fitFurnace({ body: BODY, run: run.toReversed() })).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
    expect(() => fitFurnace({ body: BODY, run: run.slice(0, 5) })).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
  });
});
