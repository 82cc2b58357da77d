import { describe, expect, it } from 'vitest';
import { findingsOf } from '../../hub/firing/judge.ts';
import {
  at,
  caseOf,
  curve,
  everRaised,
  judged,
  noise,
  RAMP,
  runTo,
  type SegmentInput,
  sentences,
  soak,
} from './kit.ts';

describe('a stalled soak', () => {
  const c = caseOf([soak(3600)]);
  const sinks = (s: number) => (s < 100 ? 800 : 780);

  it('is told when the clock has not counted for the set time while it should', () => {
    const readings = curve('chamber', { from: 0, to: 400 }, sinks);
    const found = findingsOf(c, runTo(c, { readings, to: 280 }));
    expect(findingsOf(c, runTo(c, { readings, to: 279 }))).toEqual([]);
    expect(found).toMatchObject([{ kind: 'soak-stalled', subject: 'firing-1', since: at(100) }]);
    expect(found[0]?.params).toMatchObject({
      stalledSeconds: 180,
      soakSeconds: 100,
      measuredCelsius: 780,
      lowCelsius: 790,
    });
  });

  it('asks for heat on the wall long before it is an alarm', () => {
    const readings = curve('chamber', { from: 0, to: 130 }, sinks);
    expect(sentences(c, { readings, to: 130 }).map(({ seconds, text }) => [seconds, text])).toEqual([
      [0, 'Hold: 1 h to go'],
      [110, 'Raise to 800 °C: clock stopped'],
    ]);
  });

  it('is not called while nobody can see: that is blindness, which is told elsewhere', () => {
    const readings = curve('chamber', { from: 0, to: 150 }, sinks);
    expect(everRaised(c, { readings, to: 3000 })).toEqual([]);
  });

  it('is not called while the clock stands because it is too hot: that is the overshoot alarm', () => {
    const readings = curve('chamber', { from: 0, to: 1000 }, (s) => (s < 100 ? 800 : 830));
    expect(everRaised(c, { readings, to: 1000 })).toEqual(['overshoot']);
  });

  it('is not called while a furnace without a ramp before it is still heating up, but when that stops', () => {
    const warms = (s: number) => Math.min(600, 20 + s / 2);
    const readings = curve('chamber', { from: 0, to: 1600 }, warms);
    const run = { readings, to: 1600 };
    const [raised] = judged(c, run).events.filter((event) => event.kind === 'finding-raised');
    expect(raised?.finding).toBe('soak-stalled');
    // 600 °C at 1160 s; the last 2 °C of progress, a minute of grace and the set time later.
    expect(((raised?.at ?? 0) - at(1160 + 60 + 180)) / 1000).toBeCloseTo(0, -1);
    const said = sentences(c, run).map(({ text }) => text);
    expect(said).toEqual(['Heat to 800 °C', 'Raise to 800 °C: clock stopped']);
  });

  it('is not called for dips shorter than the set time, however many', () => {
    const readings = curve('chamber', { from: 0, to: 3000 }, (s) => (s % 200 < 170 ? 789 : 791));
    expect(everRaised(c, { readings, to: 3000 })).toEqual([]);
  });

  it('is over when the clock has counted again for a while, not with the first flicker', () => {
    const readings = curve('chamber', { from: 0, to: 500 }, (s) =>
      s < 100 || s >= 400 || s === 350 ? 800 : 780,
    );
    const told = judged(c, { readings, to: 500 }).events.filter((event) => event.finding === 'soak-stalled');
    expect(told.map((event) => event.at)).toEqual([at(280), at(410)]);
  });

  it('is over with its segment', () => {
    const readings = curve('chamber', { from: 0, to: 500 }, sinks);
    const state = runTo(c, { readings, to: 500, endedAt: at(450) });
    expect(findingsOf(c, state)).toEqual([]);
    expect(state.events.at(-2)).toMatchObject({
      kind: 'finding-cleared',
      finding: 'soak-stalled',
      at: at(450),
    });
  });
});

describe('a stalled ramp', () => {
  const c = caseOf([RAMP, soak(60)]);

  it('is told when it has come no nearer for the set time', () => {
    const jitter = noise(3);
    const readings = curve('chamber', { from: 0, to: 2000 }, (s) => Math.min(600, 20 + s) + jitter());
    const { events, nextMove } = judged(c, { readings, to: 2000 });
    const raised = events.filter((event) => event.kind === 'finding-raised');
    expect(raised.map((event) => event.finding)).toEqual(['ramp-stalled']);
    expect(((raised[0]?.at ?? 0) - at(580)) / 1000).toBeCloseTo(600, -1);
    expect(nextMove.text).toBe('More heat: it is not rising');
  });

  it('is over as soon as it comes nearer again', () => {
    const readings = curve('chamber', { from: 0, to: 1600 }, (s) => (s < 1400 ? 700 : 700 + (s - 1400) / 5));
    const told = judged(c, { readings, to: 1600 }).events.filter((event) => event.finding === 'ramp-stalled');
    expect(told.map((event) => event.at)).toEqual([at(600), at(1410)]);
  });

  it('is not called for a slow ramp that keeps its plan', () => {
    const slow: SegmentInput = { ...RAMP, kind: 'ramp', rateCelsiusPerHour: 6 };
    const jitter = noise(11);
    const readings = curve('chamber', { from: 0, to: 14_000, every: 5 }, (s) => 700 + s / 600 + jitter());
    expect(everRaised(caseOf([slow]), { readings, to: 14_000 })).toEqual([]);
  });

  it('is not called while nobody can see', () => {
    const readings = curve('chamber', { from: 0, to: 100 }, (s) => 20 + s);
    expect(everRaised(c, { readings, to: 3000 })).toEqual([]);
  });

  it('is not called for a furnace that comes down', () => {
    const down: SegmentInput[] = [{ kind: 'ramp', targetCelsius: 500, toleranceCelsius: 10 }];
    const readings = curve('chamber', { from: 0, to: 2500 }, (s) => 800 - s / 10);
    expect(everRaised(caseOf(down), { readings, to: 2500 })).toEqual([]);
  });
});
