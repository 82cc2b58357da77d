import { describe, expect, it } from 'vitest';
import type { Segment } from '../../hub/contract/schedule.ts';
import { axisOf, instantsOn } from '../../hub/review/align.ts';

const RAMP: Segment = { kind: 'ramp', targetCelsius: 800, toleranceCelsius: 10, rateCelsiusPerHour: null };
const SOAK: Segment = { kind: 'soak', targetCelsius: 800, toleranceCelsius: 10, durationSeconds: 60 };

/** Segments that follow each other from `start`, each so many seconds long. */
function spans(start: number, ...seconds: number[]) {
  let at = start;
  return seconds.map((length) => {
    const startedAt = at;
    at += length * 1000;
    return { startedAt, endedAt: at };
  });
}

describe('the common axis', () => {
  const quick = spans(0, 100, 60);
  const slow = spans(5000, 200, 60);

  it('begins every soak at the same place, however long the heating took', () => {
    const axis = axisOf([RAMP, SOAK], [quick, slow], 'seconds', 5);
    const [, soak] = axis.segments;
    expect(axis.segments.map(({ seconds }) => seconds)).toEqual([200, 60]);
    expect(instantsOn(axis, quick)[soak?.first ?? 0]).toBe(100_000);
    expect(instantsOn(axis, slow)[soak?.first ?? 0]).toBe(205_000);
  });

  it('rises strictly, with a place between segments where nothing is drawn', () => {
    const axis = axisOf([RAMP, SOAK], [quick, slow], 'seconds', 5);
    axis.x.slice(1).forEach((x, i) => {
      expect(x).toBeGreaterThan(axis.x[i] ?? Number.NaN);
    });
    expect(axis.places.filter((place) => place === null)).toHaveLength(1);
    expect(instantsOn(axis, slow)[5]).toBeNull();
  });

  it('leaves a firing out where its segment was over sooner', () => {
    const axis = axisOf([RAMP, SOAK], [quick, slow], 'seconds', 5);
    expect(instantsOn(axis, quick).slice(0, 5)).toEqual([0, 50_000, 100_000, null, null]);
    expect(instantsOn(axis, slow).slice(0, 5)).toEqual([5000, 55_000, 105_000, 155_000, 205_000]);
  });

  it('stretches every firing to the same width when it counts in shares', () => {
    const axis = axisOf([RAMP, SOAK], [quick, slow], 'share', 5);
    expect(axis.segments.map(({ from, to }) => to - from)).toEqual([1, 1]);
    expect(instantsOn(axis, quick).slice(0, 5)).toEqual([0, 25_000, 50_000, 75_000, 100_000]);
    expect(instantsOn(axis, slow).slice(0, 5)).toEqual([5000, 55_000, 105_000, 155_000, 205_000]);
  });

  it('does not show a segment that nobody finished', () => {
    const open = [...spans(0, 100), { startedAt: 100_000, endedAt: null }];
    const axis = axisOf([RAMP, SOAK], [open], 'seconds', 5);
    expect(axis.segments.map(({ index }) => index)).toEqual([0]);
    expect(axis.x).toHaveLength(5);
  });
});
