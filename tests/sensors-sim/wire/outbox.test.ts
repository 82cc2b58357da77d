import { describe, expect, test } from 'vitest';
import { Outbox } from '../../../sensors-sim/wire/outbox.ts';

function filled(limit: number, count: number): Outbox<number> {
  const outbox = new Outbox<number>(limit);
  for (let message = 0; message < count; message += 1) outbox.push(message);
  return outbox;
}

function takeAll(outbox: Outbox<number>): number[] {
  const taken: number[] = [];
  for (let next = outbox.take(); next !== null; next = outbox.take()) taken.push(next.message);
  return taken;
}

describe('a bounded buffer', () => {
  test('gives up the oldest beyond its bound and counts what it gave up', () => {
    const outbox = filled(3, 5);
    expect(outbox.size).toBe(3);
    expect(outbox.dropped).toBe(2);
    expect(takeAll(outbox)).toEqual([2, 3, 4]);
  });

  test('keeps a message until it is acknowledged', () => {
    const outbox = filled(3, 2);
    const first = outbox.take();
    expect(outbox.size).toBe(2);
    outbox.acknowledge(first?.sequence ?? -1);
    expect(outbox.size).toBe(1);
    expect(outbox.inFlight).toBe(0);
  });

  test('puts what was in flight back at the head, in its old order', () => {
    const outbox = filled(9, 5);
    const first = outbox.take();
    outbox.take();
    outbox.take();
    outbox.acknowledge(first?.sequence ?? -1);
    outbox.recall();
    expect(takeAll(outbox)).toEqual([1, 2, 3, 4]);
  });

  test('does not let what is in flight take the room of what waits', () => {
    const outbox = filled(2, 2);
    outbox.take();
    outbox.take();
    outbox.push(2);
    outbox.push(3);
    expect(outbox.dropped).toBe(0);
    outbox.push(4);
    expect(outbox.dropped).toBe(1);
    outbox.recall();
    expect(takeAll(outbox)).toEqual([0, 1, 3, 4]);
  });

  test('gives up the oldest first when a recall has filled it', () => {
    const outbox = filled(3, 3);
    outbox.take();
    outbox.push(3);
    outbox.recall();
    outbox.push(4);
    expect(outbox.dropped).toBe(2);
    expect(takeAll(outbox)).toEqual([2, 3, 4]);
  });

  test('of no size is refused', () => {
    expect(() => new Outbox(0)).toThrowError(expect.objectContaining({ code: 'bad-option' }));
    expect(() => new Outbox(2.5)).toThrowError(expect.objectContaining({ code: 'bad-option' }));
  });
});
