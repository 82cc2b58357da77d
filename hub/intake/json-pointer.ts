import { type Outcome, refused, understood } from './outcome.ts';

/** RFC 6901 section 3: `~` is followed by 0 or 1, and a pointer is empty or begins with a slash. */
const POINTER = /^(\/([^~/]|~[01])*)*$/;
/** RFC 6901 section 4: an index has no leading zero. */
const ARRAY_INDEX = /^(0|[1-9][0-9]*)$/;

/** The reference tokens of a JSON pointer (RFC 6901); undefined when it is not one. */
export function pointerTokens(pointer: string): readonly string[] | undefined {
  if (!POINTER.test(pointer)) return undefined;
  // Section 4: ~1 first, then ~0, so that ~01 becomes ~1 and not a slash.
  return pointer
    .split('/')
    .slice(1)
    .map((token) => token.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/** The value that the tokens lead to. Refusal: `value-not-found`. */
export function followPointer(document: unknown, tokens: readonly string[]): Outcome<unknown> {
  let value = document;
  for (const token of tokens) {
    if (typeof value !== 'object' || value === null || !holds(value, token)) {
      return refused('value-not-found', `there is nothing at "${token.slice(0, 60)}"`);
    }
    value = Reflect.get(value, token);
  }
  return understood(value);
}

/** Own members only: what every object inherits was not in the payload. */
function holds(container: object, token: string): boolean {
  if (Array.isArray(container) && !ARRAY_INDEX.test(token)) return false;
  return Object.hasOwn(container, token);
}
