import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { supplyFeatures } from '../../../hub/physics/gas-supply/supply-features.ts';
import { type SupplyCause, supplyTrouble } from '../../../hub/physics/gas-supply/supply-trouble.ts';
import {
  EVERYTHING,
  GOOD,
  LOOKALIKES,
  NO_CYLINDER_GAUGE,
  type Sensors,
  START_MS,
  STEP_DOWN,
  type SupplyPlan,
  supplyCurve,
  TROUBLES,
} from './supply-curves.ts';

const CASES = Object.entries(TROUBLES) as (readonly [SupplyCause, SupplyPlan])[];
const ALIKE = Object.entries(LOOKALIKES) as (readonly [SupplyCause, SupplyPlan])[];
/** Gas is wanted in all but these. */
const shutFor = (cause: SupplyCause) => cause === 'regulator-creep' || cause === 'lock-up';
const told = (cause: SupplyCause, plan: SupplyPlan, sensors: Sensors, seed = 1) =>
  supplyTrouble({ samples: supplyCurve(plan, seed, sensors), burnerOpen: !shutFor(cause) });

describe('each trouble is told apart from the others', () => {
  test.each([...CASES, ...ALIKE])('%s, with every sensor there is', (cause, plan) => {
    const found = told(cause, plan, EVERYTHING);
    expect(found.verdict).toBe(cause);
    expect(found.possible).toEqual([cause]);
    expect(found.ruledOut).toHaveLength(9);
  });

  test.each([...CASES, ...ALIKE])('%s, by outlet pressure, mass and temperature alone', (cause, plan) => {
    const found = told(cause, plan, NO_CYLINDER_GAUGE);
    expect(found.verdict).toBe(cause);
    expect(found.complete).toBe(true);
  });

  test.each([...CASES, ...ALIKE])('%s, without the burner’s word', (cause, plan) => {
    const samples = supplyCurve(plan, 3, EVERYTHING);
    expect(supplyTrouble({ samples, burnerOpen: null }).verdict).toBe(cause);
  });

  test('and names the evidence against each neighbour', () => {
    const { ruledOut } = told('cylinder-chill', TROUBLES['cylinder-chill'], NO_CYLINDER_GAUGE);
    const by = Object.fromEntries(ruledOut.map((entry) => [entry.cause, entry.by]));
    expect(by['empty-cylinder']).toContain('no-liquid-left');
    expect(by['shut-valve']).toContain('outlet-dropped');
    expect(by.restriction).toEqual(['cylinder-feeds']);
  });
});

describe('with fewer sensors', () => {
  const POORER: readonly Sensors[] = [
    { cylinder: true, mass: false, wall: true },
    { cylinder: true, mass: false, wall: false },
    { cylinder: false, mass: true, wall: false },
    { cylinder: false, mass: false, wall: true },
    { cylinder: false, mass: false, wall: false },
  ];

  test.each([...CASES, ...ALIKE])('%s is never called by another name', (cause, plan) => {
    for (const sensors of POORER) {
      const found = told(cause, plan, sensors);
      expect(found.possible).toContain(cause);
      expect([cause, 'cannot-tell']).toContain(found.verdict);
    }
  });

  test('pressure alone cannot tell a shut valve from an empty cylinder or a hose that is off, nor chill from a restriction', () => {
    const blind = { cylinder: false, mass: false, wall: false };
    expect(told('shut-valve', TROUBLES['shut-valve'], blind)).toMatchObject({
      verdict: 'cannot-tell',
      possible: ['empty-cylinder', 'shut-valve', 'gas-escaping'],
    });
    const sag = told('cylinder-chill', TROUBLES['cylinder-chill'], blind);
    expect(sag.possible).toEqual(expect.arrayContaining(['cylinder-chill', 'restriction']));
  });

  test('a verdict with evidence missing says so', () => {
    const found = told('regulator-creep', TROUBLES['regulator-creep'], {
      cylinder: false,
      mass: false,
      wall: false,
    });
    expect(found).toMatchObject({ verdict: 'regulator-creep', complete: true });
    const droop = told('regulator-droop', TROUBLES['regulator-droop'], {
      cylinder: false,
      mass: true,
      wall: false,
    });
    expect(droop).toMatchObject({ verdict: 'regulator-droop', complete: false });
  });
});

describe('gas that goes where none is wanted', () => {
  test('shows by the scale alone: steady pressure, a shut burner and a falling mass', () => {
    const samples = supplyCurve(GOOD);
    expect(supplyTrouble({ samples, burnerOpen: false }).verdict).toBe('gas-escaping');
    expect(supplyTrouble({ samples, burnerOpen: true }).verdict).toBe('steady');
    expect(supplyTrouble({ samples, burnerOpen: null }).verdict).toBe('steady');
  });

  test('is not suspected of a shut burner whose scale stands still', () => {
    const samples = supplyCurve({ ...GOOD, boreMm: () => 0 });
    expect(supplyTrouble({ samples, burnerOpen: false }).verdict).toBe('steady');
  });
});

describe('what is no trouble', () => {
  test('a good hour is steady', () => {
    const found = supplyTrouble({ samples: supplyCurve({ ...GOOD, minutes: 60 }), burnerOpen: true });
    expect(found).toMatchObject({ verdict: 'steady', possible: [] });
    expect(found.features.flow).toBe('steady');
  });

  test('a cylinder that is cold but still strong enough is steady', () => {
    const cold = { ...GOOD, liquidCelsius: (minute: number) => -8 - minute * 0.1 };
    expect(supplyTrouble({ samples: supplyCurve(cold), burnerOpen: true }).verdict).toBe('steady');
  });

  test('a step down may be a hand or a kinked hose, and no cylinder or regulator is blamed', () => {
    const found = supplyTrouble({ samples: supplyCurve(STEP_DOWN), burnerOpen: true });
    expect(found.verdict).toBe('cannot-tell');
    expect(found.possible).toEqual(['restriction', 'turned-down']);
  });

  test('a step down with the burner shut is no shut valve: something is left at the outlet', () => {
    const found = supplyTrouble({
      samples: supplyCurve({ ...STEP_DOWN, boreMm: () => 0 }),
      burnerOpen: false,
    });
    expect(found.features).toMatchObject({ outlet: 'dropped', outletGone: false, flow: 'none' });
    expect(found.possible).toEqual([]);
    expect(found.verdict).toBe('cannot-tell');
  });

  test('a cold cylinder does not hide a restriction that the cylinder’s own gauge shows', () => {
    const plan = { ...TROUBLES.restriction, liquidCelsius: () => -12 };
    expect(told('restriction', plan, EVERYTHING).verdict).toBe('restriction');
  });
});

describe('for any size of trouble and any scatter', () => {
  const sensors = fc.record({ cylinder: fc.boolean(), mass: fc.boolean(), wall: fc.boolean() });
  const size = fc.double({ min: 0, max: 1, noNaN: true });
  const seeds = fc.integer({ min: 1, max: 1e6 });

  const sized = (share: number): (readonly [SupplyCause, SupplyPlan])[] => [
    [
      'cylinder-chill',
      { ...GOOD, liquidCelsius: (m) => -30 - 8 * share + (18 + 8 * share) * Math.exp(-m / 12) },
    ],
    ['empty-cylinder', { ...GOOD, startKilograms: 0.2 + 0.25 * share }],
    ['shut-valve', { ...GOOD, valve: (m) => (m < 10 + 8 * share ? 1 : 0), startKilograms: 1 + 8 * share }],
    ['regulator-creep', { ...GOOD, boreMm: () => 0, creepPascals: 700 + 3000 * share }],
    ['regulator-droop', { ...GOOD, boreMm: (m) => (m < 8 ? 0.6 : 1.2 + 0.3 * share) }],
    ['gas-escaping', { ...GOOD, escaping: (m) => (m < 10 + 8 * share ? 0 : (1.5 + 4 * share) / 3600) }],
    [
      'restriction',
      { ...GOOD, ceilingPascals: (m) => 138_000 * (1 - (0.35 + 0.4 * share) * Math.min(1, m / 20)) },
    ],
  ];

  test('no trouble is ever called by the name of another', () => {
    fc.assert(
      fc.property(size, seeds, sensors, fc.boolean(), (share, seed, there, knowsBurner) => {
        for (const [cause, plan] of sized(share)) {
          const samples = supplyCurve(plan, seed, there);
          const found = supplyTrouble({ samples, burnerOpen: knowsBurner ? !shutFor(cause) : null });
          expect(found.possible).toContain(cause);
          expect([cause, 'cannot-tell']).toContain(found.verdict);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('every one is told with mass and temperature there', () => {
    fc.assert(
      fc.property(size, seeds, (share, seed) => {
        for (const [cause, plan] of sized(share)) {
          expect(told(cause, plan, NO_CYLINDER_GAUGE, seed).verdict).toBe(cause);
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe('holes and bad windows', () => {
  test('a fall that nobody saw may have been sudden or slow', () => {
    const samples = supplyCurve(TROUBLES['shut-valve'], 1, EVERYTHING).filter(
      ({ atMs }) => atMs < START_MS + 11 * 60_000 || atMs > START_MS + 18 * 60_000,
    );
    const found = supplyTrouble({ samples, burnerOpen: true });
    expect(found.features.outlet).toBe('fell');
    expect(found.possible).toContain('shut-valve');
    expect(found.complete).toBe(false);
  });

  test('a drop between readings half a minute apart is still a drop', () => {
    const samples = supplyCurve(TROUBLES['shut-valve']).filter((_, i) => i % 3 === 0);
    expect(supplyFeatures(samples).outlet).toBe('dropped');
  });

  test('a coarse scale leaves the flow unknown instead of guessed', () => {
    const rounded = (plan: SupplyPlan, stepKilograms: number) =>
      supplyCurve(plan).map((sample) => ({
        ...sample,
        contentsKilograms: Math.round((sample.contentsKilograms ?? 0) / stepKilograms) * stepKilograms,
      }));
    expect(supplyFeatures(rounded(TROUBLES.restriction, 0.5)).flow).toBeNull();
    expect(supplyFeatures(rounded(TROUBLES['regulator-creep'], 0.5)).flow).toBeNull();
    expect(supplyFeatures(rounded(TROUBLES['shut-valve'], 0.02)).flow).toBe('stopped');
  });

  test('a drift of the scale is no flow', () => {
    const drifting = supplyCurve(TROUBLES['regulator-creep']).map((sample, i) => ({
      ...sample,
      contentsKilograms: 5 - i * 0.0001,
    }));
    expect(supplyFeatures(drifting).flow).toBe('none');
  });

  test('too few samples and time that stands still are refused', () => {
    const samples = supplyCurve(GOOD);
    const badInput = expect.objectContaining({ code: 'bad-input' });
    expect(() => supplyFeatures(samples.slice(0, 11))).toThrowError(badInput);
    expect(() => supplyFeatures(samples.map((sample) => ({ ...sample, atMs: START_MS })))).toThrowError(
      badInput,
    );
  });
});
