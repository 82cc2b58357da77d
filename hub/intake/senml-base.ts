import { quoted } from './outcome.ts';

/** The base fields in force (RFC 8428 section 4.1): each holds until the same field appears again. */
export interface SenmlBase {
  name: string;
  time: number;
  unit: string | null;
  value: number | null;
  sum: number | null;
  /** Fields whose last statement made no sense. Whoever depends on one is refused until it is stated again. */
  readonly broken: Map<BaseLabel, string>;
}
export type BaseLabel = 'bn' | 'bt' | 'bu' | 'bv' | 'bs';
export const BASE_LABELS: readonly BaseLabel[] = ['bn', 'bt', 'bu', 'bv', 'bs'];

export function emptyBase(): SenmlBase {
  return { name: '', time: 0, unit: null, value: null, sum: null, broken: new Map() };
}

/** Takes over the base fields of a record. */
export function applyBase(base: SenmlBase, record: Readonly<Record<string, unknown>>): void {
  for (const label of BASE_LABELS) {
    if (!Object.hasOwn(record, label)) continue;
    base.broken.delete(label);
    if (!assign(base, label, record[label])) {
      base.broken.set(label, `${label} is ${quoted(record[label])}`);
    }
  }
}

function assign(base: SenmlBase, label: BaseLabel, stated: unknown): boolean {
  switch (label) {
    case 'bn':
      if (typeof stated !== 'string') return false;
      base.name = stated;
      return true;
    case 'bu':
      if (typeof stated !== 'string') return false;
      base.unit = stated;
      return true;
    case 'bt':
      if (!isFiniteNumber(stated)) return false;
      base.time = stated;
      return true;
    case 'bv':
      if (!isFiniteNumber(stated)) return false;
      base.value = stated;
      return true;
    case 'bs':
      if (!isFiniteNumber(stated)) return false;
      base.sum = stated;
      return true;
    default:
      return label satisfies never;
  }
}

export function isFiniteNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}
