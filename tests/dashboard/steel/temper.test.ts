import { describe, expect, it } from 'vitest';
import {
  bandOutline,
  formulaRuns,
  hardnessEnds,
  middleLine,
  refusals,
} from '../../../dashboard/steel/temper-geometry.ts';
import { measuredAt } from '../../../dashboard/steel/temper-measured.ts';
import { known, unknown } from './answers.ts';

const at = (celsius: number, hrc: number | null, formula = 'A', remark = '') => {
  const answer = hrc === null ? unknown('no formula covers it', 'HRC') : known(hrc, hrc - 2, hrc + 3, 'HRC');
  const flags = remark === '' ? [] : [{ code: 'remark', message: remark }];
  return { celsius, hardnessHrc: answer.value === null ? answer : { ...answer, formula, flags } };
};

describe('the tempering curve', () => {
  it('is one run while one formula speaks, and breaks where none does', () => {
    const runs = formulaRuns([at(150, 60), at(200, 58), at(250, null), at(300, 52)]);
    expect(runs.map(({ fromCelsius, toCelsius }) => [fromCelsius, toCelsius])).toEqual([
      [150, 200],
      [300, 300],
    ]);
  });

  it('breaks where another formula takes over', () => {
    const runs = formulaRuns([at(150, 60), at(200, 58, 'B'), at(250, 57, 'B')]);
    expect(runs.map(({ formula }) => formula)).toEqual(['A', 'B']);
  });

  it('says a remark once, for the temperatures it holds at', () => {
    const [run] = formulaRuns([at(150, 60, 'A', 'light'), at(200, 58, 'A', 'light'), at(250, 55)]);
    expect(run?.cautions).toEqual([{ text: 'light', fromCelsius: 150, toCelsius: 200 }]);
  });

  it('gives each reason for silence once', () => {
    expect(refusals([at(650, null), at(700, null), at(600, 20)])).toEqual([
      { text: 'no formula covers it', fromCelsius: 650, toCelsius: 700 },
    ]);
  });

  it('is drawn inside round ends that hold every band', () => {
    expect(hardnessEnds(formulaRuns([at(150, 64), at(700, 13)]))).toEqual({ low: 10, high: 70 });
  });

  it('closes its band along the low side', () => {
    const [run] = formulaRuns([at(0, 50), at(10, 40)]);
    const same = (value: number) => value;
    expect(bandOutline(run?.points ?? [], same, same)).toBe('M0.0 53.0L10.0 43.0L10.0 38.0L0.0 48.0Z');
    expect(middleLine(run?.points ?? [], same, same)).toBe('M0.0 50.0L10.0 40.0');
    expect(bandOutline([], same, same)).toBe('');
  });
});

describe('what was measured', () => {
  const set = (hours: number, timeStated: boolean) => ({
    id: 'x',
    title: 'x',
    composition: {},
    quenchedHrc: null,
    timeStated,
    secondaryHardening: false,
    pairs: [{ celsius: 300, hours, hrc: 50 }],
    from: { standing: 'published-secondary' as const, source: '' },
  });

  it('is shown for the same time only, and never where the source states none', () => {
    expect(measuredAt([set(1, true)], 1)).toHaveLength(1);
    expect(measuredAt([set(1, true)], 2)).toEqual([]);
    expect(measuredAt([set(1, false)], 1)).toEqual([]);
  });
});
