import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { benchOf } from '../../hub/bench/bench.ts';
import { ROUTE_HEATS } from '../../hub/contract/route-template.ts';
import { Schedule } from '../../hub/contract/schedule.ts';
import { GRADES } from '../../hub/physics/steel/catalogue.ts';
import { furnace, grade, heatStep, input, piece } from './kit.ts';

const codes = (reasons: readonly { code: string }[]) => reasons.map(({ code }) => code);

describe('the bench list', () => {
  it('says what is due next for every piece, and nothing of a piece that is through', () => {
    const due = benchOf(
      input([
        piece('new', [heatStep('normalise'), heatStep('harden')]),
        piece('half', [heatStep('normalise', 'met'), heatStep('harden')]),
        piece('through', [heatStep('normalise', 'met')]),
        piece('no-route', []),
      ]),
    ).due;
    expect(due.map(({ piece: { id }, step }) => [id, step.kind === 'heat' && step.step])).toEqual([
      ['new', 'normalise'],
      ['half', 'harden'],
    ]);
    expect(due[1]?.before).toBe('met');
  });

  it('puts a quenched piece first in the list and in the furnace', () => {
    const quenched = piece('q', [heatStep('harden', 'met'), heatStep('temper')], {
      steel: { grade: 'O1', title: '', certificateId: null, composition: null },
    });
    const schedule = Schedule.parse({
      id: 's',
      version: 1,
      name: 'Temper',
      segments: [{ kind: 'soak', targetCelsius: 200, durationSeconds: 7200 }],
      createdAt: 1,
      archived: false,
    });
    const waiting = { ...quenched, route: [heatStep('harden', 'met'), heatStep('temper', null, 's')] };
    const { due, furnaces } = benchOf(
      input([piece('a', [heatStep('normalise')]), waiting], {
        scheduleOf: () => schedule,
        furnaces: [furnace('oven', { presentCelsius: 860 })],
      }),
    );
    expect(due.map(({ piece: { id }, urgent }) => [id, urgent])).toEqual([
      ['q', true],
      ['a', false],
    ]);
    expect(furnaces[0]?.batches.map(({ step, targetCelsius }) => [step, targetCelsius])).toEqual([
      ['temper', 200],
      ['normalise', expect.any(Number)],
    ]);
    expect(codes(furnaces[0]?.batches[0]?.reasons ?? [])).toContain('temper-first');
  });

  it('does not hurry a piece whose hardening was skipped, nor one that is tempered', () => {
    const { due } = benchOf(
      input([
        piece('skipped', [heatStep('harden', 'skipped'), heatStep('temper')]),
        piece('again', [heatStep('harden', 'met'), heatStep('temper', 'met'), heatStep('temper')]),
      ]),
    );
    expect(due.map(({ urgent }) => urgent)).toEqual([false, false]);
  });

  it('lays two likely pieces together at a heat inside the windows of both, and says why', () => {
    const one = piece('a', [heatStep('normalise')]);
    const two = piece('b', [heatStep('normalise')], {
      section: { shape: 'plate', thicknessMm: 8, massKilograms: null },
    });
    const [oven] = benchOf(input([one, two])).furnaces;
    const [batch] = oven?.batches ?? [];
    const window = grade('1095').windows.find(({ step }) => step === 'normalise');
    expect(oven?.batches).toHaveLength(1);
    expect(batch?.pieceIds).toEqual(['a', 'b']);
    expect(batch?.targetCelsius).toBeGreaterThanOrEqual(window?.lowCelsius ?? 0);
    expect(batch?.targetCelsius).toBeLessThanOrEqual(window?.highCelsius ?? 0);
    expect(codes(batch?.reasons ?? [])).toEqual([
      'share-window',
      'share-section',
      'nearest-heat',
      'furnace-fits',
    ]);
  });

  it('leaves a heat that is not known for its steel to the smith', () => {
    const unknown = piece('mystery', [heatStep('harden')], {
      steel: { grade: null, title: '', certificateId: null, composition: null },
    });
    const { furnaces, unplaced } = benchOf(input([unknown]));
    expect(furnaces[0]?.batches).toEqual([]);
    expect(unplaced).toMatchObject([
      { pieceIds: ['mystery'], window: null, reasons: [{ code: 'alone-no-window' }] },
    ]);
  });

  it('never asks more of a furnace than it is rated for, and says when none gets there', () => {
    const forged = piece('a', [heatStep('forge')]);
    const cool = benchOf(input([forged], { furnaces: [furnace('oven', { ratedCelsius: 500 })] }));
    expect(cool.unplaced).toMatchObject([{ pieceIds: ['a'], reasons: [{}, { code: 'no-furnace' }] }]);
    const start = grade('1095').windows.find(({ step }) => step === 'forge')?.highCelsius ?? 0;
    const target = (ratedCelsius: number) =>
      benchOf(input([forged], { furnaces: [furnace('oven', { ratedCelsius })] })).furnaces[0]?.batches[0]
        ?.targetCelsius;
    expect(target(start + 100)).toBe(start - 10);
    expect(target(start - 100)).toBe(start - 110);
  });

  it('counts a furnace that nobody reads as cold, and says so', () => {
    const { furnaces } = benchOf(
      input([piece('a', [heatStep('normalise')])], {
        furnaces: [furnace('oven', { presentCelsius: null, runs: true })],
      }),
    );
    const [batch] = furnaces[0]?.batches ?? [];
    expect(codes(batch?.reasons ?? [])).toEqual(
      expect.arrayContaining(['first-heat-unknown', 'furnace-runs']),
    );
    expect(furnaces[0]?.travelCelsius).toBe((batch?.targetCelsius ?? 0) - 20);
  });

  it('forges in the gas forge and tempers in the oven where both are', () => {
    const furnaces = [furnace('forge', { kind: 'gas-forge', ratedCelsius: 1300 }), furnace('oven')];
    const pieces = [piece('f', [heatStep('forge')]), piece('n', [heatStep('normalise')])];
    const found = benchOf(input(pieces, { furnaces })).furnaces;
    expect(found.map(({ furnace: { id }, batches }) => [id, batches.map(({ step }) => step)])).toEqual([
      ['forge', ['forge']],
      ['oven', ['normalise']],
    ]);
  });

  it('does not propose a piece that lies in a furnace already, and still lists it', () => {
    const { due, furnaces, unplaced } = benchOf(
      input([piece('a', [heatStep('normalise')])], { firingOf: () => 'firing-1' }),
    );
    expect(due).toMatchObject([{ firingId: 'firing-1' }]);
    expect([...(furnaces[0]?.batches ?? []), ...unplaced]).toEqual([]);
  });

  it('puts every heat that is due and not burning in one batch and no other, whatever the shop', () => {
    const anyPiece = fc.record({
      step: fc.constantFrom(...ROUTE_HEATS),
      grade: fc.constantFrom(...GRADES.map(({ id }) => id)),
      thicknessMm: fc.double({ min: 0.5, max: 100, noNaN: true }),
      burning: fc.boolean(),
    });
    const anyShop = fc.record({
      pieces: fc.array(anyPiece, { maxLength: 25 }),
      rated: fc.array(fc.integer({ min: 200, max: 1400 }), { maxLength: 3 }),
    });
    fc.assert(
      fc.property(anyShop, ({ pieces: made, rated }) => {
        const pieces = made.map(({ step, grade: name, thicknessMm }, n) =>
          piece(`p${n}`, [heatStep(step)], {
            steel: { grade: name, title: '', certificateId: null, composition: null },
            section: { shape: 'bar', thicknessMm, massKilograms: null },
          }),
        );
        const burning = new Set(made.flatMap((each, n) => (each.burning ? [`p${n}`] : [])));
        const { furnaces, unplaced, due } = benchOf(
          input(pieces, {
            furnaces: rated.map((ratedCelsius, n) => furnace(`f${n}`, { ratedCelsius })),
            firingOf: (id) => (burning.has(id) ? 'firing' : null),
          }),
        );
        const batches = [...furnaces.flatMap((each) => each.batches), ...unplaced];
        const placed = batches.flatMap(({ pieceIds }) => pieceIds);
        expect(due).toHaveLength(pieces.length);
        expect(placed.toSorted((a, b) => a.localeCompare(b))).toEqual(
          pieces.flatMap(({ id }) => (burning.has(id) ? [] : [id])).toSorted((a, b) => a.localeCompare(b)),
        );
        for (const { window, targetCelsius } of furnaces.flatMap((each) => each.batches)) {
          expect(targetCelsius).toBeGreaterThanOrEqual(window?.lowCelsius ?? Number.POSITIVE_INFINITY);
          expect(targetCelsius).toBeLessThanOrEqual(window?.highCelsius ?? Number.NEGATIVE_INFINITY);
        }
      }),
      { numRuns: 40 },
    );
  });
});
