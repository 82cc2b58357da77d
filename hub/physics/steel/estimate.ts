/**
 * What every answer about steel carries: a value, its band, the formula that
 * gave it, and how far that formula can be trusted.
 *
 * A bare number from a regression looks as good as a measured one, so nothing
 * in this folder hands one out.
 */

/**
 * How a number came to us.
 * - `published-primary`: seen in the paper, standard or handbook itself
 * - `published-secondary`: seen in a compilation or transcription that names the source
 * - `from-memory`: recalled, not seen; says so wherever it is shown
 * - `common-practice`: trade habit, no source
 * - `derived-here`: computed or fitted in this project from the sources named
 */
export type Standing =
  | 'published-primary'
  | 'published-secondary'
  | 'from-memory'
  | 'common-practice'
  | 'derived-here';

/** Where a number comes from and how that is known. */
export interface Provenance {
  readonly standing: Standing;
  readonly source: string;
}

export type SteelUnit = 'celsius' | 'HRC' | 'HV' | 'mm' | 'fraction';

/** A remark on an answer: `code` is stable kebab-case, `message` is for people. */
export interface Flag {
  readonly code: string;
  readonly message: string;
}

/** A number with its band. `low <= value <= high` always holds. */
export interface Estimate {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: SteelUnit;
  readonly formula: string;
  readonly standing: Standing;
  readonly source: string;
  readonly flags: readonly Flag[];
}

/** The honest alternative to a number: why there is none. */
export interface NoEstimate {
  readonly value: null;
  readonly low: null;
  readonly high: null;
  readonly unit: SteelUnit;
  readonly formula: null;
  readonly standing: null;
  readonly source: null;
  readonly reason: Flag;
  readonly flags: readonly Flag[];
}

/** Narrow with `answer.value !== null`. */
export type Answer = Estimate | NoEstimate;

/** What {@link estimate} needs; the band is widened to hold the value. */
export interface EstimateParts {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: SteelUnit;
  readonly formula: string;
  readonly from: Provenance;
  readonly flags?: readonly Flag[];
}

/** Builds an {@link Estimate} whose band always holds its value. */
export function estimate(parts: EstimateParts): Estimate {
  return {
    value: parts.value,
    low: Math.min(parts.low, parts.value),
    high: Math.max(parts.high, parts.value),
    unit: parts.unit,
    formula: parts.formula,
    standing: parts.from.standing,
    source: parts.from.source,
    flags: parts.flags ?? [],
  };
}

/** Builds the answer "there is none, because …". */
export function noEstimate(unit: SteelUnit, code: string, message: string): NoEstimate {
  const reason = { code, message };
  return {
    value: null,
    low: null,
    high: null,
    unit,
    formula: null,
    standing: null,
    source: null,
    reason,
    flags: [reason],
  };
}

/** One flag, written where it is raised. */
export function flag(code: string, message: string): Flag {
  return { code, message };
}

/** The words that stand beside a number on the screen, e.g. `from memory: SAE J404`. */
export function describeProvenance(from: Provenance): string {
  switch (from.standing) {
    case 'published-primary':
      return `published: ${from.source}`;
    case 'published-secondary':
      return `published, seen second-hand: ${from.source}`;
    case 'from-memory':
      return `from memory: ${from.source}`;
    case 'common-practice':
      return from.source === '' ? 'common practice, no source' : `common practice, no source: ${from.source}`;
    case 'derived-here':
      return `derived here: ${from.source}`;
    default:
      return from.standing satisfies never;
  }
}
