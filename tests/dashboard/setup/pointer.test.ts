import { describe, expect, it } from 'vitest';
import { atPointer, tryPayload } from '../../../dashboard/setup/pointer.ts';

/** RFC 6901 section 5: the document and the pointers of its examples. */
const RFC_DOCUMENT = {
  foo: ['bar', 'baz'],
  '': 0,
  'a/b': 1,
  'c%d': 2,
  'e^f': 3,
  'g|h': 4,
  'i\\j': 5,
  'k"l': 6,
  ' ': 7,
  'm~n': 8,
};

describe('where a JSON pointer leads', () => {
  it.each([
    ['', RFC_DOCUMENT],
    ['/foo', ['bar', 'baz']],
    ['/foo/0', 'bar'],
    ['/', 0],
    ['/a~1b', 1],
    ['/c%d', 2],
    ['/e^f', 3],
    ['/g|h', 4],
    ['/i\\j', 5],
    ['/k"l', 6],
    ['/ ', 7],
    ['/m~0n', 8],
  ])('%j, as RFC 6901 section 5 has it', (pointer, value) => {
    expect(atPointer(RFC_DOCUMENT, pointer)).toEqual(value);
  });

  it('is nowhere beyond a list, behind a leading zero, inside a number or in a prototype', () => {
    expect(atPointer(RFC_DOCUMENT, '/foo/2')).toBeUndefined();
    expect(atPointer(RFC_DOCUMENT, '/foo/00')).toBeUndefined();
    expect(atPointer(RFC_DOCUMENT, '/a~1b/x')).toBeUndefined();
    expect(atPointer(RFC_DOCUMENT, '/constructor')).toBeUndefined();
  });
});

describe('trying a binding on a payload', () => {
  it('reads what stands at the pointer', () => {
    expect(tryPayload('{"probes": [{"t": 861.5}]}', '/probes/0/t')).toEqual({ ok: true, value: 861.5 });
    expect(tryPayload(' 861.5\n', null)).toEqual({ ok: true, value: 861.5 });
  });

  it('says in plain words why it reads nothing', () => {
    expect(tryPayload('{temp', '/t')).toMatchObject({ message: 'This is not JSON.' });
    expect(tryPayload('{"a": 1}', '/b')).toMatchObject({ message: 'Nothing stands at this pointer.' });
    expect(tryPayload('{"a": "12"}', '/a')).toMatchObject({
      message: 'What stands there is not a number.',
    });
    expect(tryPayload('0x10', null).ok).toBe(false);
    expect(tryPayload('', null).ok).toBe(false);
  });
});
