import { expect, test } from 'vitest';
import { createReleaseQueue } from '../../hub/broker/release-queue.ts';

/** Work that is settled by name. */
function works(names: readonly string[]) {
  const queue = createReleaseQueue();
  const events: string[] = [];
  const settle = new Map<string, { resolve: () => void; reject: (fault: Error) => void }>();
  const done = names.map(
    (name) =>
      new Promise<void>((released) => {
        const work = new Promise<void>((resolve, reject) => settle.set(name, { resolve, reject }));
        queue.add(work, (fault) => {
          events.push(fault instanceof Error ? `${name}: ${fault.message}` : name);
          released();
        });
      }),
  );
  return { events, done: Promise.all(done), settle };
}

test('what is finished in reverse is released in the order of arrival', async () => {
  const { events, done, settle } = works(['a', 'b', 'c']);

  for (const name of ['c', 'b', 'a']) settle.get(name)?.resolve();
  await done;

  expect(events).toEqual(['a', 'b', 'c']);
});

test('a failure takes its turn and does not become the fate of those behind it', async () => {
  const { events, done, settle } = works(['a', 'b', 'c']);

  settle.get('b')?.reject(new Error('disk full'));
  settle.get('c')?.resolve();
  settle.get('a')?.resolve();
  await done;

  expect(events).toEqual(['a', 'b: disk full', 'c']);
});
