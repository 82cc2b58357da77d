import { describe, expect, it } from 'vitest';
import {
  type HeatTexts,
  inLengthUnit,
  inTemperature,
  readCool,
  readHeat,
  startTexts,
} from '../../../dashboard/heat/form.ts';

const texts = (more: Partial<HeatTexts> = {}): HeatTexts => ({
  ...startTexts('Cel', 'kind:gas-forge'),
  ...more,
});

describe('the question of the heat page as it is typed', () => {
  it('takes the furnace to stand at the target while nothing else is said', () => {
    expect(readHeat(texts()).plan).toMatchObject({ targetCelsius: 850, chamberCelsius: 850 });
    expect(readHeat(texts({ chamber: '880' })).plan).toMatchObject({ chamberCelsius: 880 });
  });

  it('reads the start texts of a shop that thinks in °F and inches', () => {
    // NIST SP 811 B.8: 1560 °F = 848.9 °C, a difference of 20 °F = 11.11 °C, 1 in = 25.4 mm.
    const { plan, faults } = readHeat(startTexts('[degF]', 'kind:gas-forge'));
    expect(faults).toEqual({});
    expect(plan?.targetCelsius).toBeCloseTo(848.889, 3);
    expect(plan?.toleranceCelsius).toBeCloseTo(11.111, 3);
    expect(plan?.thicknessMm).toBe(25.4);
  });

  it('names the field that is empty or cannot be read, and has no plan then', () => {
    const { plan, faults } = readHeat(texts({ thickness: '', target: 'red' }));
    expect(plan).toBeNull();
    expect(faults.thickness).toContain('Needed');
    expect(faults.target).toContain('"red" is not a number');
    expect(faults.tolerance).toBeUndefined();
  });

  it('asks for the rate of a furnace that is lit cold, and only then', () => {
    expect(readHeat(texts({ rate: '' })).plan?.climbCelsiusPerHour).toBeNull();
    expect(readHeat(texts({ lit: 'cold', rate: '' })).faults.rate).toContain('Needed');
    expect(readHeat(texts({ lit: 'cold', rate: '0' })).faults.rate).toContain('more than 0');
    expect(readHeat(texts({ lit: 'cold', rate: '400' })).plan?.climbCelsiusPerHour).toBe(400);
  });

  it('means the same in another unit', () => {
    const there = inLengthUnit(inTemperature(texts(), '[degF]'), 'in');
    expect(there).toMatchObject({ target: '1562', tolerance: '18', start: '68', thickness: '0.984' });
    const back = inLengthUnit(inTemperature(there, 'Cel'), 'mm');
    expect(readHeat(back).plan).toEqual(readHeat(texts()).plan);
  });

  it('cools from the target unless a heat is given, and a round bar is as wide as it is thick', () => {
    expect(readCool(texts()).plan).toMatchObject({ fromCelsius: 850, widthMm: 25 });
    expect(readCool(texts({ coolFrom: '900' })).plan?.fromCelsius).toBe(900);
    expect(readCool(texts({ shape: 'plate', width: '' })).faults.width).toContain('Needed');
    expect(readCool(texts({ width: '' })).plan).not.toBeNull();
  });
});
