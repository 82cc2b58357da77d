import { type Fault, type Outcome, quoted, refused, understood } from './outcome.ts';
import { applyBase, BASE_LABELS, emptyBase, type SenmlBase } from './senml-base.ts';
import { resolveRecord, type SenmlEntry } from './senml-record.ts';
import { SENML_BASE_VERSION, SENML_UNDERSTOOD_VERSION, understandsVersion } from './senml-version.ts';

/** An entry that was left out, by its place in the pack. */
export interface SenmlFault extends Fault {
  readonly index: number;
}

export interface SenmlPack {
  readonly version: number;
  /** In the order of the pack. */
  readonly entries: readonly SenmlEntry[];
  readonly faults: readonly SenmlFault[];
}

type Fields = Readonly<Record<string, unknown>>;

const OWN_LABELS = new Set(['n', 'u', 'v', 'vs', 'vb', 'vd', 's', 't', 'ut']);

/**
 * Resolves a SenML pack (RFC 8428 sections 4.1 to 4.6) that has already been parsed from JSON.
 *
 * One bad entry never loses the good ones: it becomes a fault. The pack as a whole is refused only when it is not
 * an array (`not-a-pack`), or its version is not understood or not the same throughout (`unsupported-version`).
 *
 * @param nowSeconds Unix seconds that relative times count from
 */
export function resolveSenml(document: unknown, nowSeconds: number): Outcome<SenmlPack> {
  if (!Array.isArray(document)) {
    return refused('not-a-pack', `a SenML pack is a JSON array of objects, this is ${quoted(document)}`);
  }
  const version = packVersion(document);
  if (!version.ok) return version;
  const entries: SenmlEntry[] = [];
  const faults: SenmlFault[] = [];
  const base = emptyBase();
  const extensions: string[] = [];
  for (const [index, record] of document.entries()) {
    const outcome = takeRecord(record, base, extensions, nowSeconds);
    if (!outcome.ok) faults.push({ index, reason: outcome.reason, detail: outcome.detail });
    else if (outcome.value) entries.push(outcome.value);
  }
  return understood({ version: version.value, entries, faults });
}

/** Entries by time; those of one instant keep their order (RFC 8428 section 4.6 leaves ties open). */
export function chronological(entries: readonly SenmlEntry[]): readonly SenmlEntry[] {
  return [...entries].sort((a, b) => a.time - b.time);
}

/** One record: an entry, null when it only states base fields, or why it is left out. */
function takeRecord(
  record: unknown,
  base: SenmlBase,
  extensions: string[],
  nowSeconds: number,
): Outcome<SenmlEntry | null> {
  if (!isFields(record)) return refused('bad-entry', `an entry is ${quoted(record)}, not an object`);
  applyBase(base, record);
  const unknown = Object.keys(record).filter(mustUnderstand);
  extensions.push(...unknown.filter(isBaseExtension));
  const strange = extensions[0] ?? unknown[0];
  if (strange !== undefined) {
    return refused(
      'must-understand',
      `the field ${quoted(strange)} must be understood and is not (RFC 8428 4.4)`,
    );
  }
  if (statesBaseOnly(record)) return understood(null);
  return resolveRecord(record, base, nowSeconds);
}

function packVersion(records: readonly unknown[]): Outcome<number> {
  let stated: unknown;
  for (const record of records) {
    if (!isFields(record) || !Object.hasOwn(record, 'bver')) continue;
    if (stated !== undefined && stated !== record.bver) {
      return refused(
        'unsupported-version',
        'bver changes inside the pack (RFC 8428 4.4: one version a pack)',
      );
    }
    stated = record.bver;
  }
  if (stated === undefined) return understood(SENML_BASE_VERSION);
  if (typeof stated === 'number' && understandsVersion(SENML_UNDERSTOOD_VERSION, stated)) {
    return understood(stated);
  }
  return refused('unsupported-version', `bver is ${quoted(stated)}; up to 10, and 26, are understood`);
}

/** RFC 8428 section 4.4: an unknown label that ends in `_` may not be passed over. */
function mustUnderstand(label: string): boolean {
  return label.endsWith('_');
}

/** Base labels begin with b and hold for the rest of the pack; so does not understanding one. */
function isBaseExtension(label: string): boolean {
  return label.startsWith('b');
}

function statesBaseOnly(record: Fields): boolean {
  const labels = Object.keys(record);
  if (labels.some((label) => OWN_LABELS.has(label))) return false;
  return labels.some((label) => label === 'bver' || BASE_LABELS.some((known) => known === label));
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
