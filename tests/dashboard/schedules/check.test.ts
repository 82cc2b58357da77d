import { describe, expect, it } from 'vitest';
import { checkForm, ratingWarnings } from '../../../dashboard/schedules/check.ts';
import { copyName } from '../../../dashboard/schedules/copy-name.ts';
import { readHours, writeHours } from '../../../dashboard/schedules/entry.ts';
import { formOf, reduceForm, type ScheduleForm } from '../../../dashboard/schedules/form.ts';
import { faultLines, shownFaults } from '../../../dashboard/schedules/shown-faults.ts';
import type { DisplayUnit, Segment } from '../../../hub/contract/schedule.ts';

const RAMP: Segment = { kind: 'ramp', targetCelsius: 815, toleranceCelsius: 10, rateCelsiusPerHour: 400 };
const SOAK: Segment = { kind: 'soak', targetCelsius: 815, toleranceCelsius: 10, durationSeconds: 5400 };
const COOL: Segment = {
  kind: 'cool',
  targetCelsius: 500,
  medium: 'furnace',
  maximumRateCelsiusPerHour: 50,
  minimumRateCelsiusPerHour: null,
};

function form(segments: Segment[], displayUnit: DisplayUnit = 'Cel', name = 'Anneal'): ScheduleForm {
  return formOf({ name, note: '', displayUnit, segments });
}
const typed = (
  start: ScheduleForm,
  key: number,
  field: 'target' | 'tolerance' | 'rate' | 'duration' | 'minimumRate',
  text: string,
) => reduceForm(start, { type: 'text', key, field, text });

describe('the faults of a schedule as it is typed', () => {
  it('says the contract’s limits in the unit that is typed', () => {
    // The contract allows targets to 1800 °C; NIST SP 811 B.9: 1800 °C = 3272 °F, a difference of 100 °C = 180 °F.
    const start = form([RAMP], '[degF]');
    expect(checkForm(typed(start, 1, 'target', '4000')).faults['segments.0.targetCelsius']).toBe(
      'At most 3272 °F.',
    );
    expect(checkForm(typed(start, 1, 'tolerance', '200')).faults['segments.0.toleranceCelsius']).toBe(
      'At most 180 °F.',
    );
    expect(checkForm(typed(start, 1, 'rate', '0')).faults['segments.0.rateCelsiusPerHour']).toBe(
      'Must be more than 0 °F/h.',
    );
  });

  it('finds what does not follow from the segment before, though another field cannot be read', () => {
    const broken = typed(typed(form([RAMP, SOAK, COOL]), 2, 'target', '700'), 3, 'minimumRate', 'slow');
    const { faults, draft } = checkForm(broken);
    expect(draft).toBeNull();
    expect(faults['segments.1.targetCelsius']).toContain('ramp to 815 °C');
    expect(faults['segments.2.minimumRateCelsiusPerHour']).toContain('"slow" is not a number');
  });

  it('refuses a cooling that goes up, and limits that cross, in °F when °F is typed', () => {
    const up = checkForm(typed(form([RAMP, SOAK, COOL], '[degF]'), 3, 'target', '1600'));
    expect(up.faults['segments.2.targetCelsius']).toBe('Cooling must end below the 1499 °F it starts from.');
    const crossed = checkForm(typed(form([RAMP, SOAK, COOL]), 3, 'minimumRate', '90'));
    expect(crossed.faults).toEqual({
      'segments.2.minimumRateCelsiusPerHour':
        'The slowest cooling allowed is faster than the fastest allowed.',
    });
  });

  it('refuses a soak of no time and a name of nothing', () => {
    const { faults } = checkForm(typed(form([RAMP, SOAK], 'Cel', ' '), 2, 'duration', '0:00'));
    expect(faults).toEqual({
      name: 'Needed: please fill this in.',
      'segments.1.durationSeconds': 'Must be more than 0 s.',
    });
  });

  it('waits with what is merely empty until somebody tries to save', () => {
    const { faults } = checkForm(form([], 'Cel', ''));
    expect(shownFaults(faults, false)).toEqual({});
    expect(faultLines(shownFaults(faults, true))).toEqual([
      'Name: Needed: please fill this in.',
      'Segments: Add at least one segment.',
    ]);
  });

  it('finds nothing against a schedule that is right', () => {
    expect(checkForm(form([RAMP, SOAK, COOL])).faults).toEqual({});
  });
});

describe('a schedule beside a furnace', () => {
  it('warns of the target that the furnace is not rated for, and of that alone', () => {
    const warnings = ratingWarnings(form([RAMP, COOL]), { name: 'Small oven', ratedCelsius: 800 });
    expect([...warnings.keys()]).toEqual([0]);
    expect(warnings.get(0)).toContain('Small oven is rated for (800 °C)');
  });

  it('lets a target at the very rating pass, as the hub does', () => {
    expect(ratingWarnings(form([RAMP]), { name: 'Oven', ratedCelsius: 815 }).size).toBe(0);
    expect(ratingWarnings(form([RAMP]), undefined).size).toBe(0);
  });
});

describe('small things of schedules', () => {
  it('writes durations as hours and minutes, and reads them back to the second', () => {
    expect([5400, 1200, 45, 360_000].map(writeHours)).toEqual(['1:30', '0:20', '0:00:45', '100:00']);
    for (const seconds of [5400, 1200, 45, 360_000]) {
      expect(readHours(writeHours(seconds))).toEqual({ ok: true, value: seconds });
    }
  });

  it('finds a free name for a copy, never longer than a name may be', () => {
    expect(copyName('Anneal', [])).toBe('Anneal, copy');
    expect(copyName('Anneal', ['Anneal, copy', 'Anneal, copy 2'])).toBe('Anneal, copy 3');
    expect(copyName('x'.repeat(80), [])).toHaveLength(80);
  });
});
