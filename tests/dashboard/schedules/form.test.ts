import { describe, expect, it } from 'vitest';
import { checkForm } from '../../../dashboard/schedules/check.ts';
import {
  emptyForm,
  type FormAction,
  formOf,
  reduceForm,
  type ScheduleForm,
} from '../../../dashboard/schedules/form.ts';

const play = (start: ScheduleForm, ...actions: FormAction[]): ScheduleForm =>
  actions.reduce(reduceForm, start);
const text = (
  key: number,
  field: 'target' | 'tolerance' | 'rate' | 'duration',
  value: string,
): FormAction => ({
  type: 'text',
  key,
  field,
  text: value,
});

const TEMPER = play(
  emptyForm('Cel'),
  { type: 'name', text: 'Temper' },
  { type: 'add', kind: 'ramp' },
  text(1, 'target', '200'),
  text(1, 'tolerance', '6'),
  { type: 'add', kind: 'soak' },
  text(2, 'duration', '2:00'),
);

describe('a schedule as it is typed', () => {
  it('becomes a draft in °C and seconds; a soak takes over what it follows', () => {
    const { draft, faults } = checkForm(TEMPER);
    expect(faults).toEqual({});
    expect(draft?.segments).toEqual([
      { kind: 'ramp', targetCelsius: 200, toleranceCelsius: 6, rateCelsiusPerHour: null },
      { kind: 'soak', targetCelsius: 200, toleranceCelsius: 6, durationSeconds: 7200 },
    ]);
  });

  it('may be typed in °F: a target is a point, a tolerance a difference', () => {
    const form = play(
      emptyForm('[degF]'),
      { type: 'name', text: 'Harden' },
      { type: 'add', kind: 'ramp' },
      text(1, 'target', '1500'),
      text(1, 'tolerance', '18'),
    );
    const [ramp] = checkForm(form).draft?.segments ?? [];
    // 1500 °F = 815.56 °C; a difference of 18 °F = 10 °C.
    expect(ramp?.targetCelsius).toBeCloseTo(815.5556, 3);
    expect(ramp?.kind === 'ramp' ? ramp.toleranceCelsius : null).toBeCloseTo(10, 9);
  });

  it('keeps its meaning when the unit is changed there and back', () => {
    const there = play(TEMPER, { type: 'unit', unit: '[degF]' });
    expect(there.segments[0]?.target).toBe('392');
    const back = play(there, { type: 'unit', unit: 'Cel' });
    expect(checkForm(back).draft?.segments).toEqual(checkForm(TEMPER).draft?.segments);
  });

  it('says what is wrong at its field, and goes on drawing what can be read', () => {
    const wrong = play(TEMPER, text(2, 'duration', 'long'), text(1, 'target', ''));
    const { draft, faults, readable } = checkForm(wrong);
    expect(draft).toBeNull();
    expect(Object.keys(faults).sort((a, b) => a.localeCompare(b))).toEqual([
      'segments.0.targetCelsius',
      'segments.1.durationSeconds',
    ]);
    expect(readable).toEqual([]);
    expect(checkForm(play(TEMPER, text(1, 'target', ''))).readable).toHaveLength(1);
  });

  it('refuses a soak that does not follow from the ramp before it', () => {
    const { draft, faults } = checkForm(play(TEMPER, text(2, 'target', '300')));
    expect(draft).toBeNull();
    expect(faults).toHaveProperty('segments.1.targetCelsius');
  });

  it('moves, removes and never moves past an end', () => {
    const moved = play(TEMPER, { type: 'move', key: 2, by: -1 });
    expect(moved.segments.map((segment) => segment.kind)).toEqual(['soak', 'ramp']);
    expect(play(TEMPER, { type: 'move', key: 1, by: -1 }).segments).toEqual(TEMPER.segments);
    expect(play(TEMPER, { type: 'remove', key: 1 }).segments).toHaveLength(1);
  });

  it('comes back out of a stored schedule as it went in', () => {
    const { draft } = checkForm(TEMPER);
    if (!draft) throw new Error('the draft is whole');
    expect(checkForm(formOf(draft)).draft).toEqual(draft);
  });
});
