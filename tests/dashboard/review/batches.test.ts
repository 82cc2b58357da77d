import { describe, expect, it } from 'vitest';
import {
  capabilitySaid,
  controlSaid,
  individualsPicture,
  leftOutSaid,
  rangesPicture,
  rulesSaid,
  shiftWords,
  shownSize,
  shownValue,
  stagesSaid,
  toleranceSaid,
} from '../../../dashboard/review/batch-said.ts';
import { changeX, placeX, placeY, stretchX, valueEnds } from '../../../dashboard/review/control-geometry.ts';
import { hardnessEnds, learnedSaid, parameterEnds } from '../../../dashboard/review/learned-geometry.ts';
import { NO_CAPABILITY_WORDS, RULE_WORDS } from '../../../dashboard/words/review.ts';
import { NoCapability, RULES } from '../../../hub/contract/batch-statistics.ts';
import { statistics } from './fixtures.ts';

describe('what batch statistics say', () => {
  it('is how many values are marked, or that none is', () => {
    expect(controlSaid(statistics)).toBe('One of 3 values is marked by a test.');
    const quiet = statistics.points.map((point) => ({ ...point, rules: [] }));
    expect(controlSaid({ ...statistics, points: quiet })).toMatch(/a step between neighbours is beyond/);
    const chart = statistics.chart && { ...statistics.chart, movingRanges: [2, 3] };
    expect(controlSaid({ ...statistics, points: quiet, chart })).toMatch(/^In control/);
    expect(controlSaid({ ...statistics, points: [], chart: null })).toMatch(/^Nothing to chart/);
  });

  it('names each test in words, those of both authors once', () => {
    expect(rulesSaid({ rules: ['N1', 'W1', 'N5', 'W2'] })).toBe(
      'beyond three sigma (Nelson 1, Western Electric 1); two of three beyond two sigma on one side (Nelson 5, Western Electric 2)',
    );
    expect(Object.keys(RULE_WORDS).sort((a, b) => a.localeCompare(b))).toEqual([...RULES]);
  });

  it('gives capability with two decimals, and for every reason why not a sentence', () => {
    const indices = { within: { potential: null, actual: 1.337 }, overall: { potential: null, actual: 1.2 } };
    const told = capabilitySaid({ ...statistics, capability: { known: true, ...indices } });
    expect(told).toContain('Cp –, Cpk 1.34 · Pp –, Ppk 1.20');
    for (const reason of NoCapability.options) expect(NO_CAPABILITY_WORDS[reason]).toMatch(/^No capability/);
    expect(capabilitySaid(statistics)).toContain('25 firings');
  });

  it('tells a tolerance of one side and of two', () => {
    expect(toleranceSaid(statistics, 'Cel')).toBe('Tolerance of the schedule: at most 810.0 °C.');
    const both = { ...statistics, tolerance: { lower: 790, upper: 810 } };
    expect(toleranceSaid(both, '[degF]')).toBe('Tolerance of the schedule: 1454.0 °F to 1490.0 °F.');
    expect(toleranceSaid({ ...statistics, tolerance: null }, 'Cel')).toBe('');
  });

  it('converts values as temperatures and steps as differences', () => {
    expect(shownValue(100, 'Cel', '[degF]')).toBeCloseTo(212, 9);
    expect(shownSize(100, 'Cel', '[degF]')).toBeCloseTo(180, 9);
    expect(shownValue(90, 's', '[degF]')).toBe(1.5);
  });

  it('says whether a shift is more than chance', () => {
    expect(shiftWords({ value: 6, low: 4, high: 8, sure: true }, 'Cel', 'Cel')).toBe(
      '+6.0 °C (+4.0 °C to +8.0 °C, 95 %), more than chance',
    );
    expect(shiftWords({ value: -1, low: -3, high: 1, sure: false }, 'Cel', 'Cel')).toMatch(
      /^−1.0 °C.*may be chance$/,
    );
    expect(shiftWords(null, 'Cel', 'Cel')).toBe('too few values on a side');
  });

  it('says that limits begin anew at a change, when they do', () => {
    expect(stagesSaid(statistics)).toBe('');
    const stage = { from: 0, to: 2, values: { centre: 1, lower: 0, upper: 2 } };
    const chart = statistics.chart && { ...statistics.chart, stages: [stage, { ...stage, from: 2, to: 3 }] };
    expect(stagesSaid({ chart })).toContain('2 stretches');
    const { lines } = individualsPicture({ ...statistics, chart }, 'Cel');
    expect(lines.map(({ from, to }) => [from, to])).toEqual([
      [0, 2],
      [2, 3],
    ]);
  });

  it('says what is not in the chart', () => {
    expect(leftOutSaid(statistics)).toEqual([
      '2 firings have no such value.',
      'There are older ones before these.',
    ]);
  });
});

describe('the control chart', () => {
  const frame = { left: 0, right: 300, top: 0, bottom: 100 };

  it('numbers the marked values, and holds all that is charted', () => {
    const picture = individualsPicture(statistics, 'Cel');
    expect(picture.marks).toEqual([null, null, 1]);
    const ends = valueEnds(picture);
    expect(ends.low).toBeLessThan(770.8);
    expect(ends.high).toBeGreaterThan(850.6);
  });

  it('marks a step beyond its own limit', () => {
    expect(rangesPicture(statistics, 'Cel')).toMatchObject({ values: [2, 28], marks: [null, 1] });
    expect(rangesPicture({ ...statistics, chart: null }, 'Cel')).toBeNull();
  });

  it('does not let a wide tolerance press the values into a line', () => {
    const picture = individualsPicture({ ...statistics, tolerance: { lower: 0, upper: 2000 } }, 'Cel');
    expect(valueEnds(picture).high).toBeLessThan(900);
  });

  it('places values evenly, and a change between the two that it parts', () => {
    expect([0, 1, 2].map((n) => placeX(n, 3, frame))).toEqual([50, 150, 250]);
    expect(changeX(1, 3, frame)).toBe(100);
    expect(stretchX({ from: 0, to: 1 }, 3, frame)).toEqual([0, 100]);
    expect(stretchX({ from: 1, to: 3 }, 3, frame)).toEqual([100, 300]);
    expect(placeY(5, { low: 0, high: 10 }, frame)).toBe(50);
  });
});

describe('what the shop has learned of its steel', () => {
  const points = [
    { ...{ pieceId: 'p', mark: 'A', firingId: 'f', at: 0, tempers: 1 }, parameter: 7120, hardnessHrc: 62.4 },
    { ...{ pieceId: 'q', mark: 'B', firingId: 'g', at: 1, tempers: 2 }, parameter: 8230, hardnessHrc: 57.1 },
  ];
  const learned = {
    steels: [],
    steelId: '1095',
    constant: 15.79,
    points,
    curve: [],
    hold: [],
    notFitted: null,
  };

  it('has round ends of its axes around every piece', () => {
    expect(parameterEnds(learned)).toEqual({ low: 7000, high: 8300 });
    expect(hardnessEnds(learned)).toEqual({ low: 56, high: 64 });
  });

  it('says why there is no line, or what its ends are for one hour', () => {
    const say = (more: Partial<Parameters<typeof learnedSaid>[0]>) =>
      learnedSaid({ ...learned, ...more }, (celsius) => `${celsius.toFixed(0)} °C`);
    expect(say({ notFitted: 'few-pieces' })[0]).toBe('2 pieces so far: a line wants four.');
    expect(say({ notFitted: 'tempered-alike' })[0]).toMatch(/^All pieces were tempered alike/);
    expect(say({ hold: [{ parameter: 7900, celsiusForOneHour: 227 }] })[0]).toBe(
      'C = 15.8, from the carbon of the steel. 7900 K is one hour at 227 °C.',
    );
  });
});
