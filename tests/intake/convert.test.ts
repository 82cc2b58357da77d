import { describe, expect, test } from 'vitest';
import { type KnownChannel, type Measurement, toReading } from '../../hub/intake/convert.ts';

const NOW = 1_700_000_000_000;

function measured(value: number, unit: string | null, extra: Partial<Measurement> = {}): Measurement {
  return { name: 'x', at: NOW, value, unit, quantity: null, ...extra };
}

function channel(extra: Partial<KnownChannel>): KnownChannel {
  const plain = { node: 'n', name: 'x', unit: null, possibleLow: null, possibleHigh: null, probe: null };
  return { ...plain, quantity: 'temperature', ...extra };
}

function convert(measurement: Measurement, known?: KnownChannel): unknown {
  const outcome = toReading(measurement, known, NOW);
  return outcome.ok ? outcome.value : outcome.reason;
}

describe('units on the way in', () => {
  /**
   * UCUM 2.2 definitions ([degF], [psi], [in_i'H2O]); freezing and boiling point of water; RFC 8798 (hPa, /100);
   * 1 lb = 0.45359237 kg (international avoirdupois pound, exact).
   */
  test.each([
    ['Cel', 861.5, 'temperature', 861.5],
    ['[degF]', 32, 'temperature', 0],
    ['°F', 212, 'temperature', 100],
    ['K', 273.15, 'temperature', 0],
    ['Pa', 101_325, 'pressure', 101_325],
    ['kPa', 1.5, 'pressure', 1500],
    ['bar', 1, 'pressure', 100_000],
    ['mbar', 37, 'pressure', 3700],
    ['hPa', 37, 'pressure', 3700],
    ['psi', 1, 'pressure', 6894.757293168],
    ['inH2O', 11, 'pressure', 2739.97801],
    ['ppm', 35, 'carbon-monoxide', 35],
    ['/', 3.5e-5, 'carbon-monoxide', 35],
    ['/1000', 0.035, 'carbon-monoxide', 35],
    ['kg', 11.3, 'mass', 11.3],
    ['lb', 1, 'mass', 0.45359237],
    ['uV', 41.276, 'emf', 0.000041276],
    ['mV', 41.276, 'emf', 0.041276],
    ['%RH', 43, 'relative-humidity', 43],
  ])('%s: %d of %s is %d in its base unit', (unit, value, quantity, base) => {
    const reading = convert(measured(value, unit));

    expect(reading).toMatchObject({ quantity, quality: 'good' });
    expect(Reflect.get(Object(reading), 'value')).toBeCloseTo(base, 6);
  });

  test('a payload without a unit speaks in its channel’s unit, else in the base unit', () => {
    expect(convert(measured(212, null), channel({ unit: '[degF]' }))).toMatchObject({
      value: expect.closeTo(100, 9),
    });
    expect(convert(measured(212, null), channel({}))).toMatchObject({ value: 212 });
  });

  test('a payload without a unit for an unknown channel is no measurement', () => {
    expect(convert(measured(212, null))).toBe('unit-missing');
  });

  test.each(['count', 'lon', '', 'furlong', 'min', '__proto__'])('the unit %j is not known here', (unit) => {
    expect(convert(measured(1, unit))).toBe('unknown-unit');
  });

  test('a unit of another quantity is refused, whoever named the quantity', () => {
    expect(convert(measured(1, 'Pa'), channel({}))).toBe('wrong-unit');
    expect(convert(measured(1, 'Pa', { quantity: 'temperature' }))).toBe('wrong-unit');
  });

  /** SenML names '/' and 'ppm' for any share of the air (RFC 8428, RFC 8798): the name or the channel says which gas. */
  test.each([
    ['co2', 'ppm', 640, 'carbon-dioxide', 640],
    ['room/CO2', '/', 0.00064, 'carbon-dioxide', 640],
    ['o2', '%', 20.9, 'oxygen', 20.9],
    ['o2', '/', 0.209, 'oxygen', 20.9],
    ['humidity', '%', 43, 'relative-humidity', 43],
    ['co', 'ppm', 35, 'carbon-monoxide', 35],
  ])('%s in %s is told by its name', (name, unit, value, quantity, base) => {
    expect(convert(measured(value, unit, { name }))).toMatchObject({
      quantity,
      value: expect.closeTo(base, 9),
      quality: 'good',
    });
  });

  test('a gas that nobody names counts as carbon monoxide, and a bare % as nothing at all', () => {
    expect(convert(measured(640, 'ppm', { name: 's1' }))).toMatchObject({ quantity: 'carbon-monoxide' });
    expect(convert(measured(87, '%', { name: 'battery' }))).toBe('unknown-unit');
  });

  test('the channel’s own quantity comes before its name', () => {
    const known = channel({ quantity: 'carbon-dioxide' });
    expect(convert(measured(640, 'ppm', { name: 'co' }), known)).toMatchObject({
      quantity: 'carbon-dioxide',
    });
    expect(convert(measured(0.064, '%'), known)).toMatchObject({ value: expect.closeTo(640, 9) });
    expect(convert(measured(43, '%RH'), known)).toBe('wrong-unit');
  });

  test.each([
    ['carbon-dioxide', 1_000_001, 'bad'],
    ['carbon-dioxide', 40_000, 'good'],
    ['oxygen', 100.1, 'bad'],
    ['oxygen', 0, 'good'],
    ['relative-humidity', 106, 'bad'],
    ['relative-humidity', 101, 'good'],
  ] as const)('%s of %d in its base unit is %s', (quantity, value, quality) => {
    expect(convert(measured(value, null), channel({ quantity }))).toMatchObject({ quality });
  });

  test('emf is kept as emf under its own channel, and is no temperature', () => {
    expect(convert(measured(33.275, 'mV'))).toMatchObject({ quantity: 'emf' });
    expect(convert(measured(33.275, 'mV'), channel({}))).toBe('wrong-unit');
  });
});

describe('quality', () => {
  test.each([
    [1820, 'good'],
    [1820.1, 'bad'],
    [-60.1, 'bad'],
  ])('%d °C of any sensor is %s', (value, quality) => {
    expect(convert(measured(value, 'Cel'))).toMatchObject({ value, quality });
  });

  test('a channel may be narrower than its quantity', () => {
    const narrow = channel({ possibleLow: 0, possibleHigh: 1300 });

    expect(convert(measured(1301, 'Cel'), narrow)).toMatchObject({ quality: 'bad', reason: 'out-of-range' });
    expect(convert(measured(-1, 'Cel'), narrow)).toMatchObject({ quality: 'bad', reason: 'out-of-range' });
    expect(convert(measured(1300, 'Cel'), narrow)).toEqual({
      name: 'x',
      quantity: 'temperature',
      at: NOW,
      value: 1300,
      quality: 'good',
    });
  });

  test('ten seconds ahead is a clock, more is the future', () => {
    expect(convert(measured(20, 'Cel', { at: NOW + 10_000 }))).toMatchObject({ quality: 'good' });
    expect(convert(measured(20, 'Cel', { at: NOW + 10_001 }))).toMatchObject({
      quality: 'uncertain',
      reason: 'future',
    });
  });

  test('an impossible value from the future is bad all the same', () => {
    expect(convert(measured(9999, 'Cel', { at: NOW + 60_000 }))).toMatchObject({ quality: 'bad' });
  });

  test('hours late is as good as fresh', () => {
    expect(convert(measured(20, 'Cel', { at: NOW - 6 * 3_600_000 }))).toMatchObject({ quality: 'good' });
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, 1.7e308])('%d in bar is no value', (value) => {
    expect(convert(measured(value, 'bar'))).toBe('not-finite');
  });
});
