import { describe, expect, it } from 'vitest';
import { answerTo } from './ask.ts';

const PASCALS_PER_PSI = 6894.757;

describe('gas over the web', () => {
  // Isentropic nozzle flow, heat ratio 1.13, Cd 0.85, 15 °C, computed independently: psi, bore mm, kg/h, kW net.
  it.each([
    [1, 0.8, 0.244, 3.1, 'subsonic'],
    [5, 1.092, 0.978, 12.6, 'subsonic'],
    [10, 0.889, 0.88, 11.3, 'subsonic'],
    [15, 1.5, 3.014, 38.8, 'choked'],
    [20, 0.889, 1.237, 15.9, 'choked'],
    [30, 1.5, 4.537, 58.4, 'choked'],
  ])('flows through a jet: %d psi, %d mm give %d kg/h', async (psi, boreMm, kilograms, kilowatts, regime) => {
    const jet = { gas: 'propane', boreMm, dischargeCoefficient: 0.85, gasCelsius: 15 };
    const body = await answerTo('gas/orifice-flow', { ...jet, gaugePressurePa: psi * PASCALS_PER_PSI });
    expect(Math.abs(body.kilogramsPerHour - kilograms)).toBeLessThan(0.0015);
    expect(Math.abs(body.kilowattsNet - kilowatts)).toBeLessThan(0.06);
    expect(body.regime).toBe(regime);
    // HHV 50.33 over LHV 46.34 MJ/kg (NIST enthalpy of combustion, from memory).
    expect(body.kilowattsGross / body.kilowattsNet).toBeCloseTo(50.33 / 46.34, 6);
  });

  // Equation of state of Lemmon, McLinden and Wagner (2009) through CoolProp: °C, kPa absolute.
  it.each([
    [-40, 111.1],
    [0, 474.5],
    [20, 836.5],
    [50, 1713.3],
  ])('boils at %d °C under %d kPa, there and back', async (celsius, kilopascals) => {
    const there = await answerTo('gas/vapour-pressure', { gas: 'propane', celsius });
    expect(Math.abs(there.absolutePa / 1000 - kilopascals)).toBeLessThan(0.1 + kilopascals * 2e-4);
    const back = await answerTo('gas/vapour-pressure', { absolutePa: there.absolutePa });
    expect(back.celsius).toBeCloseTo(celsius, 6);
  });

  it('boils at -42.1 °C in open air', async () => {
    // LP-gas handbooks: -44 °F.
    const body = await answerTo('gas/vapour-pressure', { absolutePa: 101_325 });
    expect(body.celsius).toBeCloseTo(-42.1, 1);
    expect(body.gaugePa).toBeCloseTo(0, 6);
  });

  it('lasts 7.78 h in a 20 lb cylinder at 15 kW, 5.84 h at 20 kW', async () => {
    // Computed: 9.07 kg x 46.34 MJ/kg / 3.6 / kW.
    const hours = async (kilowatts: number) =>
      (await answerTo('gas/endurance', { contents: 9.07, draw: { kind: 'net', kilowatts } })).hours;
    expect(await hours(15)).toBeCloseTo(7.78, 2);
    expect(await hours(20)).toBeCloseTo(5.84, 2);
  });

  it('does not promise more than the range: a firing of 5 h may not last', async () => {
    const contents = { low: 4, value: 5, high: 6 };
    const draw = { kind: 'mass', kilogramsPerHour: 1 };
    const asked = { contents, draw, airCelsius: 20 };
    const lasts = async (firingHours: number) =>
      (await answerTo('gas/endurance', { ...asked, firingHours })).lasts;
    expect(await lasts(3)).toBe('expected-to-last');
    expect(await lasts(5)).toBe('may-not-last');
    expect(await lasts(9)).toBe('will-not-last');
    expect((await answerTo('gas/endurance', asked)).lasts).toBeNull();
  });
});
