import { ApiError } from '../api/error.ts';
import type { FieldName } from './form.ts';

/**
 * Which field a refusal of the hub is about, so that it can stand beside it: by the path of the request, or by the
 * quantity that the physics names first in its sentence ("section is 2.5 m, outside …"). Null: about no one field.
 */
export function fieldOfRefusal(error: unknown): FieldName | null {
  if (!(error instanceof ApiError) || error.kind !== 'refused') return null;
  const path = error.problem?.errors?.[0]?.path.replace(/^\//, '').split('/')[0] ?? '';
  const byPath = PATHS[path];
  if (byPath !== undefined) return byPath;
  const [, field] = QUANTITIES.find(([start]) => error.message.startsWith(start)) ?? [];
  return field ?? null;
}

const PATHS: Readonly<Record<string, FieldName>> = {
  thicknessMm: 'thickness',
  widthMm: 'width',
  initialCelsius: 'start',
  surroundingsCelsius: 'chamber',
  surroundingsCurve: 'rate',
  targetCelsius: 'target',
  toleranceCelsius: 'tolerance',
  holdSeconds: 'hold',
  canRadiusMm: 'canRadius',
  hotCompanionKilogramsPerMetre: 'companion',
};

const QUANTITIES: readonly (readonly [string, FieldName])[] = [
  ['section', 'thickness'],
  ['tolerance', 'tolerance'],
  ['hold', 'hold'],
  ['surroundings', 'chamber'],
  ['start', 'start'],
  ['piece', 'start'],
  ['target', 'target'],
];

interface Refused {
  readonly cooling: string;
  readonly why: string;
}

/** Why a packing cannot be reckoned, beside the field that would mend it. */
export function packingRefusals(results: readonly Refused[]): Readonly<Partial<Record<FieldName, string>>> {
  const faults: Partial<Record<FieldName, string>> = {};
  for (const { cooling, why } of results) {
    if (why === '' || (cooling !== 'ash' && cooling !== 'vermiculite')) continue;
    const [, field] = PACKING_QUANTITIES.find(([start]) => why.startsWith(start)) ?? [];
    if (field !== undefined) faults[field] ??= why;
  }
  return faults;
}

const PACKING_QUANTITIES: readonly (readonly [string, FieldName])[] = [
  ['width', 'width'],
  ['hot companion', 'companion'],
  ['radius of the packing', 'canRadius'],
  ['the steel fills the packing', 'canRadius'],
];
