import { describe, expect, it } from 'vitest';
import { type ProbeConstruction, recommendedUpperLimit } from '../../hub/physics/probe-limits.ts';
import { mineralInsulatedLimits, protectedWireLimits } from '../../hub/physics/probe-limits-table.ts';
import type { ThermocoupleType } from '../../hub/physics/thermocouple-direct-table.ts';
import { codeOf } from './thermocouple-support.ts';

const wire = (type: ThermocoupleType, millimetres: number) =>
  recommendedUpperLimit({ type, construction: 'protected-wire', millimetres });
const sheath = (type: ThermocoupleType, millimetres: number) =>
  recommendedUpperLimit({ type, construction: 'mineral-insulated', millimetres });

describe('recommended upper limit', () => {
  // ASTM E230 Table 6 as reprinted by sensor makers: AWG 8, 14, 20, 24, 28, 30.
  it.each([
    ['K', [1260, 1090, 980, 870, 870, 760]],
    ['N', [1260, 1090, 980, 870, 870, 760]],
    ['J', [760, 590, 480, 370, 370, 320]],
    ['E', [870, 650, 540, 430, 430, 370]],
  ] as const)('type %s falls with wire size as in ASTM E230', (type, limits) => {
    const found = [3.25, 1.63, 0.81, 0.51, 0.33, 0.25].map((millimetres) => wire(type, millimetres).celsius);
    expect(found).toEqual(limits);
  });

  it('knows one wire size for the platinum types (ASTM E230 Table 6)', () => {
    expect(wire('R', 0.51).celsius).toBe(1480);
    expect(wire('S', 0.5).celsius).toBe(1480);
    expect(wire('B', 0.5).celsius).toBe(1700);
    expect(codeOf(() => wire('S', 0.35))).toBe('not-applicable');
  });

  it('takes the finer listed size, so the lower limit, between two sizes', () => {
    expect(wire('K', 1.0)).toMatchObject({ celsius: 980, listedMillimetres: 0.81 });
    expect(wire('K', 3.0)).toMatchObject({ celsius: 1090, listedMillimetres: 1.63 });
    expect(wire('K', 6.0)).toMatchObject({ celsius: 1260, listedMillimetres: 3.25 });
    expect(wire('T', 3.25).celsius).toBe(370);
  });

  it('takes metric wire for the gauge it stands for', () => {
    expect(wire('K', 0.8).celsius).toBe(980);
    expect(wire('K', 3.2).celsius).toBe(1260);
    expect(wire('J', 0.5).celsius).toBe(370);
  });

  it('does not use the wire table for mineral-insulated probes', () => {
    expect(sheath('K', 3).celsius).toBe(1070);
    expect(sheath('K', 6).celsius).toBe(1150);
    expect(sheath('J', 1.5).celsius).toBe(440);
    expect(codeOf(() => sheath('S', 3))).toBe('not-applicable');
  });

  it('refuses what is finer than listed, or no size at all', () => {
    expect(codeOf(() => wire('K', 0.2))).toBe('not-applicable');
    expect(() => wire('K', 0.2)).toThrow('finer than the finest listed');
    for (const millimetres of [0, -1, Number.NaN])
      expect(codeOf(() => wire('K', millimetres))).toBe('bad-input');
  });

  it('never allows a finer probe more than a thicker one', () => {
    const constructions: readonly ProbeConstruction[] = ['protected-wire', 'mineral-insulated'];
    for (const construction of constructions) {
      for (const type of ['K', 'N', 'J', 'E', 'T'] as const) {
        const sizes = [0.5, 0.6, 0.9, 1, 1.5, 1.7, 2, 3, 3.3, 4.5, 6, 8, 10];
        const limits = sizes.map(
          (millimetres) => recommendedUpperLimit({ type, construction, millimetres }).celsius,
        );
        expect(limits).toEqual([...limits].sort((a, b) => a - b));
      }
    }
  });

  it('says of every limit where it comes from', () => {
    for (const row of [...protectedWireLimits, ...mineralInsulatedLimits]) {
      expect(row.from.source).toMatch(/ASTM E230|ASTM E608/);
    }
    expect(wire('E', 0.25).from.standing).toBe('from-memory');
    expect(wire('K', 0.81).from.standing).toBe('published-secondary');
    expect(sheath('K', 6).from.standing).toBe('from-memory');
  });
});
