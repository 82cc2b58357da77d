import { type DisplayUnit, ScheduleDraft, Segment } from '../../hub/contract/schedule.ts';
import type { Furnace } from '../../hub/contract/shop.ts';
import { type Faults, faultsOf, type Issue } from '../parts/faults.ts';
import type { Entry } from '../parts/number-entry.ts';
import { faultWords } from '../words/faults.ts';
import { rate, temperature, unitNamed } from '../words/format.ts';
import { editorWords } from '../words/schedules.ts';
import { KIND_WORDS } from '../words/segments.ts';
import { duration } from '../words/time.ts';
import { readHours, readIn, writeIn } from './entry.ts';
import type { ScheduleForm, SegmentForm } from './form.ts';

/** What a schedule's form means, checked by the contract's own schema. */
export interface CheckedForm {
  /** Null while something is wrong. */
  readonly draft: ScheduleDraft | null;
  /** By path: "name", "segments.0.targetCelsius". */
  readonly faults: Faults;
  /** The segments that can be read already, for the curve. */
  readonly readable: readonly Segment[];
}

/** Reads every text and lets the schema judge; a text that cannot be read speaks for its field. */
export function checkForm(form: ScheduleForm): CheckedForm {
  const unread: Record<string, string> = {};
  const segments = form.segments.map((segment, index) =>
    readSegment(segment, form.unit, (field, message) => {
      unread[`segments.${index}.${field}`] = message;
    }),
  );
  const parsed = ScheduleDraft.safeParse({
    name: form.name,
    note: form.note,
    displayUnit: form.unit,
    segments,
  });
  const judged = parsed.success ? {} : schemaFaults(parsed.error.issues, segments, form.unit);
  const faults = { ...orderFaults(segments, form.unit), ...judged, ...unread };
  const readable = segments.flatMap((segment) => {
    const alone = Segment.safeParse(segment);
    return alone.success ? [alone.data] : [];
  });
  return { draft: parsed.success && Object.keys(unread).length === 0 ? parsed.data : null, faults, readable };
}

type Raw = Record<string, unknown>;

function readSegment(
  form: SegmentForm,
  unit: DisplayUnit,
  complain: (field: string, message: string) => void,
): Raw {
  const value = <T>(field: string, text: string, entry: Entry<T>): T | undefined => {
    if (entry.ok) return entry.value;
    complain(field, text.trim() === '' ? faultWords.missing : entry.message);
    return undefined;
  };
  const point = (field: string, text: string) => value(field, text, readIn(text, unit, 'point'));
  const size = (field: string, text: string, optional = false) =>
    value(field, text, readIn(text, unit, 'difference', optional));
  const targetCelsius = point('targetCelsius', form.target);
  switch (form.kind) {
    case 'ramp':
      return {
        kind: 'ramp',
        targetCelsius,
        toleranceCelsius: size('toleranceCelsius', form.tolerance),
        rateCelsiusPerHour: size('rateCelsiusPerHour', form.rate, true),
      };
    case 'soak':
      return {
        kind: 'soak',
        targetCelsius,
        toleranceCelsius: size('toleranceCelsius', form.tolerance),
        durationSeconds: value('durationSeconds', form.duration, readHours(form.duration)),
      };
    case 'cool':
      return {
        kind: 'cool',
        targetCelsius,
        medium: form.medium,
        maximumRateCelsiusPerHour: size('maximumRateCelsiusPerHour', form.maximumRate, true),
        minimumRateCelsiusPerHour: size('minimumRateCelsiusPerHour', form.minimumRate, true),
      };
    default:
      return form.kind satisfies never;
  }
}

function schemaFaults(issues: readonly Issue[], segments: readonly Raw[], unit: DisplayUnit): Faults {
  return faultsOf(
    issues,
    (path, limit) => limitText(path, limit, unit),
    (issue) => ownWords(issue, segments, unit),
  );
}

/**
 * Faults that lie between a segment and the one before it. The schema looks for them only when every field can
 * be read; here each pair is judged by it on its own, so that one typing error hides no other fault.
 */
function orderFaults(segments: readonly Raw[], unit: DisplayUnit): Faults {
  const found = segments.flatMap((segment, index) => {
    const before = segments[index - 1];
    const pair = before !== undefined && Segment.safeParse(before).success ? [before, segment] : [segment];
    const parsed = ScheduleDraft.safeParse({ name: '-', segments: pair });
    if (parsed.success) return [];
    const last = pair.length - 1;
    return parsed.error.issues
      .filter((issue) => issue.code === 'custom' && issue.path[1] === last)
      .map((issue) => ({ ...issue, path: ['segments', index, ...issue.path.slice(2)] }));
  });
  return schemaFaults(found, segments, unit);
}

/** A limit of the schema in the unit that the person types in. */
function limitText(path: string, limit: number, unit: DisplayUnit): string {
  if (path.endsWith('durationSeconds')) return duration(limit);
  if (path.endsWith('RateCelsiusPerHour') || path.endsWith('rateCelsiusPerHour')) return rate(limit, unit);
  if (path.endsWith('targetCelsius')) return temperature(limit, unit);
  if (path.endsWith('toleranceCelsius')) {
    return `${writeIn(limit, unit, 'difference')} ${unitNamed(unit).label}`;
  }
  return String(limit);
}

/** The schema's own sentences are in °C: the faults that lie between segments are said anew in the form's unit. */
function ownWords(issue: Issue, segments: readonly Raw[], unit: DisplayUnit): string | null {
  const [head, index, field] = issue.path;
  if (head === 'segments' && index === undefined && issue.code === 'too_small') return editorWords.noSegments;
  if (issue.code !== 'custom' || typeof index !== 'number') return null;
  if (field === 'minimumRateCelsiusPerHour') return editorWords.crossedRates;
  const before = segments[index - 1];
  const from = before?.targetCelsius;
  if (field !== 'targetCelsius' || typeof from !== 'number') return null;
  if (segments[index]?.kind === 'cool') return editorWords.coolUp(temperature(from, unit));
  const kind = before?.kind === 'soak' ? KIND_WORDS.soak : KIND_WORDS.ramp;
  return editorWords.soakJump(kind.toLowerCase(), temperature(from, unit));
}

/** Warnings by segment index: targets that a furnace is not rated for. The hub refuses to start those. */
export function ratingWarnings(
  form: ScheduleForm,
  furnace: Pick<Furnace, 'name' | 'ratedCelsius'> | undefined,
): ReadonlyMap<number, string> {
  const warnings = new Map<number, string>();
  if (!furnace) return warnings;
  form.segments.forEach((segment, index) => {
    const target = readIn(segment.target, form.unit, 'point');
    if (!target.ok || target.value === null || target.value <= furnace.ratedCelsius) return;
    warnings.set(index, editorWords.beyond(temperature(furnace.ratedCelsius, form.unit), furnace.name));
  });
  return warnings;
}
