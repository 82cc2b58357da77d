import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchesOf, commonWindow, type DueHeat, mayShare } from '../../hub/bench/batches.ts';
import { heatLengthMm, MOST_SECTION_FACTOR, sectionFactor } from '../../hub/bench/section.ts';
import { ROUTE_HEATS } from '../../hub/contract/route-template.ts';

function heat(
  pieceId: string,
  lowCelsius: number,
  highCelsius: number,
  extra: Partial<DueHeat> = {},
): DueHeat {
  return {
    pieceId,
    step: 'normalise',
    lowCelsius,
    highCelsius,
    scheduleId: null,
    heatLengthMm: 3,
    urgent: false,
    coolsInFurnaceTo: null,
    ...extra,
  };
}

const names = (heats: readonly DueHeat[]) =>
  batchesOf(heats).map((batch) =>
    batch.heats.map(({ pieceId }) => pieceId).toSorted((a, b) => a.localeCompare(b)),
  );

const anyHeat = fc.record({
  step: fc.constantFrom(...ROUTE_HEATS.slice(0, 3)),
  low: fc.integer({ min: 150, max: 1200 }),
  width: fc.integer({ min: 0, max: 150 }),
  scheduleId: fc.option(fc.constantFrom('s1', 's2'), { nil: null }),
  heatLengthMm: fc.double({ min: 0.1, max: 100, noNaN: true }),
  urgent: fc.boolean(),
});
const anyHeats = fc
  .array(anyHeat, { maxLength: 90 })
  .map((made) => made.map(({ low, width, ...rest }, n) => heat(`p${n}`, low, low + width, rest)));

describe('which pieces can share a firing', () => {
  it('puts every due heat in exactly one batch', () => {
    fc.assert(
      fc.property(anyHeats, (heats) => {
        const placed = batchesOf(heats).flatMap((batch) => batch.heats);
        expect(placed).toHaveLength(heats.length);
        expect(new Set(placed.map(({ pieceId }) => pieceId)).size).toBe(heats.length);
      }),
    );
  });

  it('makes no batch without a window that suits all of it, nor with sections too unlike, nor of two steps', () => {
    fc.assert(
      fc.property(anyHeats, (heats) => {
        for (const batch of batchesOf(heats)) {
          for (const each of batch.heats) {
            expect(each.step).toBe(batch.step);
            expect(each.lowCelsius).toBeLessThanOrEqual(batch.lowCelsius);
            expect(each.highCelsius).toBeGreaterThanOrEqual(batch.highCelsius);
            expect([null, batch.scheduleId]).toContain(each.scheduleId);
          }
          expect(batch.lowCelsius).toBeLessThanOrEqual(batch.highCelsius);
          const lengths = batch.heats.map(({ heatLengthMm: length }) => length);
          expect(sectionFactor(lengths)).toBeLessThanOrEqual(MOST_SECTION_FACTOR);
          expect(batch.heats.length).toBeLessThanOrEqual(60);
        }
      }),
    );
  });

  it('leaves no two batches of one piece each that could have shared', () => {
    fc.assert(
      fc.property(anyHeats, (heats) => {
        const single = batchesOf(heats).flatMap(({ heats: [only, ...rest] }) =>
          only && rest.length === 0 ? [only] : [],
        );
        single.forEach((one, n) => {
          for (const other of single.slice(n + 1)) expect(mayShare([one, other])).toBe(false);
        });
      }),
    );
  });

  it('finds as few batches as can be when only windows count (points that stab intervals)', () => {
    const heats = [heat('a', 800, 850), heat('b', 840, 900), heat('c', 820, 845), heat('d', 880, 920)];
    expect(names(heats)).toEqual([
      ['a', 'c'],
      ['b', 'd'],
    ]);
  });

  it('keeps windows apart that only touch: a furnace needs room to move', () => {
    expect(names([heat('a', 800, 850), heat('b', 845, 900)])).toHaveLength(2);
    expect(names([heat('a', 800, 850), heat('b', 840, 900)])).toHaveLength(1);
    expect(commonWindow([heat('a', 800, 850), heat('b', 840, 900)])).toEqual({
      lowCelsius: 840,
      highCelsius: 850,
    });
  });

  it('lets pieces with one narrow window share, however narrow', () => {
    expect(names([heat('a', 798, 802), heat('b', 798, 802)])).toEqual([['a', 'b']]);
  });

  it('does not lay a thin knife beside an anvil tool', () => {
    const thin = heat('knife', 800, 850, { heatLengthMm: heatLengthMm({ shape: 'plate', thicknessMm: 3 }) });
    const thick = heat('anvil', 800, 850, { heatLengthMm: heatLengthMm({ shape: 'bar', thicknessMm: 40 }) });
    expect(names([thin, thick])).toHaveLength(2);
  });

  it('keeps pieces apart whose schedules the smith chose differently', () => {
    const with1 = heat('a', 800, 850, { scheduleId: 's1' });
    const with2 = heat('b', 800, 850, { scheduleId: 's2' });
    const free = heat('c', 800, 850);
    expect(names([with1, with2])).toHaveLength(2);
    expect(batchesOf([with1, free])).toMatchObject([{ scheduleId: 's1' }]);
  });
});

describe('the length that heat has to fill', () => {
  // Volume over surface of a large plate, a long cylinder and a sphere: t/2, d/4, d/6 (from memory: Incropera 5.1).
  it.each([
    ['plate', 12, 6],
    ['bar', 12, 3],
    ['cylinder', 12, 3],
    ['sphere', 12, 2],
  ] as const)('of a %s of %d mm is %d mm', (shape, thicknessMm, length) => {
    expect(heatLengthMm({ shape, thicknessMm })).toBe(length);
  });
});
