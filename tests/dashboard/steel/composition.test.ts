import { describe, expect, it } from 'vitest';
import { ApiError } from '../../../dashboard/api/error.ts';
import {
  compositionText,
  percentTexts,
  readComposition,
  refusedElements,
} from '../../../dashboard/steel/composition.ts';
import { filterGrades, otherNames } from '../../../dashboard/steel/filter.ts';
import { questionOf } from '../../../dashboard/steel/question.ts';

function refusal(detail: string, errors: { path: string; message: string }[] = []): ApiError {
  const problem = {
    type: 'urn:soakwatch:problem:bad-input',
    title: 'No',
    status: 422,
    detail,
    code: 'bad-input',
    errors,
  };
  return new ApiError('refused', detail, { status: 422, problem });
}

describe('what was entered of a composition', () => {
  it('is read with a decimal comma, and what is empty counts as not named', () => {
    expect(readComposition({ C: '0,45', Mn: ' 0.75 ', Si: '' })).toEqual({
      ok: true,
      composition: { C: 0.45, Mn: 0.75 },
    });
  });

  it('is nothing when every field is empty', () => {
    expect(readComposition({ C: ' ', Cr: '' })).toEqual({ ok: true, composition: null });
  });

  it('is refused beside the field when it is no number', () => {
    const read = readComposition({ C: '0.45', Cr: 'some' });
    expect(read.ok).toBe(false);
    expect(read.ok ? {} : read.faults).toMatchObject({ Cr: expect.stringContaining('some') });
  });

  it('leaves a missing carbon to the hub, whose words then stand beside the field', () => {
    expect(readComposition({ Mn: '0.5' })).toMatchObject({ ok: true, composition: { Mn: 0.5 } });
    const faults = refusedElements(refusal('', [{ path: '/composition/C', message: 'a number is needed' }]));
    expect(faults).toEqual({ C: 'a number is needed' });
  });

  it('comes back from a grade to the same composition', () => {
    const percents = { C: 0.85, Mn: 0.75, Si: 0.25 };
    expect(readComposition(percentTexts(percents))).toEqual({ ok: true, composition: percents });
    expect(compositionText(percents)).toBe('C 0.85, Mn 0.75, Si 0.25 %');
  });
});

describe('a refusal of the hub', () => {
  it('finds the field of the element that it speaks of', () => {
    expect(Object.keys(refusedElements(refusal('Mn is -0.72: give mass percent, zero or more')))).toEqual([
      'Mn',
    ]);
    expect(Object.keys(refusedElements(refusal('Carbon is 3 %: above 2.14 % it is cast iron')))).toEqual([
      'C',
    ]);
  });

  it('is beside no field when it speaks of the whole', () => {
    expect(refusedElements(refusal('Alloying elements sum to 62 %: not a steel'))).toEqual({});
    expect(refusedElements(new ApiError('hub-unreachable', 'no answer', { status: 0 }))).toEqual({});
  });
});

describe('the question about a steel', () => {
  it('names a grade, a composition, or both for a certificate', () => {
    expect(questionOf('', null)).toBeNull();
    expect(questionOf('1084', null)).toEqual({ steel: '1084' });
    expect(questionOf('', { C: 0.5 })).toEqual({ composition: { C: 0.5 } });
    expect(questionOf('1084', { C: 0.82 })).toEqual({ steel: '1084', composition: { C: 0.82 } });
  });
});

describe('the catalogue', () => {
  const from = { standing: 'from-memory' as const, source: '' };
  const grade = (id: string, ...names: string[]) => ({
    id,
    title: id,
    names: [id, ...names].map((name) => ({ system: 'EN' as const, name, same: name === id, from })),
  });
  const grades = [
    grade('1045', 'C45', '1.0503'),
    grade('4140', '42CrMo4', '1.7225'),
    grade('C105W1', 'C105U'),
  ];
  const ids = (text: string) => filterGrades(grades, text).map(({ id }) => id);

  it('is found by any name, however it is written', () => {
    expect(ids('c45')).toEqual(['1045']);
    expect(ids('42 crmo 4')).toEqual(['4140']);
    expect(ids('17225')).toEqual(['4140']);
  });

  it('puts names that begin with the text before names that hold it', () => {
    expect(ids('105')).toEqual(['1045', 'C105W1']);
    expect(ids('C1')).toEqual(['C105W1']);
  });

  it('shows everything for nothing, and nothing for what nobody is called', () => {
    expect(ids(' ')).toEqual(['1045', '4140', 'C105W1']);
    expect(ids('unobtainium')).toEqual([]);
  });

  it('does not repeat the name that a grade is listed under', () => {
    expect(otherNames(grade('1045', 'C45'))).toEqual([{ name: 'C45', same: false }]);
  });
});
