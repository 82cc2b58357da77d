import { describe, expect, test } from 'vitest';
import { followPointer, pointerTokens } from '../../hub/intake/json-pointer.ts';
import { RFC6901_DOCUMENT, RFC6901_POINTERS } from '../reference/json-pointer.ts';

const document: unknown = JSON.parse(RFC6901_DOCUMENT);

function follow(pointer: string, into: unknown = document): unknown {
  const tokens = pointerTokens(pointer);
  if (!tokens) throw new Error(`${pointer} is not a pointer`);
  const found = followPointer(into, tokens);
  return found.ok ? found.value : found.reason;
}

describe('RFC 6901 section 5', () => {
  test.each(RFC6901_POINTERS)('%s leads to %j', (pointer, value) => {
    expect(follow(pointer)).toEqual(value);
  });

  test('the empty pointer is the whole document', () => {
    expect(follow('')).toBe(document);
  });
});

describe('a pointer', () => {
  test('decodes ~01 to ~1 and not to a slash (RFC 6901 section 4)', () => {
    expect(follow('/~01', { '~1': 'tilde one', '/': 'slash' })).toBe('tilde one');
  });

  test.each(['foo', '/~', '/~2', '/a~', '#/foo'])('%s is a syntax error', (pointer) => {
    expect(pointerTokens(pointer)).toBeUndefined();
  });

  test.each([
    ['/foo/2', 'past the end'],
    ['/foo/-', 'the element after the last'],
    ['/foo/00', 'a leading zero'],
    ['/foo/length', 'not an index'],
    ['/foo/0/x', 'through a string'],
    ['/nothing', 'no such member'],
    ['/constructor', 'inherited, not sent'],
    ['/__proto__', 'inherited, not sent'],
  ])('%s finds nothing: %s', (pointer) => {
    expect(follow(pointer)).toBe('value-not-found');
  });

  test('goes through null no further', () => {
    expect(follow('/a/b', { a: null })).toBe('value-not-found');
    expect(follow('/a', { a: null })).toBeNull();
  });
});
