import { describe, expect, it } from 'vitest';
import { makeApi } from '../api-client.ts';

const api = makeApi();
const ask = (name: string, question: object) => api.call('POST', `/api/v1/compute/${name}`, question);

describe('thermocouple', () => {
  // NIST SRD 60, type K table: 39.778 mV at 961.78 °C (freezing point of silver, ITS-90), 41.276 mV at 1000 °C.
  it.each([
    ['K', 961.78, 39.778],
    ['K', 1000, 41.276],
    ['S', 1064.18, 10.334],
    ['N', 660.323, 22.97],
  ])('gives the emf of type %s at %d °C as the table prints it', async (type, celsius, millivolts) => {
    const { body } = await ask('thermocouple', { type, celsius });
    expect(body.millivolts).toBeCloseTo(millivolts, 3);
  });

  // Computed from the verified ITS-90 functions: the junction's emf is added, never its degrees.
  it.each([
    ['K', 30, 25, 744.862],
    ['S', 9, 25, 961.273],
    ['B', 5, 25, 1017.769],
  ])('compensates the junction of type %s by emf', async (type, millivolts, coldJunctionCelsius, celsius) => {
    const { body } = await ask('thermocouple', { type, millivolts, coldJunctionCelsius });
    expect(body.celsius).toBeCloseTo(celsius, 2);
  });

  it('refuses beyond the table with a stable code', async () => {
    expect(await ask('thermocouple', { type: 'K', celsius: 1400 })).toMatchObject({
      status: 422,
      body: { code: 'out-of-range' },
    });
    expect(await ask('thermocouple', { type: 'B', millivolts: 0.001 })).toMatchObject({
      status: 422,
      body: { code: 'no-solution' },
    });
    expect(await ask('thermocouple', { type: 'Q', celsius: 20 })).toMatchObject({ status: 400 });
  });
});

describe('critical temperatures', () => {
  it('answers for 1045 with Andrews, its band, and all the opinions', async () => {
    // Andrews 1965 for 0.45 C, 0.75 Mn, 0.25 Si: Ac1 722.2, Ac3 762.5 °C (computed from the published formula).
    const { body } = await ask('critical-temperatures', { composition: { C: 0.45, Mn: 0.75, Si: 0.25 } });
    expect(body.ac1.value).toBeCloseTo(722.2, 1);
    expect(body.ac3.value).toBeCloseTo(762.5, 1);
    expect(body.ac1.low).toBeLessThan(body.ac1.value);
    expect(body.acm.value).toBeNull();
  });

  it('never puts Ac3 below Ac1, and speaks of Acm instead (1095)', async () => {
    const { body } = await ask('critical-temperatures', { composition: { C: 0.95, Mn: 0.4, Si: 0.25 } });
    expect(body.ac3.value ?? body.ac1.value).toBeGreaterThanOrEqual(body.ac1.value);
    // Fe-Fe3C chord between the published invariant points: 727 + 304 (C - 0.76) = 785 °C.
    expect(body.acm.value).toBeCloseTo(785, 0);
    // The formulas spread from about 97 to 250 °C: Ms is a band.
    expect(body.ms.high - body.ms.low).toBeGreaterThan(100);
  });
});

describe('conduction', () => {
  it('cools the steel balls of the textbook', async () => {
    // Incropera (from memory): 12 mm balls, 1150 K to 400 K in 325 K air, h 20, k 40, rho 7800, c 600: 1122 s.
    const { body } = await ask('conduction', {
      shape: 'sphere',
      thicknessMm: 12,
      initialCelsius: 1150 - 273.15,
      surroundingsCelsius: 325 - 273.15,
      seconds: 1122,
      emissivity: 0,
      filmWattsPerSquareMetreKelvin: 20,
      material: {
        kind: 'plain',
        conductivityWattsPerMetreKelvin: 40,
        specificHeatJoulesPerKilogramKelvin: 600,
        densityKilogramsPerCubicMetre: 7800,
      },
    });
    const last = body.curves.coreCelsius.at(-1);
    // Within 1 % of the first difference of 825 K.
    expect(Math.abs(last - (400 - 273.15))).toBeLessThan(8);
  });

  it('refuses a question that would hold the hub up', async () => {
    const question = {
      shape: 'plate',
      thicknessMm: 0.2,
      initialCelsius: 20,
      surroundingsCelsius: 900,
      seconds: 2_592_000,
      points: 1000,
    };
    const swing = Array.from({ length: 200 }, (_, i) => ({
      atSeconds: i * 12_000,
      celsius: i % 2 ? 1200 : 20,
    }));
    const { status, body } = await ask('conduction', { ...question, surroundingsCurve: swing });
    expect(status).toBe(422);
    expect(body.code).toBe('too-much-work');
  });
});

describe('tempering and hardness', () => {
  it('gives the Hollomon-Jaffe parameter and the measured hardness of 1080', async () => {
    // Grange and Baughman 1956: 1080 after 1 h at 426.7 °C measured 47.0 HRC.
    const { body } = await ask('tempering', { steel: '1080', celsius: 426.7, hours: 1 });
    expect(body.hardnessHrc.low).toBeLessThanOrEqual(47);
    expect(body.hardnessHrc.high).toBeGreaterThanOrEqual(47);
    // P = T_K (C + log t_h), at 1 h: T_K times the constant that is stated.
    expect(body.parameter).toBeCloseTo((426.7 + 273.15) * body.constant, 0);
  });

  it('converts by ASTM E140 inside its range only', async () => {
    expect((await ask('hardness-conversion', { value: 60, from: 'HRC', to: 'HV' })).body.value).toBeCloseTo(
      697,
      0,
    );
    expect((await ask('hardness-conversion', { value: 513, from: 'HV', to: 'HRC' })).body.value).toBeCloseTo(
      50,
      1,
    );
    const below = await ask('hardness-conversion', { value: 150, from: 'HV', to: 'HRC' });
    expect(below).toMatchObject({ status: 422, body: { code: 'out-of-range' } });
  });
});

describe('the catalogue', () => {
  it('finds a grade by any of its names, every window with source and standing', async () => {
    const { body } = await api.call('GET', '/api/v1/steels/C45');
    expect(body.title).toBe('1045');
    for (const window of body.windows)
      expect(window.from).toMatchObject({ standing: expect.any(String), source: expect.any(String) });
    expect((await api.call('GET', '/api/v1/steels/unobtainium')).body.code).toBe('not-found');
  });
});
