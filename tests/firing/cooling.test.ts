import { describe, expect, it } from 'vitest';
import { at, CHAMBER, caseOf, curve, judged, LOAD, noise, type SegmentInput, sentences } from './kit.ts';

/** Cooling in the furnace at a set rate: 28 °C/h is the usual limit for annealing plain carbon steel. */

const slow: SegmentInput = {
  kind: 'cool',
  targetCelsius: 650,
  medium: 'furnace',
  maximumRateCelsiusPerHour: 28,
};
const HOUR = 3600;
const every = 5;
const falls = (perHour: number, seed: number) => {
  const jitter = noise(seed);
  return (s: number) => 700 - (perHour * s) / HOUR + jitter();
};

describe('cooling in the furnace', () => {
  it('ends when the last watched point has come down, not the first', () => {
    const c = caseOf([{ ...slow, maximumRateCelsiusPerHour: null } as SegmentInput], {
      watched: [CHAMBER, LOAD],
    });
    const chamber = curve('chamber', { from: 0, to: 1000 }, (s) => 700 - s / 10);
    const load = curve('load', { from: 0, to: 1000 }, (s) => 720 - s / 10);
    const { segments } = judged(c, { readings: [...chamber, ...load], to: 1000 });
    expect(segments[0]).toMatchObject({ state: 'done', endedAt: at(700), verdict: 'met' });
  });

  it('at the rate that was asked for is met, and says so all the way', () => {
    const c = caseOf([slow], { furnaceKind: 'electric-oven' });
    const readings = curve('chamber', { from: 0, to: 2 * HOUR, every }, falls(27, 1));
    const said = sentences(c, { readings, to: 2 * HOUR });
    expect(new Set(said.map(({ code }) => code))).toEqual(new Set(['cool-furnace', 'done']));
    const [segment] = judged(c, { readings, to: 2 * HOUR }).segments;
    expect(segment?.verdict).toBe('met');
    expect(segment?.meanRateCelsiusPerHour).toBeCloseTo(-27, -1);
  });

  it('too fast is told to the smith and is a fault in the verdict', () => {
    const c = caseOf([slow]);
    const readings = curve('chamber', { from: 0, to: 2 * HOUR, every }, falls(60, 2));
    const said = sentences(c, { readings, to: HOUR / 2 });
    expect(said.at(-1)?.text).toBe('Cool slower: 28 °C/h');
    const [segment] = judged(c, { readings, to: 2 * HOUR }).segments;
    expect(segment?.verdict).toBe('not-met');
    expect(segment?.reasons.map((reason) => reason.code)).toEqual(['cooled-too-fast']);
    expect(segment?.steepestRateCelsiusPerHour).toBeCloseTo(-60, -1);
  });

  it('too slow is told to the smith and is a fault in the verdict', () => {
    const c = caseOf([
      { ...slow, maximumRateCelsiusPerHour: null, minimumRateCelsiusPerHour: 100 } as SegmentInput,
    ]);
    const readings = curve('chamber', { from: 0, to: 2 * HOUR, every }, falls(60, 3));
    expect(sentences(c, { readings, to: HOUR / 2 }).at(-1)?.text).toBe('Cool faster: 100 °C/h');
    const [segment] = judged(c, { readings, to: 2 * HOUR }).segments;
    expect(segment?.reasons.map((reason) => reason.code)).toEqual(['cooled-too-slowly']);
  });

  it('raises no overshoot, whatever it starts from', () => {
    const readings = curve('chamber', { from: 0, to: 600, every }, falls(20, 4));
    const { events, lowCelsius, highCelsius } = judged(caseOf([slow]), { readings, to: 600 });
    expect(events.map((event) => event.kind)).toEqual(['segment-started']);
    expect([lowCelsius, highCelsius]).toEqual([null, null]);
  });
});

describe('a ramp at a planned rate', () => {
  const rated: SegmentInput = {
    kind: 'ramp',
    targetCelsius: 800,
    toleranceCelsius: 10,
    rateCelsiusPerHour: 360,
  };
  const c = caseOf([rated], { furnaceKind: 'electric-oven' });

  it('that follows its plan with an on-off controller is left in peace', () => {
    const swings = (s: number) => 400 + s / 10 + 6 * Math.sin(s / 20);
    const readings = curve('chamber', { from: 0, to: 1200 }, swings);
    expect(new Set(sentences(c, { readings, to: 1200 }).map(({ code }) => code))).toEqual(
      new Set(['heat-up']),
    );
  });

  it('that falls behind by the tolerance asks for more heat, and one that runs ahead for less', () => {
    const lags = curve('chamber', { from: 0, to: 600 }, (s) => 400 + s / 20);
    expect(sentences(c, { readings: lags, to: 600 }).at(-1)?.text).toBe('Heat faster: 360 °C/h');
    const leads = curve('chamber', { from: 0, to: 600 }, (s) => 400 + s / 5);
    expect(sentences(c, { readings: leads, to: 600 }).at(-1)?.text).toBe('Heat slower: 360 °C/h');
  });
});
