import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { between, panned, zoomed } from '../../../dashboard/charts/window.ts';

const HOUR = 3_600_000;
const whole = { from: 0, to: 4 * HOUR };

describe('zoom and pan', () => {
  it('keeps the instant under the cursor where it is', () => {
    const window = zoomed(whole, 0.5, HOUR, whole);
    expect(window).toEqual({ from: HOUR / 2, to: 2.5 * HOUR });
    expect((HOUR - window.from) / (window.to - window.from)).toBe(0.25);
  });

  it('stops at the ends of the firing instead of leaving it', () => {
    const window = { from: 0, to: HOUR };
    expect(panned(window, -0.5, whole)).toEqual(window);
    expect(panned(window, 10, whole)).toEqual({ from: 3 * HOUR, to: 4 * HOUR });
    expect(zoomed(window, 100, 0, whole)).toEqual(whole);
  });

  it('takes two instants in either order, and never less than a minute', () => {
    expect(between(2 * HOUR, HOUR, whole)).toEqual({ from: HOUR, to: 2 * HOUR });
    expect(between(HOUR, HOUR, whole)).toEqual({ from: HOUR, to: HOUR + 60_000 });
  });

  it('stays inside the whole whatever is done to it', () => {
    const instant = fc.integer({ min: 0, max: 4 * HOUR });
    const factor = fc.double({ min: 0.01, max: 50, noNaN: true });
    const share = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(instant, instant, instant, factor, share, (a, b, around, by, move) => {
        const window = panned(zoomed(between(a, b, whole), by, around, whole), move, whole);
        expect(window.from).toBeGreaterThanOrEqual(whole.from);
        expect(window.to).toBeLessThanOrEqual(whole.to);
        expect(window.to - window.from).toBeGreaterThanOrEqual(60_000 - 1);
      }),
    );
  });
});
