import { describe, expect, it } from 'vitest';
import { capHeightPx, fontSizePx } from '../../../dashboard/theme/legibility.ts';
import { type WallPlace, wallSizes } from '../../../dashboard/wall/sizes.ts';

const place = (change: Partial<WallPlace> = {}): WallPlace => ({
  diagonalInches: 43,
  distanceMetres: 5,
  widthPx: 1920,
  heightPx: 1080,
  runningLanes: 2,
  bannerShown: false,
  ...change,
});
/** Font size that 20 arc minutes ask for on this wall. */
const asked = ({ diagonalInches, widthPx, distanceMetres }: WallPlace) =>
  fontSizePx(capHeightPx({ diagonalInches, cssWidthPx: widthPx }, distanceMetres, 20));

describe('the sizes of the wall', () => {
  it.each([
    [1, true],
    [2, false],
    [2, true],
    [3, false],
  ])(
    'holds 20 arc minutes on a 43 inch wall at five metres with %d firings (banner: %s)',
    (runningLanes, bannerShown) => {
      const sizes = wallSizes(place({ runningLanes, bannerShown }));
      expect(sizes.held).toBe(true);
      expect(sizes.move).toBeGreaterThanOrEqual(asked(place()));
      expect(sizes.heat).toBeGreaterThanOrEqual(asked(place()));
      expect(sizes.readableMetres).toBeGreaterThanOrEqual(5);
    },
  );

  it('makes the next move the largest, and nothing larger than fits', () => {
    for (const runningLanes of [1, 2, 3, 4]) {
      const sizes = wallSizes(place({ runningLanes, distanceMetres: 8 }));
      expect(sizes.move).toBeGreaterThanOrEqual(sizes.heat);
      expect(sizes.move).toBeGreaterThanOrEqual(sizes.alarm * 0.8);
    }
  });

  it('two lanes of two lines, a temperature and a name fit between banner and foot', () => {
    const { move, heat } = wallSizes(place({ bannerShown: true }));
    const lane = 2 * move * 1.06 + heat * 1.05 + 36 * 1.15;
    expect(lane).toBeLessThan((1080 - 58 - 181 - 128) / 2 - 12);
  });

  it('says so when a screen is too small for its distance, and from how far it can be read', () => {
    const sizes = wallSizes(place({ diagonalInches: 24 }));
    expect(sizes.held).toBe(false);
    expect(sizes.readableMetres).toBeGreaterThan(3);
    expect(sizes.readableMetres).toBeLessThan(3.5);
  });

  it('looks the same on a panel with twice the pixels', () => {
    const coarse = wallSizes(place());
    const fine = wallSizes(place({ widthPx: 3840, heightPx: 2160 }));
    expect(fine.move / coarse.move).toBeCloseTo(2, 9);
    expect(fine.held).toBe(coarse.held);
  });

  it('gives keys of 20 mm, and never less than 44 px', () => {
    expect(wallSizes(place({ diagonalInches: 24 })).touch).toBeCloseTo(72.3, 1);
    expect(wallSizes(place({ diagonalInches: 85 })).touch).toBe(44);
  });
});
