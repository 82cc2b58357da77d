/** Arrests on curves of our own conduction model, with latent heat and without. */
import { describe, expect, it } from 'vitest';
import { plainMaterial, structuralSteel } from '../../../hub/physics/heat/material.ts';
import { transformingSteel } from '../../../hub/physics/heat/transforming-steel.ts';
import { legsOf } from '../../../hub/physics/time-at-temperature/arrest-legs.ts';
import { findArrests } from '../../../hub/physics/time-at-temperature/arrests.ts';
import { loadRecord, type RecordPlan } from '../../reference/load-records.ts';

/** Ac1 725 to 745, Ar1 690 to 675, 82 J/g (Hagel, Pound and Mehl 1956). */
const EUTECTOID = transformingSteel();
/** No transformation at all: what must never show an arrest. */
const PLAIN = plainMaterial({ densityKgM3: 7850, specificHeatJKgK: 650, conductivityWmK: 28 });

type Course = Pick<RecordPlan, 'startCelsius' | 'chamber' | 'seconds'>;
const COURSES: Readonly<Record<string, Course>> = {
  'in a furnace of 850 °C': { startCelsius: 20, chamber: () => 850, seconds: 3000 },
  'in a furnace of 780 °C': { startCelsius: 20, chamber: () => 780, seconds: 6000 },
  'on a ramp of 1000 °C/h': { startCelsius: 20, chamber: (s) => Math.min(950, 20 + s / 3.6), seconds: 4200 },
  'in a furnace that cycles': {
    startCelsius: 20,
    chamber: (s) => 830 + 20 * Math.sin((2 * Math.PI * s) / 300),
    seconds: 3600,
  },
  'cooling in air': { startCelsius: 850, chamber: () => 20, seconds: 900 },
  'cooling with the furnace': { startCelsius: 850, chamber: (s) => 850 - s / 24, seconds: 8400 },
};
const names = Object.keys(COURSES);

function course(name: string): Course {
  const found = COURSES[name];
  if (found === undefined) throw new RangeError(name);
  return found;
}

describe('arrests of eutectoid steel', () => {
  it.each(names)('%s: found, in its place, with its heat', (name) => {
    const record = loadRecord({ material: EUTECTOID, ...course(name), withChamber: true });
    const { arrests, rejected } = findArrests({ record });
    const heating = !name.startsWith('cooling');
    expect(arrests).toHaveLength(1);
    expect(rejected).toHaveLength(0);
    const [arrest] = arrests;
    expect(arrest?.kind).toBe(heating ? 'decalescence' : 'recalescence');
    expect(arrest?.celsius).toBeGreaterThan(heating ? 720 : 670);
    expect(arrest?.celsius).toBeLessThan(heating ? 748 : 695);
    expect(Math.abs((arrest?.heatJoulesPerGram ?? 0) - 82)).toBeLessThan(8);
    expect(arrest?.confirmedByDerivative).toBe(true);
    expect(arrest?.confidence).toBeGreaterThanOrEqual(0.8);
  });

  it('are found through a degree of noise and without the chamber, less surely', () => {
    const plan = {
      material: EUTECTOID,
      ...course('in a furnace of 850 °C'),
      noiseCelsius: 1,
      everySeconds: 2,
    };
    const [arrest] = findArrests({ record: loadRecord(plan) }).arrests;
    expect(arrest?.kind).toBe('decalescence');
    expect(arrest?.chamberKnown).toBe(false);
    expect(Math.abs((arrest?.heatJoulesPerGram ?? 0) - 82)).toBeLessThan(16);
    expect(arrest?.confidence).toBeLessThan(1);
  });

  it('show on the skin of a thick bar as well as in its core', () => {
    const thick = {
      material: EUTECTOID,
      ...course('in a furnace of 850 °C'),
      sectionMetres: 0.04,
      seconds: 7500,
    };
    const record = loadRecord({ ...thick, read: (state) => state.surfaceCelsius, withChamber: true });
    const [arrest] = findArrests({ record }).arrests;
    expect(arrest?.kind).toBe('decalescence');
    expect(Math.abs((arrest?.heatJoulesPerGram ?? 0) - 82)).toBeLessThan(20);
  });

  it('one on the way up and one on the way down, and the gap between them', () => {
    const chamber = (s: number): number => (s < 2400 ? 860 : 30);
    const record = loadRecord({
      material: EUTECTOID,
      startCelsius: 20,
      chamber,
      seconds: 4000,
      withChamber: true,
    });
    const { arrests } = findArrests({ record });
    expect(arrests.map((arrest) => arrest.kind)).toEqual(['decalescence', 'recalescence']);
    const [up, down] = arrests;
    expect((up?.celsius ?? 0) - (down?.celsius ?? 0)).toBeGreaterThan(25);
    expect(up?.toMs ?? 0).toBeLessThan(down?.fromMs ?? 0);
  });

  it('a bar that re-heats as it recalesces says by how much', () => {
    const material = transformingSteel({ undercoolingCelsius: 25, coolingSeconds: 40 });
    const record = loadRecord({ material, ...course('cooling with the furnace'), withChamber: true });
    const [arrest] = findArrests({ record }).arrests;
    expect(arrest?.reheatedCelsius).toBeGreaterThan(12);
    expect(arrest?.reheatedCelsius).toBeLessThan(27);
  });

  it('give half the heat with half the pearlite', () => {
    const material = transformingSteel({ latentJoulesPerKg: 0.58 * 82_000 });
    const record = loadRecord({ material, ...course('in a furnace of 850 °C'), withChamber: true });
    const [arrest] = findArrests({ record }).arrests;
    expect(Math.abs((arrest?.heatJoulesPerGram ?? 0) - 0.58 * 82)).toBeLessThan(7);
  });

  it.each([8, 20])(
    'read only every %d s in air are found, with half the confidence or less',
    (everySeconds) => {
      const sparse = { material: EUTECTOID, ...course('cooling in air'), everySeconds, withChamber: true };
      const [arrest] = findArrests({ record: loadRecord(sparse) }).arrests;
      expect(arrest?.kind).toBe('recalescence');
      expect(arrest?.confidence).toBeLessThanOrEqual(0.5);
    },
  );
});

describe('records without an arrest', () => {
  const quiet = names.flatMap((name) => [1, 2, 3].map((seed) => [name, seed] as const));

  it.each(quiet)('%s, noise %d: none', (name, seed) => {
    for (const withChamber of [false, true]) {
      const noisy = { material: PLAIN, ...course(name), seed, noiseCelsius: seed / 3, withChamber };
      expect(findArrests({ record: loadRecord(noisy) })).toEqual({ arrests: [], rejected: [] });
    }
  });

  it('a load that soaks inside the search window is no arrest', () => {
    const record = loadRecord({ material: PLAIN, startCelsius: 20, chamber: () => 735, seconds: 9000 });
    expect(findArrests({ record }).arrests).toEqual([]);
  });

  it('EN steel does not recalesce below 720 °C: its peak sits at 735 both ways', () => {
    const record = loadRecord({ material: structuralSteel(), ...course('cooling in air') });
    expect(findArrests({ record }).arrests).toEqual([]);
  });

  it('nothing, one reading and a temper are no arrests and no errors', () => {
    expect(findArrests({ record: [] }).arrests).toEqual([]);
    expect(findArrests({ record: [{ atMs: 0, celsius: 735 }] }).arrests).toEqual([]);
    const temper = loadRecord({ material: EUTECTOID, startCelsius: 20, chamber: () => 200, seconds: 3000 });
    expect(findArrests({ record: temper }).arrests).toEqual([]);
  });
});

describe('disturbances', () => {
  /** A furnace held back at 735 °C for ten minutes, then let go: looks just like an arrest. */
  const heldBack = (s: number): number => (s < 2000 ? 735 : 900);
  const letGoMs = 1_700_000_000_000 + 2_000_000;

  it('a set-point change after a hold is rejected, and said to be', () => {
    const record = loadRecord({ material: PLAIN, startCelsius: 20, chamber: heldBack, seconds: 4000 });
    const disturbances = [{ atMs: letGoMs, kind: 'set-point' }] as const;
    const { arrests, rejected } = findArrests({ record, disturbances });
    expect(arrests).toEqual([]);
    expect(rejected.map((one) => one.reason)).toEqual(['set-point']);
  });

  it('with the chamber recorded, the same hold is not even mistaken for one', () => {
    const plan = { material: PLAIN, startCelsius: 20, chamber: heldBack, seconds: 4000, withChamber: true };
    expect(findArrests({ record: loadRecord(plan) })).toEqual({ arrests: [], rejected: [] });
  });

  it('a door opened in the window is rejected, one opened an hour earlier is not', () => {
    const record = loadRecord({ material: EUTECTOID, ...course('in a furnace of 850 °C') });
    const [found] = findArrests({ record }).arrests;
    const at = found?.fromMs ?? 0;
    const near = findArrests({ record, disturbances: [{ atMs: at - 50_000, kind: 'door' }] });
    expect(near.arrests).toEqual([]);
    expect(near.rejected.map((one) => one.reason)).toEqual(['door']);
    const far = findArrests({ record, disturbances: [{ atMs: at - 3_600_000, kind: 'door' }] });
    expect(far.arrests).toHaveLength(1);
  });
});

describe('legs of a record', () => {
  it('wiggles of 40 K do not end a leg, turns of 100 K do', () => {
    const celsius = [20, 300, 265, 850, 700, 738, 400, 500];
    const legs = legsOf(celsius.map((c, i) => ({ atMs: i * 1000, celsius: c })));
    expect(legs.map((leg) => leg.direction)).toEqual(['heating', 'cooling', 'heating']);
    expect(legs[0]?.points.at(-1)?.celsius).toBe(850);
  });

  it('refuses a record whose time does not rise', () => {
    const record = [500, 600].map((celsius) => ({ atMs: 5, celsius }));
    expect(() => findArrests({ record })).toThrow(expect.objectContaining({ code: 'bad-input' }));
    const broken = [{ atMs: 5, celsius: Number.NaN }];
    expect(() => findArrests({ record: broken })).toThrow(expect.objectContaining({ code: 'out-of-range' }));
  });
});
