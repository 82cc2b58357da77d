import { type Fault, type Outcome, quoted, refused, understood } from './outcome.ts';
import { type BaseLabel, isFiniteNumber, type SenmlBase } from './senml-base.ts';

/** The value of a resolved entry: exactly one kind, or none where only a sum was sent. */
export type SenmlValue =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'string'; readonly value: string }
  | { readonly kind: 'boolean'; readonly value: boolean }
  /** Base64url text without padding, as sent. */
  | { readonly kind: 'data'; readonly value: string }
  | { readonly kind: 'none' };

/** One resolved record (RFC 8428 section 4.6). */
export interface SenmlEntry {
  readonly name: string;
  readonly unit: string | null;
  /** Unix seconds. */
  readonly time: number;
  /** False when the sender gave no instant of its own: the time was counted from "now". */
  readonly timeIsAbsolute: boolean;
  readonly value: SenmlValue;
  readonly sum: number | null;
  /** The longest until the next reading, seconds; null when not said. */
  readonly updateTime: number | null;
}

type Fields = Readonly<Record<string, unknown>>;

/** RFC 8428 section 4.5.3: sums below 2^28 count from now, others are Unix time. */
const ABSOLUTE_FROM = 2 ** 28;
/** RFC 8428 section 4.5.1. */
const NAME = /^[A-Za-z0-9][A-Za-z0-9\-:./_]*$/;
const BASE64URL = /^[A-Za-z0-9_-]*$/;
const VALUE_LABELS = ['v', 'vs', 'vb', 'vd'] as const;
type ValueLabel = (typeof VALUE_LABELS)[number];

/** Resolves one record against the base fields in force. */
export function resolveRecord(record: Fields, base: SenmlBase, nowSeconds: number): Outcome<SenmlEntry> {
  const broken = brokenBase(record, base);
  if (broken) return { ok: false, ...broken };
  const name = resolveName(record, base);
  if (!name.ok) return name;
  const unit = resolveUnit(record, base);
  if (!unit.ok) return unit;
  const time = resolveTime(record, base, nowSeconds);
  if (!time.ok) return time;
  const sum = resolveNumber(record, 's', base.sum);
  if (!sum.ok) return sum;
  const value = resolveValue(record, base, sum.value !== null);
  if (!value.ok) return value;
  const updateTime = resolveNumber(record, 'ut', null);
  if (!updateTime.ok) return updateTime;
  return understood({
    name: name.value,
    unit: unit.value,
    ...time.value,
    value: value.value,
    sum: sum.value,
    updateTime: updateTime.value,
  });
}

/** A base field that made no sense takes down only the entries that would have used it. */
function brokenBase(record: Fields, base: SenmlBase): Fault | undefined {
  if (base.broken.size === 0) return undefined;
  const used: BaseLabel[] = ['bn', 'bt', 'bs'];
  if (!Object.hasOwn(record, 'u')) used.push('bu');
  if (Object.hasOwn(record, 'v')) used.push('bv');
  for (const label of used) {
    const detail = base.broken.get(label);
    if (detail !== undefined) return { reason: 'bad-base-field', detail };
  }
  return undefined;
}

function resolveName(record: Fields, base: SenmlBase): Outcome<string> {
  const own = Object.hasOwn(record, 'n') ? record.n : '';
  if (typeof own !== 'string') return refused('bad-name', `n is ${quoted(own)}, a string was expected`);
  const name = base.name + own;
  if (NAME.test(name)) return understood(name);
  return refused(
    'bad-name',
    `the name ${quoted(name)} must be of A-Z a-z 0-9 - : . / _ and start with a letter or digit (RFC 8428 4.5.1)`,
  );
}

function resolveUnit(record: Fields, base: SenmlBase): Outcome<string | null> {
  if (!Object.hasOwn(record, 'u')) return understood(base.unit);
  const unit = record.u;
  if (typeof unit === 'string') return understood(unit);
  return refused('bad-unit-field', `u is ${quoted(unit)}, a string was expected`);
}

function resolveTime(
  record: Fields,
  base: SenmlBase,
  nowSeconds: number,
): Outcome<Pick<SenmlEntry, 'time' | 'timeIsAbsolute'>> {
  const own = Object.hasOwn(record, 't') ? record.t : 0;
  if (!isFiniteNumber(own)) return refused('bad-time', `t is ${quoted(own)}, a number was expected`);
  const sum = base.time + own;
  if (sum >= ABSOLUTE_FROM) return understood({ time: sum, timeIsAbsolute: true });
  return understood({ time: nowSeconds + sum, timeIsAbsolute: false });
}

/** RFC 8428 section 4.5.4: a missing half counts as zero, both missing is no number at all. */
function resolveNumber(record: Fields, label: 's' | 'ut', base: number | null): Outcome<number | null> {
  if (!Object.hasOwn(record, label)) return understood(base);
  const own = record[label];
  if (!isFiniteNumber(own)) return refused('bad-value', `${label} is ${quoted(own)}, a number was expected`);
  const total = (base ?? 0) + own;
  if (Number.isFinite(total)) return understood(total);
  return refused('not-finite', `${label} is beyond what a number can hold`);
}

/**
 * Exactly one value field, or none beside a sum (section 4.2). A base value alone makes no value: section 4.5.4
 * could be read so, but a reading nobody sent is worse than none.
 */
function resolveValue(record: Fields, base: SenmlBase, hasSum: boolean): Outcome<SenmlValue> {
  const present = VALUE_LABELS.filter((label) => Object.hasOwn(record, label));
  const [label, another] = present;
  if (another !== undefined) return refused('several-values', `${present.join(' and ')} in one entry`);
  if (label !== undefined) return readValue(label, record[label], base);
  if (hasSum) return understood({ kind: 'none' });
  return refused('no-value', 'none of v, vs, vb, vd, s');
}

function readValue(label: ValueLabel, own: unknown, base: SenmlBase): Outcome<SenmlValue> {
  switch (label) {
    case 'v':
      return readNumber(own, base.value ?? 0);
    case 'vs':
      if (typeof own === 'string') return understood({ kind: 'string', value: own });
      return refused('bad-value', `vs is ${quoted(own)}, a string was expected`);
    case 'vb':
      if (typeof own === 'boolean') return understood({ kind: 'boolean', value: own });
      return refused('bad-value', `vb is ${quoted(own)}, true or false was expected`);
    case 'vd':
      if (typeof own === 'string' && BASE64URL.test(own)) return understood({ kind: 'data', value: own });
      return refused('bad-value', `vd is ${quoted(own)}, base64url without padding was expected`);
    default:
      return label satisfies never;
  }
}

function readNumber(own: unknown, base: number): Outcome<SenmlValue> {
  if (typeof own !== 'number') return refused('bad-value', `v is ${quoted(own)}, a number was expected`);
  const value = base + own;
  if (Number.isFinite(value)) return understood({ kind: 'number', value });
  return refused('not-finite', 'v is beyond what a number can hold');
}
