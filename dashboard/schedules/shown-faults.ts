import type { Faults } from '../parts/faults.ts';
import { faultWords } from '../words/faults.ts';
import { editorWords } from '../words/schedules.ts';

/**
 * What to show of a form's faults. An empty field of a form that nobody tried to save is not a mistake yet:
 * it is pointed out only after a try. Everything else is said while it is typed.
 */
export function shownFaults(faults: Faults, tried: boolean): Faults {
  if (tried) return faults;
  const patient = new Set<string>([faultWords.missing, editorWords.noSegments]);
  return Object.fromEntries(Object.entries(faults).filter(([, words]) => !patient.has(words)));
}

const FIELD_NAMES: Readonly<Record<string, string>> = {
  name: editorWords.name,
  note: editorWords.note,
  segments: editorWords.segments,
  targetCelsius: editorWords.fields.target,
  toleranceCelsius: editorWords.fields.tolerance,
  rateCelsiusPerHour: editorWords.fields.rate,
  durationSeconds: editorWords.fields.duration,
  medium: editorWords.fields.medium,
  maximumRateCelsiusPerHour: editorWords.fields.maximumRate,
  minimumRateCelsiusPerHour: editorWords.fields.minimumRate,
};

/** Each fault with its place in words, for the list above the form's buttons. */
export function faultLines(faults: Faults): string[] {
  return Object.entries(faults).map(([path, words]) => editorWords.faultAt(placeOf(path), words));
}

function placeOf(path: string): string {
  const [head = '', index, field] = path.split('.');
  if (index === undefined || field === undefined) return FIELD_NAMES[head] ?? head;
  return editorWords.segment(Number(index), (FIELD_NAMES[field] ?? field).toLowerCase());
}
