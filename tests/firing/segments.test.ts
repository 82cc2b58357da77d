import { describe, expect, it } from 'vitest';
import {
  at,
  CHAMBER,
  caseOf,
  curve,
  judged,
  LOAD,
  QUENCH,
  RAMP,
  type SegmentInput,
  sentences,
  soak,
} from './kit.ts';

/** An oven that rises straight and is cut off at its set point. */
const oven = { furnaceKind: 'electric-oven' as const };
const heat = (s: number) => Math.min(800, 700 + s);
const codes = (reasons: readonly { code: string }[] | undefined) => reasons?.map((reason) => reason.code);

describe('a firing that goes as planned', () => {
  const c = caseOf([RAMP, soak(60), QUENCH], oven);
  const readings = curve('chamber', { from: 0, to: 300 }, heat);

  it('tells one move after the other', () => {
    const confirmations = [{ at: at(170), segment: 2 }];
    const said = sentences(c, { readings, confirmations, to: 180, endedAt: at(175) });
    expect(said.map(({ seconds, code }) => [seconds, code])).toEqual([
      [0, 'heat-up'],
      [90, 'hold'],
      [150, 'quench-now'],
      [170, 'temper-soon'],
      [175, 'done'],
    ]);
  });

  it('is met in all its segments', () => {
    const result = judged(c, {
      readings,
      confirmations: [{ at: at(170), segment: 2 }],
      to: 200,
      endedAt: at(180),
    });
    expect(result.segments.map((segment) => segment.verdict)).toEqual(['met', 'met', 'met']);
    expect(result.segments.map((segment) => segment.state)).toEqual(['done', 'done', 'done']);
    expect(result.verdict).toBe('met');
  });

  it('is pending while a segment is still open', () => {
    expect(judged(c, { readings, to: 160 }).verdict).toBe('pending');
  });

  it('changes no more after it was finished', () => {
    const ended = { readings, confirmations: [{ at: at(170), segment: 2 }], endedAt: at(180) };
    expect(judged(c, { ...ended, to: 300 })).toEqual(judged(c, { ...ended, to: 181 }));
  });
});

describe('a piece that leaves the furnace', () => {
  const c = caseOf([RAMP, soak(60), QUENCH]);
  const cooled = curve('chamber', { from: 0, to: 300 }, (s) => (s < 150 ? heat(s) : 40));

  it('waits for the smith: a cold chamber proves nothing about the piece', () => {
    const result = judged(c, { readings: cooled, to: 300 });
    expect(result.segments[2]).toMatchObject({ state: 'running', blindSeconds: 0 });
    expect(result).toMatchObject({ waitsForConfirmation: true, segmentIndex: 2, endsAt: null });
    expect(result.nextMove.text).toBe('Soak done. Quench now.');
  });

  it('is not called blind when the chamber goes silent meanwhile', () => {
    const result = judged(c, { readings: cooled.slice(0, 152), to: 300 });
    expect(result.gaps).toEqual([]);
    expect(result.nextMove.code).toBe('quench-now');
  });

  it('has a doubt when nobody confirmed it before the end', () => {
    const result = judged(c, { readings: cooled, to: 300, endedAt: at(290) });
    expect(codes(result.segments[2]?.reasons)).toEqual(['not-confirmed']);
    expect(result.verdict).toBe('met-with-doubts');
  });

  it('is buried, laid straight, and watched down by its own probe after that', () => {
    const bury: SegmentInput = { kind: 'cool', targetCelsius: 300, medium: 'vermiculite' };
    const watched = caseOf([RAMP, bury], { ...oven, watched: [CHAMBER, LOAD] });
    const chamber = curve('chamber', { from: -1, to: 120 }, heat);
    const load = curve('load', { from: -1, to: 700 }, (s) =>
      s < 100 ? heat(s) : Math.max(100, 800 - (s - 100)),
    );
    const run = { readings: [...chamber, ...load], confirmations: [{ at: at(150), segment: 1 }] };
    expect(sentences(watched, { ...run, to: 700 }).map(({ seconds, text }) => [seconds, text])).toEqual([
      [0, 'Heat to 800 °C'],
      [90, 'Bury it, lay it straight'],
      [150, 'Wait: cooling to 300 °C'],
      [600, 'Leave till tomorrow. Press Finish.'],
    ]);
    const { segments } = judged(watched, { ...run, to: 700 });
    expect(segments[1]).toMatchObject({ state: 'done', endedAt: at(600), startCelsius: 790 });
    expect(segments[1]?.meanRateCelsiusPerHour).toBeCloseTo(((300 - 790) / 510) * 3600, 6);
  });

  it('leaves a doubt where a rate was asked for and no probe is on the piece', () => {
    const slow: SegmentInput = {
      kind: 'cool',
      targetCelsius: 300,
      medium: 'ash',
      maximumRateCelsiusPerHour: 50,
    };
    const confirmations = [{ at: at(100), segment: 1 }];
    const { segments } = judged(caseOf([RAMP, slow]), { readings: cooled, confirmations, to: 120 });
    expect(segments[1]).toMatchObject({
      state: 'done',
      verdict: 'met-with-doubts',
      meanRateCelsiusPerHour: null,
    });
    expect(codes(segments[1]?.reasons)).toEqual(['rate-not-seen']);
  });
});

describe('a confirmation', () => {
  const c = caseOf([RAMP, soak(600), QUENCH]);
  const readings = curve('chamber', { from: 0, to: 400 }, heat);

  it('moves on from a soak whose clock is not full, and the record says so', () => {
    const { segments, segmentIndex } = judged(c, {
      readings,
      confirmations: [{ at: at(190), segment: 1 }],
      to: 200,
    });
    expect(segmentIndex).toBe(2);
    expect(segments[1]).toMatchObject({
      state: 'skipped',
      verdict: 'not-met',
      soakSeconds: 100,
      endedAt: at(190),
    });
    expect(segments[1]?.reasons[0]?.text).toBe('Moved on early: the soak clock had 100 s of 10 min');
  });

  it('moves on from a ramp before its target', () => {
    const { segments } = judged(c, { readings, confirmations: [{ at: at(50), segment: 0 }], to: 60 });
    expect(segments[0]).toMatchObject({ state: 'skipped', verdict: 'not-met' });
    expect(segments[0]?.reasons[0]?.text).toBe('Moved on early: at 750 °C of 800 °C');
  });

  it('of another segment than the running one does nothing', () => {
    const told = [0, 2].map((segment) => ({ at: at(190), segment }));
    const run = { readings, to: 200 };
    expect(judged(c, { ...run, confirmations: told })).toEqual(judged(c, run));
  });

  it('works while blind: the smith can see what the probe cannot', () => {
    const blind = { readings: readings.slice(0, 120), confirmations: [{ at: at(300), segment: 1 }], to: 310 };
    const result = judged(c, blind);
    expect(result.nextMove.code).toBe('quench-now');
    expect(result.gaps).toEqual([{ from: at(139), to: at(300) }]);
    expect(result.events.some((event) => event.kind === 'seeing')).toBe(false);
  });
});

describe('a firing that is finished early', () => {
  const c = caseOf([RAMP, soak(600), { kind: 'cool', targetCelsius: 500, medium: 'furnace' }]);
  const readings = curve('chamber', { from: 0, to: 400 }, heat);

  it('is not met, and what was never begun says so', () => {
    const result = judged(c, { readings, to: 200, endedAt: at(200) });
    expect(result.verdict).toBe('not-met');
    expect(result.segments.map((segment) => segment.state)).toEqual(['done', 'skipped', 'skipped']);
    expect(result.segments.map((segment) => codes(segment.reasons))).toEqual([
      [],
      ['finished-early'],
      ['not-begun'],
    ]);
    expect(result.nextMove.text).toBe('Finished');
  });
});

describe('doubts and faults', () => {
  const c = caseOf([soak(600)]);
  const held = (celsius: (s: number) => number, to = 700) => curve('chamber', { from: 0, to }, celsius);
  const verdictOf = (readings: ReturnType<typeof held>) => {
    const [segment] = judged(c, { readings, to: 3000 }).segments;
    return [segment?.verdict, codes(segment?.reasons)];
  };

  it('a short overshoot leaves a doubt, a long one is a fault', () => {
    expect(verdictOf(held((s) => (s >= 100 && s < 109 ? 812 : 800)))).toEqual([
      'met-with-doubts',
      ['short-overshoot'],
    ]);
    expect(verdictOf(held((s) => (s >= 100 && s < 110 ? 812 : 800)))).toEqual([
      'not-met',
      ['overshoot', 'interrupted'],
    ]);
  });

  it('blindness of more than 5 % of the time leaves a doubt, less is a note', () => {
    const gap = (from: number, to: number) =>
      held(() => 800).filter((r) => r.at <= at(from) || r.at >= at(to));
    expect(verdictOf(gap(100, 140))).toEqual(['met', ['blind']]);
    expect(verdictOf(gap(100, 160))).toEqual(['met-with-doubts', ['blind']]);
  });

  it('a long interruption of the soak leaves a doubt although the clock was filled', () => {
    const readings = held((s) => (s >= 100 && s < 161 ? 780 : 800));
    expect(verdictOf(readings)).toEqual(['met-with-doubts', ['interrupted']]);
    expect(verdictOf(held((s) => (s >= 100 && s < 159 ? 780 : 800)))).toEqual(['met', ['interrupted']]);
  });

  it('a ramp much faster than planned leaves a doubt, a slow one a note', () => {
    const rated: SegmentInput = { ...RAMP, kind: 'ramp', rateCelsiusPerHour: 1800 };
    const ramp = (perSecond: number) => {
      const readings = held((s) => 200 + s * perSecond, 3000);
      const [segment] = judged(caseOf([rated]), { readings, to: 3000 }).segments;
      return [segment?.verdict, codes(segment?.reasons)];
    };
    expect(ramp(0.5)).toEqual(['met', []]);
    expect(ramp(0.7)).toEqual(['met-with-doubts', ['heated-too-fast']]);
    expect(ramp(0.3)).toEqual(['met', ['heated-slowly']]);
  });
});
