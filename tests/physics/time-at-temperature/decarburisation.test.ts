import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heldAt } from '../../../hub/physics/time-at-temperature/curve.ts';
import { decarburisedDepth } from '../../../hub/physics/time-at-temperature/decarburisation.ts';
import { DECARBURISED } from '../../reference/diffusion-values.ts';

function micrometres(metres: number): number {
  return metres * 1e6;
}

/** C/C0 at depth x by summing the erf integral, independent of the constants in the code. */
function carbonLeft(xMetres: number, dtM2: number): number {
  const z = xMetres / (2 * Math.sqrt(dtM2));
  const steps = 2000;
  const each = z / steps;
  const sum = Array.from({ length: steps }, (_, i) => Math.exp(-(((i + 0.5) * each) ** 2)));
  return ((2 / Math.sqrt(Math.PI)) * sum.reduce((a, b) => a + b, 0) * z) / steps;
}

describe('decarburised depth', () => {
  it.each(DECARBURISED)('%d °C for %d h: %d µm to 90 %, %d µm to 50 %', (celsius, hours, to90, to50) => {
    const result = decarburisedDepth({ curve: heldAt(celsius, hours * 3600), carbonPercent: 0.8 });
    expect(Math.abs(micrometres(result.depthTo90Metres.value) / to90 - 1)).toBeLessThan(0.006);
    expect(Math.abs(micrometres(result.depthTo50Metres.value) / to50 - 1)).toBeLessThan(0.008);
    expect(result.depthTo90Metres.high).toBeGreaterThanOrEqual(result.depthTo90Metres.value);
  });

  it('leaves 50, 90 and 95 % of the carbon at its three depths', () => {
    const result = decarburisedDepth({ curve: heldAt(900, 3600), carbonPercent: 0.8 });
    const left = [result.depthTo50Metres, result.depthTo90Metres, result.depthTo95Metres].map((band) =>
      carbonLeft(band.value, result.dtM2.value),
    );
    expect(left[0]).toBeCloseTo(0.5, 5);
    expect(left[1]).toBeCloseTo(0.9, 5);
    expect(left[2]).toBeCloseTo(0.95, 5);
  });

  it('grows with time, with heat, and as the square root of time at one heat', () => {
    const depth = (celsius: number, seconds: number): number =>
      decarburisedDepth({ curve: heldAt(celsius, seconds), carbonPercent: 0.9 }).depthTo90Metres.value;
    fc.assert(
      fc.property(
        fc.integer({ min: 740, max: 1150 }),
        fc.integer({ min: 60, max: 20_000 }),
        (celsius, seconds) => {
          expect(depth(celsius + 20, seconds)).toBeGreaterThan(depth(celsius, seconds));
          expect(depth(celsius, 4 * seconds) / depth(celsius, seconds)).toBeCloseTo(2, 6);
        },
      ),
      { seed: 23, numRuns: 40 },
    );
  });

  it('a forge heat that comes and goes counts only its time above Ac1', () => {
    const curve = [20, 900, 900, 20].map((celsius, i) => ({ atMs: i * 600_000, celsius }));
    const result = decarburisedDepth({ curve, carbonPercent: 0.8 });
    expect(result.secondsCounted).toBeGreaterThan(600);
    expect(result.secondsCounted).toBeLessThan(900);
    expect(result.secondsCounted + result.secondsBelow).toBeCloseTo(1800, 6);
  });

  it('says when a ferrite rim, a gap or heat beyond its range clouds the answer', () => {
    const at = (celsius: number, seconds: number) =>
      decarburisedDepth({ curve: heldAt(celsius, seconds), carbonPercent: 0.8 }).cautions;
    expect(at(800, 200)).toEqual(['ferrite-rim']);
    expect(at(1000, 200)).toEqual([]);
    expect(at(1250, 200)).toEqual(['above-range']);
    expect(at(1000, 900)).toEqual(['long-gap']);
  });

  it('widens its band by alloying, and refuses steels it does not cover', () => {
    const curve = heldAt(850, 3600);
    const plain = decarburisedDepth({ curve, carbonPercent: 1 });
    const chrome = decarburisedDepth({ curve, carbonPercent: 1, alloy: { cr: 1.45, mn: 0.35, si: 0.25 } });
    expect(chrome.depthTo90Metres.value).toBeLessThan(plain.depthTo90Metres.value);
    expect(chrome.depthTo90Metres.high).toBeCloseTo(plain.depthTo90Metres.high, 12);
    const refused = expect.objectContaining({ code: 'out-of-range' });
    expect(() => decarburisedDepth({ curve, carbonPercent: 2.1 })).toThrow(refused);
    expect(() => decarburisedDepth({ curve, carbonPercent: 1.5, alloy: { cr: 12 } })).toThrow(refused);
  });

  it('a temper does nothing at all', () => {
    const result = decarburisedDepth({ curve: heldAt(600, 7200), carbonPercent: 0.8 });
    expect(result.depthTo90Metres).toEqual({ low: 0, value: 0, high: 0 });
    expect(result.secondsCounted).toBe(0);
  });
});
