import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ThermocoupleType } from '../../hub/physics/thermocouple-direct-table.ts';
import { toleranceBand } from '../../hub/physics/thermocouple-tolerance.ts';
import { type ToleranceClass, toleranceRows } from '../../hub/physics/thermocouple-tolerance-table.ts';
import { codeOf } from './thermocouple-support.ts';

type Case = readonly [ThermocoupleType, ToleranceClass, number, number];

/** Computed apart from this program from IEC 60584-1 as reprinted by a sensor maker. */
const iecCases: readonly Case[] = [
  ['K', 'iec-1', 1000, 4.0],
  ['K', 'iec-2', 1200, 9.0],
  ['N', 'iec-2', 800, 6.0],
  ['S', 'iec-1', 1300, 1.6],
  ['R', 'iec-2', 1300, 3.25],
  ['B', 'iec-2', 1500, 3.75],
  ['K', 'iec-1', 20, 1.5],
  ['K', 'iec-1', 375, 1.5],
  ['K', 'iec-2', -40, 2.5],
  ['J', 'iec-2', 750, 5.625],
  ['E', 'iec-1', 800, 3.2],
  ['T', 'iec-1', 100, 0.5],
  ['T', 'iec-1', 350, 1.4],
  ['T', 'iec-3', -200, 3.0],
  ['K', 'iec-3', -200, 3.0],
  ['K', 'iec-3', 40, 2.5],
  ['S', 'iec-1', 1100, 1.0],
  ['B', 'iec-3', 600, 4.0],
  ['B', 'iec-3', 1700, 8.5],
];

/** ASTM E230 Table 1 as reprinted by three wire and sensor makers. */
const astmCases: readonly Case[] = [
  ['K', 'astm-standard', 100, 2.2],
  ['K', 'astm-standard', 1000, 7.5],
  ['K', 'astm-special', 1000, 4.0],
  ['N', 'astm-standard', 1260, 9.45],
  ['J', 'astm-standard', 760, 5.7],
  ['E', 'astm-standard', 600, 3.0],
  ['E', 'astm-special', 100, 1.0],
  ['T', 'astm-special', 370, 1.48],
  ['S', 'astm-standard', 1000, 2.5],
  ['R', 'astm-special', 500, 0.6],
  ['B', 'astm-standard', 1000, 5.0],
  ['B', 'astm-special', 1600, 4.0],
  ['K', 'astm-standard', -200, 4.0],
  ['E', 'astm-standard', -200, 2.0],
  ['T', 'astm-standard', -200, 3.0],
];

describe('tolerance class', () => {
  it.each([...iecCases, ...astmCases])(
    'type %s %s at %d °C is ±%d °C',
    (type, toleranceClass, celsius, half) => {
      const band = toleranceBand(type, toleranceClass, celsius);
      expect(band.halfWidthCelsius).toBeCloseTo(half, 9);
      expect(band.lowCelsius).toBeCloseTo(celsius - half, 9);
      expect(band.highCelsius).toBeCloseTo(celsius + half, 9);
    },
  );

  it.each([
    ['K', 'iec-1', 1000.1],
    ['K', 'iec-1', -40.1],
    ['K', 'iec-2', 1200.1],
    ['K', 'iec-3', 41],
    ['K', 'iec-3', -200.1],
    ['J', 'iec-3', 0],
    ['R', 'iec-3', 20],
    ['B', 'iec-1', 1000],
    ['B', 'iec-2', 599],
    ['B', 'astm-standard', 869],
    ['T', 'astm-special', -10],
    ['N', 'astm-standard', -10],
    ['S', 'astm-standard', 1480.1],
  ] as const)('type %s %s says nothing about %d °C', (type, toleranceClass, celsius) => {
    expect(codeOf(() => toleranceBand(type, toleranceClass, celsius))).toBe('not-applicable');
  });

  it('tells where a class holds when it does not hold here', () => {
    expect(() => toleranceBand('K', 'iec-1', 1100)).toThrow('holds for -40 to 1000 °C, not at 1100 °C');
    expect(() => toleranceBand('B', 'iec-1', 1100)).toThrow('no tolerance class iec-1 for type B');
    expect(codeOf(() => toleranceBand('K', 'iec-1', Number.NaN))).toBe('bad-input');
  });

  it('never narrows away from 0 °C and never jumps inside its range', () => {
    const rows = fc.constantFrom(...toleranceRows.filter((row) => row.lowCelsius >= 0));
    fc.assert(
      fc.property(rows, fc.double({ min: 0, max: 0.999, noNaN: true }), (row, share) => {
        const [type] = row.types;
        if (type === undefined) return;
        const celsius = row.lowCelsius + share * (row.highCelsius - row.lowCelsius);
        const step = 0.001 * (row.highCelsius - row.lowCelsius);
        const rise =
          toleranceBand(type, row.class, celsius + step).halfWidthCelsius -
          toleranceBand(type, row.class, celsius).halfWidthCelsius;
        expect(rise).toBeGreaterThanOrEqual(-1e-12);
        expect(rise).toBeLessThanOrEqual(0.01 * step + 1e-9);
      }),
    );
  });

  it('says of every number where it comes from, and what rests on memory', () => {
    for (const row of toleranceRows) expect(row.from.source).toMatch(/IEC 60584-1|ASTM E230/);
    expect(toleranceBand('S', 'iec-1', 1300).from.standing).toBe('from-memory');
    expect(toleranceBand('S', 'iec-1', 1100).from.standing).toBe('published-secondary');
    expect(toleranceBand('K', 'astm-standard', -100).from.note).toContain('the wider is used');
  });
});
