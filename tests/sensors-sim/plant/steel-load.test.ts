import { describe, expect, test } from 'vitest';
import { SteelLoad } from '../../../sensors-sim/plant/steel-load.ts';

/** Minutes for a plate heated on both faces. SOURCE: lumped calculation with the specific heat of EN 1993-1-2,
 * density 7850, emissivity 0.8, film 10 W/(m² K), computed independently. */
const REFERENCE: readonly (readonly [number, number, number])[] = [
  [3, 4.1, 13.5],
  [6, 8.2, 27.0],
  [12, 16.3, 54.1],
  [25, 34.0, 112.6],
];

function minutesToReach(millimetres: number, furnaceCelsius: number, wantedCelsius: number): number {
  const load = new SteelLoad({ massKilograms: 1, thicknessMetres: millimetres / 1000 }, 20);
  let seconds = 0;
  while (load.celsius < wantedCelsius) {
    const gain = load.heatGainWatts(furnaceCelsius, furnaceCelsius, 10);
    load.take(gain.wall + gain.gas, 1);
    seconds += 1;
  }
  return seconds / 60;
}

describe('a plate in a furnace', () => {
  test.each(REFERENCE)(
    'of %d mm reaches 805 in 815 °C after %d min and 195 in 200 °C after %d min',
    (mm, hot, warm) => {
      expect(Math.abs(minutesToReach(mm, 815, 805) / hot - 1)).toBeLessThan(0.02);
      expect(Math.abs(minutesToReach(mm, 200, 195) / warm - 1)).toBeLessThan(0.02);
    },
  );

  test('does not cool while it lies inside', () => {
    const load = new SteelLoad({ massKilograms: 1, thicknessMetres: 0.01 }, 800);
    load.coolOutside(18, 60);
    expect(load.celsius).toBe(800);
  });
});

describe('a plate outside the furnace', () => {
  const cooledIn = (place: 'still-air' | 'ash' | 'vermiculite' | 'quench', seconds: number) => {
    const load = new SteelLoad({ massKilograms: 1, thicknessMetres: 0.012 }, 860);
    load.place = place;
    for (let second = 0; second < seconds; second += 1) load.coolOutside(18, 1);
    return load.celsius;
  };

  test('cools fastest in the quench, then in air, ash and vermiculite', () => {
    const seen = (['quench', 'still-air', 'ash', 'vermiculite'] as const).map((place) =>
      cooledIn(place, 300),
    );
    expect(seen).toEqual([...seen].sort((one, two) => one - two));
    expect(seen[0]).toBeLessThan(60);
  });

  test('never falls below what it lies in', () => {
    expect(cooledIn('quench', 3600)).toBeCloseTo(45, 1);
    expect(cooledIn('still-air', 6 * 3600)).toBeGreaterThanOrEqual(18);
  });
});
