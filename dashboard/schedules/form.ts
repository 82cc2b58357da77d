import type { CoolSegment, DisplayUnit, Schedule, Segment } from '../../hub/contract/schedule.ts';
import type { NumberMeaning } from '../parts/number-entry.ts';
import { convertText, writeHours, writeIn } from './entry.ts';

/** The form of a schedule: texts as they were typed, and what may be done to them. A pure reducer. */

export type SegmentKind = Segment['kind'];

/** Every text that any kind of segment may need; those of other kinds rest unseen. */
export interface SegmentForm {
  /** Stays with the segment when it moves, so that its fields keep their focus. */
  readonly key: number;
  readonly kind: SegmentKind;
  readonly target: string;
  readonly tolerance: string;
  readonly rate: string;
  readonly duration: string;
  readonly medium: CoolSegment['medium'];
  readonly maximumRate: string;
  readonly minimumRate: string;
}

export type SegmentText = 'target' | 'tolerance' | 'rate' | 'duration' | 'maximumRate' | 'minimumRate';

export interface ScheduleForm {
  readonly name: string;
  readonly note: string;
  readonly unit: DisplayUnit;
  readonly segments: readonly SegmentForm[];
  readonly nextKey: number;
}

export type FormAction =
  | { readonly type: 'load'; readonly form: ScheduleForm }
  | { readonly type: 'name' | 'note'; readonly text: string }
  | { readonly type: 'unit'; readonly unit: DisplayUnit }
  | { readonly type: 'add'; readonly kind: SegmentKind }
  | { readonly type: 'remove'; readonly key: number }
  | { readonly type: 'move'; readonly key: number; readonly by: -1 | 1 }
  | { readonly type: 'text'; readonly key: number; readonly field: SegmentText; readonly text: string }
  | { readonly type: 'medium'; readonly key: number; readonly medium: CoolSegment['medium'] };

/** How each text changes with the unit: a target is a point on the scale, the others are differences. */
const MEANINGS: Readonly<Record<Exclude<SegmentText, 'duration'>, NumberMeaning>> = {
  target: 'point',
  tolerance: 'difference',
  rate: 'difference',
  maximumRate: 'difference',
  minimumRate: 'difference',
};
/** Tolerance offered for a new segment, °C: the contract's default. */
const TOLERANCE_CELSIUS = 10;

export function emptyForm(unit: DisplayUnit): ScheduleForm {
  return { name: '', note: '', unit, segments: [], nextKey: 1 };
}

/** The form of a stored schedule, in the unit it was written in. */
export function formOf(schedule: Pick<Schedule, 'name' | 'note' | 'displayUnit' | 'segments'>): ScheduleForm {
  const { displayUnit: unit } = schedule;
  const segments = schedule.segments.map((segment, index) => segmentForm(segment, index + 1, unit));
  return { name: schedule.name, note: schedule.note, unit, segments, nextKey: segments.length + 1 };
}

export function reduceForm(form: ScheduleForm, action: FormAction): ScheduleForm {
  switch (action.type) {
    case 'load':
      return action.form;
    case 'name':
    case 'note':
      return { ...form, [action.type]: action.text };
    case 'unit':
      return inUnit(form, action.unit);
    case 'add':
      return added(form, action.kind);
    case 'remove':
      return { ...form, segments: form.segments.filter((segment) => segment.key !== action.key) };
    case 'move':
      return { ...form, segments: moved(form.segments, action.key, action.by) };
    case 'text':
      return changed(form, action.key, { [action.field]: action.text });
    case 'medium':
      return changed(form, action.key, { medium: action.medium });
    default:
      return action satisfies never;
  }
}

function segmentForm(segment: Segment, key: number, unit: DisplayUnit): SegmentForm {
  const difference = (value: number | null) => writeIn(value, unit, 'difference');
  const blank = blankSegment(segment.kind, key, unit);
  const target = writeIn(segment.targetCelsius, unit, 'point');
  switch (segment.kind) {
    case 'ramp':
      return {
        ...blank,
        target,
        tolerance: difference(segment.toleranceCelsius),
        rate: difference(segment.rateCelsiusPerHour),
      };
    case 'soak':
      return {
        ...blank,
        target,
        tolerance: difference(segment.toleranceCelsius),
        duration: writeHours(segment.durationSeconds),
      };
    case 'cool':
      return {
        ...blank,
        target,
        medium: segment.medium,
        maximumRate: difference(segment.maximumRateCelsiusPerHour),
        minimumRate: difference(segment.minimumRateCelsiusPerHour),
      };
    default:
      return segment satisfies never;
  }
}

function blankSegment(kind: SegmentKind, key: number, unit: DisplayUnit): SegmentForm {
  const tolerance = writeIn(TOLERANCE_CELSIUS, unit, 'difference');
  const texts = { target: '', rate: '', duration: '', maximumRate: '', minimumRate: '' };
  return { key, kind, tolerance, medium: 'still-air', ...texts };
}

/** A soak begins as the hold of what came before it: that is what it nearly always is. */
function added(form: ScheduleForm, kind: SegmentKind): ScheduleForm {
  const blank = blankSegment(kind, form.nextKey, form.unit);
  const before = form.segments.at(-1);
  const held = kind === 'soak' && before ? { target: before.target, tolerance: before.tolerance } : {};
  return { ...form, segments: [...form.segments, { ...blank, ...held }], nextKey: form.nextKey + 1 };
}

function changed(form: ScheduleForm, key: number, change: Partial<SegmentForm>): ScheduleForm {
  const segments = form.segments.map((segment) =>
    segment.key === key ? { ...segment, ...change } : segment,
  );
  return { ...form, segments };
}

/** At the ends nothing moves. */
function moved(segments: readonly SegmentForm[], key: number, by: -1 | 1): readonly SegmentForm[] {
  const from = segments.findIndex((segment) => segment.key === key);
  const [one, other] = [segments[from], segments[from + by]];
  if (!one || !other) return segments;
  return segments.map((segment, index) => {
    if (index === from) return other;
    return index === from + by ? one : segment;
  });
}

function inUnit(form: ScheduleForm, unit: DisplayUnit): ScheduleForm {
  const texts = Object.keys(MEANINGS) as (keyof typeof MEANINGS)[];
  const segments = form.segments.map((segment) => {
    const converted = texts.map((field) => [
      field,
      convertText(segment[field], form.unit, unit, MEANINGS[field]),
    ]);
    return { ...segment, ...Object.fromEntries(converted) };
  });
  return { ...form, unit, segments };
}
