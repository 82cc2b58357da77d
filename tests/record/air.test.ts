import { describe, expect, it } from 'vitest';
import { recordAir } from '../../hub/record/air.ts';

const MINUTE = 60_000;
const place = { channel: 'co', label: 'Over the forge', from: 0, staleAfterSeconds: 60 };
const said = (minute: number, value: number, quality: 'good' | 'bad' = 'good') => ({
  at: minute * MINUTE,
  value,
  quality,
});

describe('carbon monoxide during a firing', () => {
  it('has its peak, its mean over what was measured and its worst quarter of an hour', () => {
    // 30 min at 10 ppm, 15 min at 40 ppm, 15 min at 10 ppm: mean (45 x 10 + 15 x 40) / 60 = 17.5 ppm.
    const readings = Array.from({ length: 60 }, (_, i) => said(i, i >= 30 && i < 45 ? 40 : 10));
    const air = recordAir({ ...place, to: 60 * MINUTE, readings });
    expect(air).toMatchObject({
      peakPpm: 40,
      peakAt: 30 * MINUTE,
      measuredSeconds: 3600,
      notMeasuredSeconds: 0,
    });
    expect(air.meanPpm).toBeCloseTo(17.5, 9);
    expect(air.worstQuarterHourPpm).toBeCloseTo(40, 9);
  });

  it('never counts silence as clean air', () => {
    const readings = Array.from({ length: 10 }, (_, i) => said(i, 50));
    const air = recordAir({ ...place, to: 60 * MINUTE, readings });
    expect(air.meanPpm).toBeCloseTo(50, 9);
    expect(air.notMeasuredSeconds).toBe(3000);
    expect(air.worstQuarterHourPpm).toBeNull();
  });

  it('knows nothing where nothing good was said', () => {
    const air = recordAir({ ...place, to: 60 * MINUTE, readings: [said(3, 400, 'bad')] });
    expect(air).toMatchObject({ peakPpm: null, meanPpm: null, measuredSeconds: 0, notMeasuredSeconds: 3600 });
  });
});
