import { describe, expect, it } from 'vitest';
import type { LoadPiece } from '../../hub/contract/load.ts';
import { judgementOf } from '../../hub/firing/judge.ts';
import { materialOf } from '../../hub/firing/load/steel-body.ts';
import type { FiringCase } from '../../hub/firing/types.ts';
import { makeBody } from '../../hub/physics/heat/body.ts';
import { heatCurve } from '../../hub/physics/heat/heat-curve.ts';
import { at, CHAMBER, caseOf, curve, judged, LOAD, QUENCH, RAMP, runTo, sentences, soak } from './kit.ts';

/** Air and core: a furnace that is right says nothing of the middle of a thick piece. Band 790 to 810 °C. */

const COMPOSITION = { C: 0.84, Mn: 0.75, Si: 0.22 };

function piece(mark: string, thicknessMm: number, shape: 'bar' | 'plate' = 'bar'): LoadPiece {
  return {
    pieceId: mark,
    mark,
    title: mark,
    steel: { id: null, title: '1084', composition: COMPOSITION },
    section: { shape, thicknessMm, massKilograms: null },
    routeStepId: null,
    step: 'austenitise',
  };
}

const THICK = piece('H-60', 60);
const THIN = piece('K-3', 3, 'plate');
const oven = (pieces: LoadPiece[], change: Partial<FiringCase> = {}): FiringCase =>
  caseOf([RAMP, soak(900), QUENCH], { furnaceKind: 'electric-oven', pieces, ...change });

/** Cold at the start, 798 °C after half an hour, held there. */
const heats = (s: number) => Math.min(798, 20 + s * 0.43);
const air = (to: number, every = 5) => curve('chamber', { from: 0, to, every }, heats);
const codes = (reasons: readonly { code: string }[] | undefined) => reasons?.map(({ code }) => code);

describe('a thick piece in air that is right', () => {
  it('starts its soak clock when the core is there, minutes after the air', () => {
    const result = judged(oven([THICK]), { readings: air(5600, 10), to: 5600 });
    expect(result.soakClockOn).toBe('core');
    expect(result.soakClockText).toContain('H-60');
    const [, soaking] = result.segments;
    expect(soaking?.state).toBe('done');
    expect(soaking?.soakSecondsCore).toBe(900);
    expect((soaking?.soakSecondsAir ?? 0) - 900).toBeGreaterThan(300);
  });

  it('is not met when the smith goes by the air, and the reason says what the core had', () => {
    const confirmations = [{ at: at(1800 + 920), segment: 1 }];
    const result = judged(oven([THICK]), { readings: air(3000), confirmations, to: 3000, endedAt: at(2990) });
    const [, soaking] = result.segments;
    expect(soaking?.verdict).toBe('not-met');
    expect(['core-cold', 'core-short']).toContain(soaking?.reasons[0]?.code);
    expect(soaking?.reasons[0]?.text).toMatch(/^Stopped by the air: the core of H-60/);
    expect(soaking?.soakSecondsAir).toBeGreaterThanOrEqual(900);
  });

  it('of the same times without a known piece is met: nothing is claimed of a core', () => {
    const confirmations = [{ at: at(2800), segment: 2 }];
    const result = judged(oven([]), { readings: air(3000), confirmations, to: 3000, endedAt: at(2990) });
    expect(result.soakClockOn).toBe('coldest-thermocouple');
    expect(result.segments[1]).toMatchObject({ verdict: 'met', soakSecondsCore: null, soakSecondsAir: 900 });
    expect(result.pieces).toEqual([]);
  });

  it('is waited for in words, and no alarm calls its coming a stall', () => {
    const c = oven([piece('M-30', 30)]);
    const said = sentences(c, { readings: air(4200, 10), to: 4200 });
    expect(said.map(({ code }) => code)).toEqual(['heat-up', 'wait-core', 'hold', 'quench-now']);
    expect(said[1]?.text).toMatch(/^Core is coming/);
    const { events } = judged(c, { readings: air(4200, 10), to: 4200 });
    expect(events.filter(({ kind }) => kind === 'finding-raised')).toEqual([]);
  });

  it('is foretold: when its soak will start and end, and the band holds what then happens', () => {
    const c = oven([THICK]);
    const started = judged(c, { readings: air(5600, 10), to: 5600 }).segments[1]?.endedAt ?? 0;
    const { forecast } = judged(c, { readings: air(2000), to: 2000 });
    const ends = forecast?.soakEndsAt;
    expect(Math.abs((ends?.at ?? 0) - started)).toBeLessThan(120_000);
    expect(ends?.low).toBeLessThanOrEqual(started);
    expect(ends?.high ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(started);
  });
});

describe('the computed load', () => {
  it('goes as the conduction of the same piece by itself', () => {
    const { pieces } = judged(oven([THICK]), { readings: air(2400), to: 2400 });
    const body = makeBody({ shape: 'bar', sectionMetres: 0.06, material: materialOf(COMPOSITION) });
    const plan = { body, startCelsius: 20, surroundings: heats, emissivity: 0.7, film: 10 };
    const alone = heatCurve({ ...plan, seconds: 2400, everySeconds: 2 }).at(-1);
    expect(Math.abs((pieces[0]?.coreCelsius ?? 0) - (alone?.coreCelsius ?? 0))).toBeLessThan(3);
    expect(pieces[0]?.coreLowCelsius).toBeLessThan(pieces[0]?.coreCelsius ?? 0);
    expect(pieces[0]?.coreHighCelsius).toBeGreaterThan(pieces[0]?.coreCelsius ?? 0);
  });

  it('tells the slowest and the quickest piece, and the quick one goes with the air', () => {
    const { pieces } = judged(oven([THIN, THICK]), { readings: air(2400), to: 2400 });
    expect(pieces.map(({ mark, part }) => [mark, part])).toEqual([
      ['H-60', 'slowest'],
      ['K-3', 'quickest'],
    ]);
    expect(Math.abs((pieces[1]?.coreCelsius ?? 0) - 798)).toBeLessThan(5);
  });

  it('does not hang on how often the node speaks', () => {
    const often = judged(oven([THICK]), { readings: air(2400, 1), to: 2400 }).pieces[0]?.coreCelsius ?? 0;
    // A value is held until the next: on a ramp of 0.43 °C/s half of 15 s is 3 °C of air.
    const seldom = judged(oven([THICK]), { readings: air(2400, 15), to: 2400 }).pieces[0]?.coreCelsius ?? 0;
    expect(Math.abs(often - seldom)).toBeLessThan(3);
  });

  it('is not known while nothing is measured, and is bridged and said so afterwards', () => {
    const c = oven([THICK]);
    const gap = air(2400).filter((reading) => reading.at < at(1000) || reading.at > at(1300));
    expect(judged(c, { readings: gap, to: 1200 }).pieces[0]?.coreCelsius).toBeNull();
    const after = judged(c, { readings: gap, to: 2400 }).pieces[0];
    const whole = judged(c, { readings: air(2400), to: 2400 }).pieces[0];
    expect(after?.bridgedSeconds).toBeGreaterThan(250);
    expect(Math.abs((after?.coreCelsius ?? 0) - (whole?.coreCelsius ?? 0))).toBeLessThan(5);
  });

  it('is drawn to a thermocouple on the load, and says so', () => {
    const c = oven([THICK], { watched: [CHAMBER, LOAD] });
    const colder = curve('load', { from: 0, to: 2400, every: 5 }, (s) => heats(s) * 0.7);
    const { pieces, soakClockText } = judged(c, { readings: [...air(2400), ...colder], to: 2400 });
    expect(pieces[0]?.correctedBy).toBe('load');
    expect(Math.abs((pieces[0]?.surfaceCelsius ?? 0) - heats(2400) * 0.7)).toBeLessThan(40);
    expect(soakClockText).toContain('probe on the load');
  });

  it('leaves the furnace when the smith says so, and cools in what it went into', () => {
    const c = oven([THIN], {});
    const confirmations = [{ at: at(2900), segment: 2 }];
    const state = runTo(c, { readings: air(3000), confirmations, to: 2960 });
    const [quenched] = judgementOf(c, state).pieces;
    expect(quenched?.place).toBe('quench');
    expect(quenched?.coreCelsius).toBeLessThan(150);
    expect(codes(judgementOf(c, state).segments[1]?.reasons)).toEqual([]);
  });

  it('is not computed from a thermocouple on the load alone', () => {
    const c = oven([THICK], { watched: [LOAD] });
    const readings = curve('load', { from: 0, to: 100 }, heats);
    expect(judged(c, { readings, to: 100 })).toMatchObject({
      soakClockOn: 'coldest-thermocouple',
      pieces: [],
    });
  });
});
