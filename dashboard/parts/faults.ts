import type { z } from 'zod';
import { faultWords } from '../words/faults.ts';

/** Faults of a form by the path of their field ("segments.0.targetCelsius"). A path without a fault is absent. */
export type Faults = Readonly<Record<string, string>>;

/** One fault as zod tells it, as far as words are made from it. */
export type Issue = z.core.$ZodIssue;

/** How a limit in base units is written for the person, by the path of its field. */
export type SayLimit = (path: string, limit: number) => string;

const PLAIN_LIMIT: SayLimit = (_path, limit) => String(limit);

export function pathOf(issue: Pick<Issue, 'path'>): string {
  return issue.path.map(String).join('.');
}

/** The first fault of each field, in plain words. `own` may say an issue better; null leaves it to the rest. */
export function faultsOf(
  issues: readonly Issue[],
  say: SayLimit = PLAIN_LIMIT,
  own: (issue: Issue) => string | null = () => null,
): Faults {
  const faults: Record<string, string> = {};
  for (const issue of issues) {
    const path = pathOf(issue);
    faults[path] ??= own(issue) ?? plainWords(issue, (limit) => say(path, limit));
  }
  return faults;
}

/** An issue of the contract's schemas as a sentence that a person can act on. */
export function plainWords(issue: Issue, say: (limit: number) => string): string {
  switch (issue.code) {
    case 'too_small':
      if (issue.origin === 'string' || issue.origin === 'array') return faultWords.missing;
      return issue.inclusive
        ? faultWords.atLeast(say(Number(issue.minimum)))
        : faultWords.above(say(Number(issue.minimum)));
    case 'too_big':
      if (issue.origin === 'string') return faultWords.tooLong(Number(issue.maximum));
      if (issue.origin === 'array') return faultWords.tooMany(Number(issue.maximum));
      return issue.inclusive
        ? faultWords.atMost(say(Number(issue.maximum)))
        : faultWords.below(say(Number(issue.maximum)));
    case 'invalid_type':
      return issue.expected === 'int' ? faultWords.whole : faultWords.missing;
    case 'invalid_value':
      return faultWords.choose;
    case 'invalid_format':
      return faultWords.form(issue.message);
    case 'custom':
      return issue.message;
    default:
      return faultWords.unfit;
  }
}

/** The fields that were left empty, as faults: a form says "needed" before it says what a name looks like. */
export function missing(texts: Readonly<Record<string, string>>): Faults {
  const empty = Object.entries(texts).filter(([, text]) => text.trim() === '');
  return Object.fromEntries(empty.map(([path]) => [path, faultWords.missing]));
}
