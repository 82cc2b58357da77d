import { describe, expect, it } from 'vitest';
import { barOf, LIMIT_SHARE, meanOf, percentOf, ppmText } from '../../../dashboard/air/bars.ts';
import { bloodScale } from '../../../dashboard/air/blood.ts';
import type { KnownMean, LimitReading } from '../../../hub/contract/compute/exposure.ts';

function reading(change: Partial<LimitReading>): LimitReading {
  return {
    kind: 'twa',
    // OSHA general industry, 29 CFR 1910.1000 Table Z-1: 50 ppm, mean of 8 h.
    limit: {
      id: 'osha-pel',
      body: 'OSHA general industry',
      ppm: 50,
      milligramsPerCubicMetre: 55,
      averagingSeconds: 28_800,
      edition: '29 CFR 1910.1000 Table Z-1',
      force: 'in-force',
      from: { standing: 'published-secondary', source: 'NIOSH IDLH page for carbon monoxide' },
    },
    ppm: 25,
    standing: 'not-above',
    minutesAbove: 0,
    ...change,
  };
}

const mean = (change: Partial<KnownMean>): KnownMean => ({
  ppm: 25,
  atLeastPpm: 25,
  coverage: 1,
  measuredSeconds: 28_800,
  gapSeconds: 0,
  ...change,
});

describe('a bar of exposure', () => {
  it('has its limit always at the same place, whatever the limit is', () => {
    expect(barOf(reading({ ppm: 50 }), null).measured).toBeCloseTo(LIMIT_SHARE);
    expect(barOf(reading({ ppm: 25 }), null).measured).toBeCloseTo(LIMIT_SHARE / 2);
  });

  it('draws what was measured apart from what stands in for a gap', () => {
    const bar = barOf(reading({ ppm: 40 }), mean({ ppm: 40, atLeastPpm: 10 }));
    expect(bar.measured).toBeCloseTo((10 / 50) * LIMIT_SHARE);
    expect(bar.held).toBeCloseTo((40 / 50) * LIMIT_SHARE);
    expect(bar.unknown).toBe(false);
  });

  it('is unknown and never an empty bar when nobody knows', () => {
    const unknown = reading({ ppm: null, standing: 'unknown' });
    expect(barOf(unknown, mean({ ppm: null, atLeastPpm: 0 }))).toMatchObject({ measured: 0, unknown: true });
    expect(barOf(unknown, null).unknown).toBe(true);
  });

  it('keeps what was measured of an unknown mean in sight', () => {
    const bar = barOf(reading({ ppm: null, standing: 'unknown' }), mean({ ppm: null, atLeastPpm: 30 }));
    expect(bar).toMatchObject({ unknown: true, measured: (30 / 50) * LIMIT_SHARE });
  });

  it('ends at its end and says that the value lies beyond', () => {
    expect(barOf(reading({ ppm: 400, standing: 'above' }), null)).toMatchObject({ measured: 1, cut: true });
    expect(barOf(reading({ ppm: 60, standing: 'above' }), null).cut).toBe(false);
  });

  it('holds each limit against its own mean, and one of the instant against none', () => {
    const [twa, stel] = [mean({ ppm: 1 }), mean({ ppm: 2 })];
    expect(meanOf('twa', { twa, stel })).toBe(twa);
    expect(meanOf('stel', { twa, stel })).toBe(stel);
    expect(meanOf('idlh', { twa, stel })).toBeNull();
  });
});

describe('figures about air', () => {
  it('never round a share up to all, nor something down to nothing', () => {
    expect(percentOf(0.999)).toBe('99');
    expect(percentOf(0.001)).toBe('less than 1');
    expect(percentOf(1)).toBe('100');
    expect(percentOf(0.29)).toBe('29');
  });

  it('show a decimal only where it counts, and no level below nothing', () => {
    expect([ppmText(4.26), ppmText(9.96), ppmText(53.7), ppmText(-2)]).toEqual(['4.3', '10', '54', '0']);
  });
});

describe('the scale of the blood', () => {
  it('reaches past the warning, and past the band where that is higher', () => {
    const low = bloodScale({
      lowPercent: 0.4,
      chosenPercent: 0.5,
      highPercent: 0.6,
      highestPercent: 0.8,
      limitPercent: 3.5,
    });
    expect(low.topPercent).toBeCloseTo(5.25);
    expect(low.limit).toBeCloseTo(2 / 3);
    const high = bloodScale({
      lowPercent: 8,
      chosenPercent: 10,
      highPercent: 10,
      highestPercent: 10,
      limitPercent: 3.5,
    });
    expect(high.high).toBeLessThan(1);
  });
});
