import { describe, expect, it } from 'vitest';
import { at, bad, CHAMBER, caseOf, curve, judged, LOAD, noise, RAMP, REAR, runTo, soak, T0 } from './kit.ts';

/** AMS 2750 practice: the soak begins when the coldest has reached the lower limit, and counts while it is inside. */

describe('the soak clock', () => {
  it('starts at the very reading with which the coldest reaches the lower limit', () => {
    const c = caseOf([RAMP, soak(600)]);
    const readings = curve('chamber', { from: 0, to: 120 }, (s) => (s < 100 ? 700 : 790));
    const { segments, segmentIndex, soakSeconds } = judged(c, { readings, to: 120 });
    expect(segmentIndex).toBe(1);
    expect(segments[1]?.startedAt).toBe(at(100));
    expect(soakSeconds).toBe(20);
  });

  it('ends at the exact instant it is full, between two ticks and without a reading there', () => {
    const c = caseOf([soak(60), { kind: 'cool', targetCelsius: 60, medium: 'quench' }]);
    // Three seconds between readings, none of them and no tick at 60.4 s after the one that starts the clock.
    const readings = curve('chamber', { from: 0.4, to: 90, every: 3 }, () => 800);
    const { segments } = judged(c, { readings, to: 90 });
    expect(segments[0]).toMatchObject({
      state: 'done',
      soakSeconds: 60,
      endedAt: at(60.4),
      blindSeconds: 0.4,
    });
    expect(segments[1]?.startedAt).toBe(at(60.4));
  });

  it('counts both edges of the band and not a quarter degree beyond', () => {
    const c = caseOf([soak(600)]);
    const steps = [789.75, 790, 800, 810, 810.25];
    const readings = curve('chamber', { from: 0, to: 49 }, (s) => steps[Math.floor(s / 10)] ?? 0);
    expect(judged(c, { readings, to: 50 }).soakSeconds).toBe(30);
  });

  it('stops while the coldest of two channels is outside, however good the other one looks', () => {
    const c = caseOf([soak(600)], { watched: [CHAMBER, REAR] });
    const front = curve('chamber', { from: 0, to: 100 }, () => 800);
    const rear = curve('rear', { from: 0, to: 100 }, (s) => (s < 40 ? 780 : 795));
    const result = judged(c, { readings: [...front, ...rear], to: 100 });
    expect(result.soakSeconds).toBe(60);
    expect(result.measuredCelsius).toBe(795);
    expect(result.hottestCelsius).toBe(800);
  });

  it('waits for the core of the load when a load probe is watched', () => {
    const c = caseOf([RAMP, soak(600)], { watched: [CHAMBER, LOAD] });
    const chamber = curve('chamber', { from: 0, to: 300 }, () => 800);
    const load = curve('load', { from: 0, to: 300 }, (s) => 500 + s);
    const { segments } = judged(c, { readings: [...chamber, ...load], to: 300 });
    expect(segments[0]).toMatchObject({ state: 'done', endedAt: at(290) });
    expect(segments[1]?.soakSeconds).toBe(10);
  });

  it('hears only good readings: a wild bad one neither stops nor feeds it', () => {
    const c = caseOf([soak(600)]);
    const readings = curve('chamber', { from: 0, to: 100 }, () => 800).map((reading, i) =>
      i === 50 ? bad({ ...reading, value: 1820 }) : reading,
    );
    const { segments } = judged(c, { readings, to: 100 });
    expect(segments[0]).toMatchObject({ soakSeconds: 100, peakCelsius: 800, blindSeconds: 0 });
  });

  it('loses to noise at the band edge just the seconds outside, and nobody hears a chatter', () => {
    const c = caseOf([soak(3600)]);
    const jitter = noise(7);
    const readings = curve('chamber', { from: 0, to: 600 }, () => 790 + jitter());
    const below = readings.slice(0, -1).filter((reading) => reading.value < 790).length;
    expect(below).toBeGreaterThan(100);
    const result = judged(c, { readings, to: 600 });
    expect(result.soakSeconds).toBe(600 - below);
    expect(result.events.map((event) => event.kind)).toEqual(['segment-started']);
  });

  it('keeps mean, lowest and peak of the soak, weighted by time', () => {
    const c = caseOf([soak(600)]);
    // 100 s at 795, then 300 s at 805, given by two readings in a long while of repetition.
    const readings = curve('chamber', { from: 0, to: 400, every: 10 }, (s) => (s < 100 ? 795 : 805));
    const { segments } = judged(c, { readings, to: 400 });
    expect(segments[0]?.meanCelsius).toBe((795 * 100 + 805 * 300) / 400);
    expect(segments[0]).toMatchObject({ lowestCelsius: 795, peakCelsius: 805, elapsedSeconds: 400 });
  });
});

describe('a gap in the readings', () => {
  const c = caseOf([soak(600)]);
  const readings = [
    ...curve('chamber', { from: 0, to: 100 }, () => 800),
    ...curve('chamber', { from: 200.5, to: 300 }, () => 800),
  ];

  it('never counts as soak: the clock stops the instant the value is too old', () => {
    const { segments, soakSeconds, gaps } = judged(c, { readings, to: 300 });
    expect(soakSeconds).toBe(120 + 99.5);
    expect(segments[0]?.blindSeconds).toBe(80.5);
    expect(gaps).toEqual([{ from: at(120), to: at(200.5) }]);
  });

  it('is open while it lasts, and the wall says so instead of a value', () => {
    const result = judged(c, { readings: readings.slice(0, 101), to: 150 });
    expect(result.blindSince).toBe(at(120));
    expect(result.measuredCelsius).toBeNull();
    expect(result.nextMove).toMatchObject({ code: 'no-reading', text: 'No reading: look at the probe' });
    expect(result.gaps).toEqual([{ from: at(120), to: at(150) }]);
  });

  it('ends no segment: a full clock is not reached blind', () => {
    const short = caseOf([soak(130)]);
    const blind = judged(short, { readings: readings.slice(0, 101), to: 199 });
    expect(blind.segments[0]).toMatchObject({ state: 'running', soakSeconds: 120 });
    const { segments } = judged(short, { readings, to: 300 });
    expect(segments[0]).toMatchObject({ state: 'done', endedAt: at(210.5) });
  });

  it('is there from the start when a watched channel was never heard', () => {
    const two = caseOf([soak(600)], { watched: [CHAMBER, REAR] });
    const result = judged(two, { readings: readings.slice(0, 60), to: 60 });
    expect(result.blindSince).toBe(T0);
    expect(result.soakSeconds).toBe(0);
  });

  it('is not there at the start when a fresh value was known before it', () => {
    const early = curve('chamber', { from: -5, to: 30, every: 5 }, () => 800);
    const result = judged(c, { readings: early, to: 30 });
    expect(result.gaps).toEqual([]);
    expect(result.soakSeconds).toBe(30);
  });

  it('cannot grow the record without end', () => {
    const flicker = curve('chamber', { from: 0, to: 30_000, every: 30 }, () => 700);
    const state = runTo(caseOf([RAMP]), { readings: flicker, to: 30_000 });
    expect(state.gaps.length).toBeLessThanOrEqual(400);
    expect(state.events.length).toBeLessThanOrEqual(400);
    expect(state.events[0]?.kind).toBe('segment-started');
  });
});
