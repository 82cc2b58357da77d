import { type Outcome, refused, understood } from './outcome.ts';

// Fatal: a replacement character in a name or a unit would be a guess.
const utf8 = new TextDecoder('utf-8', { fatal: true });

/** A payload as text. Refusals: `empty-payload`, `bad-encoding`. */
export function payloadText(payload: Uint8Array): Outcome<string> {
  if (payload.length === 0) return refused('empty-payload', 'the payload is empty');
  try {
    return understood(utf8.decode(payload));
  } catch {
    return refused('bad-encoding', 'the payload is not UTF-8 text');
  }
}

/**
 * A payload as a JSON document. Nothing here or after it recurses into the document: V8's parser keeps its own
 * stack, so depth costs memory (which the payload limit bounds) and never the call stack.
 * Refusals: `empty-payload`, `bad-encoding`, `bad-json`.
 */
export function payloadJson(payload: Uint8Array): Outcome<unknown> {
  const text = payloadText(payload);
  if (!text.ok) return text;
  try {
    const document: unknown = JSON.parse(text.value);
    return understood(document);
  } catch (fault) {
    const said = fault instanceof Error ? fault.message : String(fault);
    return refused('bad-json', `not JSON: ${said.slice(0, 160)}`);
  }
}
