import { describe, expect, it } from 'vitest';
import { glowAt } from '../../../dashboard/wall/glow.ts';
import { glowAt as glowOfPhysics, glowScale } from '../../../hub/physics/heat/glow.ts';

describe('the glow strip', () => {
  it('is dark below the first red', () => {
    expect(glowAt(20)).toEqual({ name: 'no glow', colour: null });
    expect(glowAt(-10).colour).toBeNull();
  });

  it.each([
    // Chapman, Workshop Technology part 1 (5th ed. 1972), as an encyclopaedia prints it.
    [500, 'black red'],
    [760, 'dark red'],
    [815, 'cherry red'],
    [870, 'cherry red'],
    [900, 'light cherry'],
    [1000, 'orange'],
    [1200, 'yellow'],
    [1300, 'yellow-white'],
    [1400, 'white'],
  ])('at %d °C is called %s', (celsius, name) => {
    expect(glowAt(celsius).name).toBe(name);
  });

  it('uses the same names and limits as the physics', () => {
    for (const { lowCelsius } of glowScale()) {
      expect(glowAt(lowCelsius).name).toBe(glowOfPhysics(lowCelsius).name);
      if (lowCelsius > 0) expect(glowAt(lowCelsius - 0.01).name).toBe(glowOfPhysics(lowCelsius - 0.01).name);
    }
  });

  it('keeps away from the alarm hues', () => {
    const alarms = ['#b0151b', '#d01f25', '#f4c20d'];
    for (const { lowCelsius } of glowScale()) {
      const { colour } = glowAt(lowCelsius);
      if (colour === null) continue;
      for (const hue of alarms) expect(distance(colour, hue)).toBeGreaterThan(40);
    }
  });
});

/** Distance of two colours in sRGB, 0 to 441. */
function distance(one: string, other: string): number {
  const parts = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  const b = parts(other);
  return Math.hypot(...parts(one).map((value, index) => value - (b[index] ?? 0)));
}
