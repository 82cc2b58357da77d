import { describe, expect, it } from 'vitest';
import { makeApi } from '../api-client.ts';

const { call } = makeApi();
const ask = (name: string, question: object | string) => call('POST', `/api/v1/compute/${name}`, question);

const BAR = { shape: 'bar', thicknessMm: 25, initialCelsius: 20, surroundingsCelsius: 850 };
const PLAIN = {
  conductivityWattsPerMetreKelvin: 40,
  specificHeatJoulesPerKilogramKelvin: 600,
  densityKilogramsPerCubicMetre: 7800,
};
const TWICE = [
  { atMs: 5, celsius: 500 },
  { atMs: 5, celsius: 400 },
];
const ONE = [{ at: 5, ppm: 40 }];
const BACKWARDS = [
  { at: 5, ppm: 40 },
  { at: 4, ppm: 40 },
  { at: 6, ppm: 40 },
];
const RULE = { fromCelsius: 800, toCelsius: 650, mostCelsiusPerHour: 28 };
const SLOW = [
  { atMs: 0, celsius: 780 },
  { atMs: 3_600_000, celsius: 600 },
];

describe('what the science refuses', () => {
  it.each([
    ['thermocouple', { type: 'K', celsius: 1373 }, 'out-of-range'],
    ['thermocouple', { type: 'E', millivolts: 80 }, 'out-of-range'],
    ['thermocouple', { type: 'B', millivolts: 0 }, 'no-solution'],
    [
      'thermocouple-straight-line',
      { type: 'B', reportedCelsius: 900, coldJunctionCelsius: 25 },
      'not-applicable',
    ],
    ['probe-uncertainty', { type: 'K', celsius: 900 }, 'bad-input'],
    ['probe-uncertainty', { type: 'K', celsius: 1100, class: 'iec-1' }, 'not-applicable'],
    ['probe-limit', { type: 'S', construction: 'mineral-insulated', millimetres: 3 }, 'not-applicable'],
    ['probe-limit', { type: 'K', construction: 'protected-wire', millimetres: 0 }, 'bad-input'],
    ['critical-temperatures', { composition: { C: 2.5 } }, 'out-of-range'],
    ['critical-temperatures', { composition: { C: -0.1 } }, 'bad-input'],
    ['critical-temperatures', { steel: 'unobtainium' }, 'bad-input'],
    ['critical-temperatures', { steel: '1045', coolingCelsiusPerHour: 0 }, 'out-of-range'],
    ['critical-temperatures', { steel: '1045', carbonInAustenitePercent: 0.6 }, 'out-of-range'],
    ['magnet', { steel: '1045', offsetCelsius: 400 }, 'out-of-range'],
    ['martensite', { steel: '1045', quenchCelsius: -250 }, 'out-of-range'],
    ['cooling-structures', { steel: '4140', coolingCelsiusPerHour: 0 }, 'out-of-range'],
    ['hardenability', { steel: '4140', shape: 'bar', thicknessMm: 0 }, 'out-of-range'],
    ['tempering', { steel: '1084', celsius: 900, hours: 1 }, 'out-of-range'],
    ['tempering', { steel: '1084', celsius: 200, hours: 0 }, 'out-of-range'],
    ['tempering', { steel: '1084', curve: TWICE }, 'bad-input'],
    ['hardness-conversion', { value: 69, from: 'HRC' }, 'out-of-range'],
    ['hardness-conversion', { value: 19.9, from: 'HRC' }, 'out-of-range'],
    ['conduction', { ...BAR, thicknessMm: 2000 }, 'out-of-range'],
    ['conduction', { ...BAR, emissivity: 1.5 }, 'out-of-range'],
    ['conduction', { ...BAR, toleranceCelsius: 0 }, 'out-of-range'],
    ['conduction', { ...BAR, surroundingsCelsius: 3000 }, 'out-of-range'],
    [
      'conduction',
      { ...BAR, material: { kind: 'plain', ...PLAIN, densityKilogramsPerCubicMetre: 0 } },
      'out-of-range',
    ],
    [
      'conduction',
      { ...BAR, material: { kind: 'transforming', coolingFromCelsius: 740, heatingFromCelsius: 725 } },
      'bad-input',
    ],
    ['soak-time', { ...BAR, targetCelsius: 900 }, 'no-solution'],
    ['soak-time', { ...BAR, holdSeconds: -1 }, 'out-of-range'],
    [
      'cooling',
      { shape: 'bar', thicknessMm: 20, initialCelsius: 850, medium: 'still-oil', untilCelsius: 51 },
      'out-of-range',
    ],
    [
      'cooling',
      { shape: 'bar', thicknessMm: 20, initialCelsius: 850, medium: 'closed-furnace', untilCelsius: 300 },
      'bad-input',
    ],
    ['cooling-rule', { curve: TWICE, rule: RULE }, 'bad-input'],
    ['cooling-rule', { curve: SLOW, rule: { ...RULE, toCelsius: 795 } }, 'out-of-range'],
    [
      'buried-bar',
      { widthMm: 200, thicknessMm: 200, packing: 'ash', canRadiusMm: 100, initialCelsius: 850 },
      'bad-input',
    ],
    ['carbon-diffusion', { celsius: 700 }, 'out-of-range'],
    ['carbon-diffusion', { phase: 'ferrite', celsius: 900 }, 'out-of-range'],
    ['carbon-diffusion', { celsius: 900, alloy: { Cr: 12 } }, 'out-of-range'],
    ['decarburisation', { composition: { C: 0.05 }, celsius: 900, hours: 1 }, 'out-of-range'],
    ['decarburisation', { composition: { C: 0.8 }, celsius: 900, hours: -1 }, 'bad-input'],
    ['scale', { celsius: 900, hours: 0 }, 'bad-input'],
    ['grain-growth', { composition: { C: 0.05 }, celsius: 900, hours: 1 }, 'out-of-range'],
    ['arrests', { record: TWICE }, 'bad-input'],
    ['glow', { celsius: 2000 }, 'out-of-range'],
    ['carbon-monoxide/exposure', { samples: BACKWARDS }, 'bad-input'],
    ['carbon-monoxide/exposure', { samples: ONE, endAt: 9 * 86_400_000 }, 'too-much-work'],
    ['carbon-monoxide/exposure', { samples: ONE, profile: { source: 'the keeper' } }, 'bad-input'],
    ['carbon-monoxide/carboxyhaemoglobin', { ppm: 50, minutes: 60, startPercent: 100 }, 'out-of-range'],
    [
      'carbon-monoxide/carboxyhaemoglobin',
      { ppm: 50, minutes: 60, constants: { bloodMl: 0 } },
      'out-of-range',
    ],
    ['ventilation/decay', { backgroundPpm: 5, samples: ONE }, 'bad-input'],
    ['gas/orifice-flow', { gas: 'butane', boreMm: 1, gaugePressurePa: 1000 }, 'not-applicable'],
    ['gas/orifice-flow', { boreMm: 100, gaugePressurePa: 1000 }, 'out-of-range'],
    ['gas/vapour-pressure', { celsius: 120 }, 'out-of-range'],
    ['gas/endurance', { contents: 5, draw: { kind: 'net', kilowatts: 0 } }, 'no-solution'],
  ])('%s, %j: %s', async (name, question, code) => {
    const { status, type, body } = await ask(name, question);
    expect({ status, type, code: body.code }).toEqual({
      status: 422,
      type: 'application/problem+json',
      code,
    });
    expect(body.type).toBe(`urn:soakwatch:problem:${code}`);
    expect(body.detail.length).toBeGreaterThan(10);
  });
});

describe('what is no question at all', () => {
  it.each([
    ['thermocouple', { type: 'K' }, '/celsius'],
    ['thermocouple', { type: 'K', celsius: 20, millivolts: 1 }, '/celsius'],
    ['thermocouple', { type: 'K', celsius: 'hot' }, '/celsius'],
    ['critical-temperatures', {}, '/steel'],
    ['critical-temperatures', { composition: { Mn: 0.75 } }, '/composition/C'],
    ['tempering', { steel: '1084' }, '/celsius'],
    ['tempering', { steel: '1084', celsius: 200 }, '/hours'],
    ['scale', { celsius: 900, hours: 1, curve: SLOW }, '/celsius'],
    ['conduction', { ...BAR, medium: 'still-air', emissivity: 0.8 }, '/medium'],
    ['conduction', { ...BAR, shape: 'ring' }, '/shape'],
    ['conduction', { ...BAR, material: { kind: 'plain' } }, '/material/conductivityWattsPerMetreKelvin'],
    ['hardness-conversion', { value: 60, from: 'HRC', to: 'HRC' }, '/to'],
    ['carbon-monoxide/carboxyhaemoglobin', {}, '/samples'],
    ['carbon-monoxide/carboxyhaemoglobin', { ppm: 50 }, '/minutes'],
    ['carbon-monoxide/carboxyhaemoglobin', { samples: ONE, ppm: 50, minutes: 1 }, '/samples'],
    ['carbon-monoxide/exposure', { samples: [] }, '/samples'],
    ['gas/vapour-pressure', { celsius: 20, absolutePa: 1e5 }, '/celsius'],
    ['tempering-curve', { steel: '1084', fromCelsius: 500, toCelsius: 400 }, '/toCelsius'],
  ])('%s, %j is refused at %s', async (name, question, path) => {
    const { status, body } = await ask(name, question);
    expect({ status, code: body.code }).toEqual({ status: 400, code: 'invalid-request' });
    expect(body.errors.map((error: { path: string }) => error.path)).toContain(path);
  });

  it('guesses the element that was meant', async () => {
    const { status, body } = await ask('critical-temperatures', { composition: { C: 0.4, mn: 0.7 } });
    expect(status).toBe(400);
    expect(body.detail).toContain('did you mean Mn?');
  });

  it('refuses a number that JSON can write and no thermometer can read', async () => {
    expect((await ask('thermocouple', '{"type":"K","celsius":1e999}')).body.code).toBe('invalid-request');
    expect((await ask('thermocouple', '{"type":"K",')).body.code).toBe('invalid-request');
  });
});
