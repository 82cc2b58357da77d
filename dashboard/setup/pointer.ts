import type { Entry } from '../parts/number-entry.ts';
import { bindingWords } from '../words/setup.ts';

/** Trying a binding on a payload before it is kept. The hub's own reading stays the one that counts. */

const { tryFaults } = bindingWords;
const DECIMAL = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** What a binding with these parts reads from a payload, before scale and unit. `pointer` null: a bare number. */
export function tryPayload(payload: string, pointer: string | null): Entry<number> {
  if (pointer === null) return asNumber(DECIMAL.test(payload.trim()) ? Number(payload) : undefined);
  let whole: unknown;
  try {
    whole = JSON.parse(payload);
  } catch {
    return { ok: false, message: tryFaults['not-json'] };
  }
  const found = atPointer(whole, pointer);
  return found === undefined ? { ok: false, message: tryFaults['not-there'] } : asNumber(found);
}

/** RFC 6901 section 4: each reference token in turn, ~1 for a slash and ~0 for a tilde. Undefined: nothing there. */
export function atPointer(whole: unknown, pointer: string): unknown {
  let here: unknown = whole;
  for (const token of pointer.split('/').slice(1)) {
    const name = token.replaceAll('~1', '/').replaceAll('~0', '~');
    if (typeof here !== 'object' || here === null) return undefined;
    if (Array.isArray(here) && !/^(0|[1-9]\d*)$/.test(name)) return undefined;
    here = Object.hasOwn(here, name) ? Reflect.get(here, name) : undefined;
  }
  return here;
}

/** Text in quotes is refused, as the hub does: "861.5" may be a serial number. */
function asNumber(value: unknown): Entry<number> {
  return typeof value === 'number' && Number.isFinite(value)
    ? { ok: true, value }
    : { ok: false, message: tryFaults['not-a-number'] };
}
