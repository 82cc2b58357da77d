import { describe, expect, it } from 'vitest';
import {
  amount,
  degrees,
  degreesDifference,
  number,
  rate,
  temperature,
  unbroken,
} from '../../../dashboard/words/format.ts';
import { settings } from '../mock-shop.ts';

describe('numbers as people read them', () => {
  it('turns temperatures, and only scales differences', () => {
    // Fixed points of the Fahrenheit scale: 32 °F is 0 °C, 212 °F is 100 °C (NIST SP 811, appendix B).
    expect(temperature(100, '[degF]')).toBe('212 °F');
    expect(degrees(0, '[degF]')).toBe('32');
    expect(degreesDifference(10, '[degF]')).toBe('18');
    expect(rate(100, '[degF]')).toBe('180 °F/h');
  });

  it('writes a real minus, and no minus before nothing', () => {
    expect(number(-3.2)).toBe('−3');
    expect(number(-0.2)).toBe('0');
    expect(temperature(-0.4, 'Cel')).toBe('0 °C');
  });

  it('shows a quantity in the unit the shop wants', () => {
    const shop = settings({ pressureUnit: '[psi]', massUnit: '[lb_av]' });
    // 1 psi = 6894.757 Pa, 1 lb = 0.45359237 kg (NIST SP 811, appendix B).
    expect(amount(6894.757 * 21.5, 'pressure', shop)).toEqual({ number: '21.5', unit: 'psi' });
    expect(amount(0.45359237 * 38.4, 'mass', shop)).toEqual({ number: '38.4', unit: 'lb' });
    expect(amount(148_000, 'pressure', settings())).toEqual({ number: '1.48', unit: 'bar' });
    expect(amount(7.4, 'carbon-monoxide', shop)).toEqual({ number: '7', unit: 'ppm' });
  });

  it('keeps a number with its unit, and leaves the rest alone', () => {
    expect(unbroken('Heat to 205 °C: 8 min to go')).toBe('Heat to 205\u00a0°C: 8\u00a0min to go');
    expect(unbroken('Pass 2 more')).toBe('Pass 2 more');
    expect(unbroken('3 steels, 2 hammers')).toBe('3 steels, 2 hammers');
  });
});
