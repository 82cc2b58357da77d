/** Each fault of the gas does to the readings what it does in a shop, and is told from the others by their shape. */
import { describe, expect, test } from 'vitest';
import type { SupplySample } from '../../../hub/physics/gas-supply/supply-sample.ts';
import { supplyTrouble } from '../../../hub/physics/gas-supply/supply-trouble.ts';
import type { BehaviourInput } from '../../../sensors-sim/behaviours/behaviour.ts';
import { FORGE_ANNEAL } from '../../../sensors-sim/plans.ts';
import { type Fired, fire } from '../fire.ts';

/** In the soak, where the smith sets the gas only a little. */
const FAULT_MINUTE = 33;
const startSeconds = FAULT_MINUTE * 60;
const inSoak = (minutes: number, ...behaviours: readonly BehaviourInput[]) =>
  fire({ plan: FORGE_ANNEAL, minutes, behaviours });

/** What the gauges and the scale showed between two minutes. */
function samples(fired: Fired, from: number, to: number): readonly SupplySample[] {
  const [outlet, cylinder, mass, wall] = [
    'supply-pressure',
    'cylinder-pressure',
    'cylinder-mass',
    'cylinder-wall',
  ].map((channel) => fired.readings('forge-node', channel));
  return (outlet ?? []).flatMap(({ seconds, value }, i) =>
    seconds < from * 60 || seconds > to * 60
      ? []
      : [
          {
            atMs: seconds * 1000,
            outletPascals: value,
            cylinderPascals: cylinder?.[i]?.value ?? null,
            contentsKilograms: mass?.[i]?.value ?? null,
            wallCelsius: wall?.[i]?.value ?? null,
          },
        ],
  );
}

/** The smith sets the gas while a fault is there; what the fault does is looked at from a fixed setting. */
function verdict(fired: Fired, from: number, to: number, burnerOpen: boolean | null): string {
  return supplyTrouble({ samples: samples(fired, from, to), burnerOpen }).verdict;
}

describe('a supply that is in order', () => {
  test('holds its pressure through the soak and burns what the scale loses', () => {
    const fired = inSoak(42);
    expect(verdict(fired, 33, 41, true)).toBe('steady');
    const [from, to] = [fired.at(33), fired.at(41)];
    const lost = from.cylinderKilograms - to.cylinderKilograms;
    expect(lost).toBeGreaterThan(0.05);
    expect(lost).toBeLessThan(0.15);
    expect(to.cylinderCelsius).toBeLessThan(from.cylinderCelsius);
    expect(fired.truth.every((each) => each.escapedGasKilogramsPerSecond === 0)).toBe(true);
  });
});

describe('told apart by pressure, mass and temperature', () => {
  test('a shut valve: nothing at once, liquid left', () => {
    const fired = inSoak(44, { name: 'shut-valve', startSeconds });
    expect(verdict(fired, 29, 40, true)).toBe('shut-valve');
    const supply = fired.readings('forge-node', 'supply-pressure');
    const after = supply.filter(({ seconds }) => seconds > startSeconds + 20);
    expect(after.every(({ value }) => value <= 500)).toBe(true);
    expect(fired.at(43).cylinderGaugePascals).toBeGreaterThan(400_000);
    expect(fired.at(43).forge.burning).toBe(false);
  });

  test('an empty cylinder: good pressure, then none, and nothing on the scale', () => {
    const fired = inSoak(56, { name: 'empty-cylinder', startSeconds, massKilograms: 0.1 });
    expect(verdict(fired, 34, 50, true)).toBe('empty-cylinder');
    expect(fired.at(35).supplyGaugePascals).toBeGreaterThan(30_000);
    expect(fired.at(54).supplyGaugePascals).toBeLessThan(1000);
    expect(fired.readings('forge-node', 'cylinder-mass').at(-1)?.value).toBeLessThan(0.05);
  });

  test('chill: the pressure sags over minutes with the cylinder, and liquid is left', () => {
    const cold: BehaviourInput = { name: 'cold-cylinder', startSeconds: 28 * 60 };
    const fired = inSoak(75, cold);
    expect(verdict(fired, 30, 57, true)).toBe('cylinder-chill');
    const last = fired.at(74);
    expect(last.cylinderKilograms).toBeGreaterThan(0.3);
    expect(last.cylinderCelsius).toBeLessThan(-35);
    expect(last.forge.chamberCelsius).toBeLessThan(840);
  });

  test('a kinked hose: less pressure and less flow at good cylinder pressure', () => {
    const fired = inSoak(60, {
      name: 'hose-restriction',
      startSeconds,
      lossPascals: 1_500_000,
      overMinutes: 4,
    });
    expect(verdict(fired, 28, 58, true)).toBe('restriction');
    expect(fired.at(58).cylinderGaugePascals).toBeGreaterThan(400_000);
    expect(fired.at(58).forge.chamberCelsius).toBeLessThan(fired.at(32).forge.chamberCelsius - 20);
  });

  test('a second burner on a tired regulator: less pressure, more flow', () => {
    const fired = inSoak(60, { name: 'regulator-droop', startSeconds });
    expect(verdict(fired, 29, 41, true)).toBe('regulator-droop');
    // Before the smith has turned it up again.
    expect(fired.at(33.2).supplyGaugePascals).toBeLessThan(0.85 * fired.at(32.9).supplyGaugePascals);
  });

  test('a leaking seat: with the burner shut the outlet climbs and climbs, and nothing leaves the scale', () => {
    const fired = fire({
      plan: null,
      minutes: 30,
      behaviours: [{ name: 'regulator-creep', startSeconds: 60 }],
    });
    expect(verdict(fired, 2, 28, false)).toBe('regulator-creep');
    const [early, late] = [fired.at(5), fired.at(25)];
    expect(late.supplyGaugePascals - early.supplyGaugePascals).toBeCloseTo(20 * 4000, -3);
    expect(late.cylinderKilograms).toBe(early.cylinderKilograms);
  });

  test('a leaking hose: the outlet stands, and the scale loses what no burner takes', () => {
    const behaviours: BehaviourInput[] = [
      { name: 'gas-left-on', startSeconds: 60 },
      { name: 'gas-escape', startSeconds: 120, kilogramsPerHour: 0.6 },
    ];
    const fired = fire({ plan: null, minutes: 40, behaviours });
    expect(verdict(fired, 3, 38, false)).toBe('gas-escaping');
    expect(fired.at(38).propanePpm).toBeGreaterThan(200);
    expect(fired.at(38).gasKilogramsPerSecond).toBe(0);
  });

  test('ice in the regulator: falling at good cylinder pressure', () => {
    const fired = inSoak(52, { name: 'falling-gas', startSeconds });
    expect(['restriction', 'cannot-tell']).toContain(verdict(fired, 28, 41, true));
    expect(fired.at(50).cylinderGaugePascals).toBeGreaterThan(400_000);
  });
});

describe('flame-out', () => {
  const out: BehaviourInput = { name: 'flame-out', startSeconds, noticedAfterSeconds: 300 };

  test('leaves the pressure standing while the chamber falls and gas fills the room', () => {
    const fired = inSoak(50, out);
    const [before, during] = [fired.at(FAULT_MINUTE - 1), fired.at(FAULT_MINUTE + 4)];
    expect(during.supplyGaugePascals).toBeGreaterThanOrEqual(before.supplyGaugePascals);
    expect(during.forge.chamberCelsius).toBeLessThan(before.forge.chamberCelsius - 60);
    expect(during.forge.burning).toBe(false);
    expect(during.propanePpm).toBeGreaterThan(300);
    expect(during.coKilogramsPerSecond).toBe(0);
  });

  test('is noticed in the end: the smith closes the gas', () => {
    const fired = inSoak(50, out);
    expect(fired.at(FAULT_MINUTE + 6).supplyGaugePascals).toBe(0);
    expect(fired.at(FAULT_MINUTE + 6).escapedGasKilogramsPerSecond).toBe(0);
    expect(fired.at(49).propanePpm).toBeLessThan(fired.at(FAULT_MINUTE + 5).propanePpm / 2);
  });

  test('cools faster than the same forge with its gas shut and the piece in it', () => {
    const [gone, shut] = [inSoak(38, out), inSoak(38, { name: 'shut-valve', startSeconds })];
    expect(gone.at(37).forge.chamberCelsius).toBeLessThan(shut.at(37).forge.chamberCelsius - 5);
  });
});

describe('gas that stays on', () => {
  const leftOn: BehaviourInput = { name: 'gas-left-on', startSeconds: 0 };

  test('after the heat is over stands at the gauge with nothing hot and nothing flowing', () => {
    const fired = fire({ plan: FORGE_ANNEAL, minutes: 110, behaviours: [leftOn] });
    const last = fired.at(109);
    expect(last.forge.segment).not.toBe(1);
    expect(last.supplyGaugePascals).toBeGreaterThan(25_000);
    expect(last.gasKilogramsPerSecond).toBe(0);
  });

  test('with the burner open and unlit runs out into the room', () => {
    const fired = fire({ plan: null, minutes: 30, behaviours: [{ ...leftOn, burner: 'unlit' }] });
    expect(fired.at(29).escapedGasKilogramsPerSecond).toBeGreaterThan(1e-4);
    expect(fired.at(29).forge.chamberCelsius).toBeLessThan(25);
    expect(fired.readings('forge-node', 'cylinder-mass').at(-1)?.value).toBeLessThan(8.1);
  });

  test('is not so in a shop whose smith shuts the cylinder', () => {
    expect(fire({ plan: null, minutes: 10 }).at(9).supplyGaugePascals).toBe(0);
  });
});

describe('a cylinder change', () => {
  test('takes the pressure away for a minute and brings a full scale', () => {
    const fired = inSoak(46, { name: 'cylinder-change', startSeconds });
    expect(fired.at(FAULT_MINUTE + 0.9).supplyGaugePascals).toBe(0);
    expect(fired.at(FAULT_MINUTE + 3).supplyGaugePascals).toBeGreaterThan(30_000);
    expect(fired.readings('forge-node', 'cylinder-mass').at(-1)?.value).toBeGreaterThan(8.5);
  });
});

describe('a dirty jet', () => {
  test('starves the forge at a pressure that stands or rises', () => {
    const fired = inSoak(60, { name: 'blocked-jet', startSeconds });
    const [before, after] = [fired.at(FAULT_MINUTE - 1), fired.at(58)];
    expect(after.supplyGaugePascals).toBeGreaterThan(before.supplyGaugePascals);
    expect(after.gasKilogramsPerSecond).toBeLessThan(before.gasKilogramsPerSecond);
    expect(after.forge.chamberCelsius).toBeLessThan(before.forge.chamberCelsius - 20);
    expect(after.forge.burning).toBe(true);
  });
});
