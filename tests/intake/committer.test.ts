import { expect, test } from 'vitest';
import type { IntakeCommit, IntakeWrite } from '../../hub/archive/types.ts';
import { type CommitterOptions, createCommitter } from '../../hub/intake/committer.ts';
import { virtualClock } from '../../hub/time/virtual-clock.ts';

const EMPTY: IntakeCommit = { readings: [], duplicates: 0, nodes: [], channels: [], refusals: [] };

function write(node: string, readings = 0): IntakeWrite {
  const reading = { name: 'x', quantity: 'temperature', at: 0, value: 1, quality: 'good' } as const;
  return { node, receivedAt: 0, readings: Array.from({ length: readings }, () => reading), refusals: [] };
}

/** A committer over an archive that only writes down the groups, and fails while `failing` is set. */
function setUp(options: Partial<CommitterOptions> = {}) {
  const clock = virtualClock(0);
  const groups: string[][] = [];
  const events: string[] = [];
  const disk = { failing: null as Error | null };
  const archive = {
    commitIntake(writes: readonly IntakeWrite[]): IntakeCommit {
      groups.push(writes.map(({ node }) => node));
      if (disk.failing) throw disk.failing;
      events.push('commit');
      return EMPTY;
    },
  };
  const committer = createCommitter({ archive, clock, ...options });
  const submit = (node: string, readings = 0) =>
    committer.submit(write(node, readings)).then(
      () => void events.push(`kept ${node}`),
      (fault: Error) => void events.push(`lost ${node}: ${fault.message}`),
    );
  return { clock, groups, events, disk, committer, submit };
}

test('what arrives within the window is one commit, acknowledged in the order of arrival', async () => {
  const { clock, groups, events, submit } = setUp();

  const all = [submit('a'), submit('b')];
  clock.advance(4);
  all.push(submit('c'));
  expect(groups).toEqual([]);
  clock.advance(1);
  await Promise.all(all);

  expect(groups).toEqual([['a', 'b', 'c']]);
  expect(events).toEqual(['commit', 'kept a', 'kept b', 'kept c']);
});

test('a full group does not wait for its window, and the window of a closed group closes no other', async () => {
  const { clock, groups, submit } = setUp({ maxWrites: 2 });

  const all = [submit('a')];
  clock.advance(3);
  all.push(submit('b'), submit('c'));
  expect(groups).toEqual([['a', 'b']]);
  clock.advance(3);
  expect(groups).toEqual([['a', 'b']]);
  clock.advance(2);
  await Promise.all(all);

  expect(groups).toEqual([['a', 'b'], ['c']]);
});

test('a group is also full when it holds enough readings', async () => {
  const { groups, submit } = setUp({ maxReadings: 10 });

  await Promise.all([submit('a', 4), submit('b', 6)]);

  expect(groups).toEqual([['a', 'b']]);
});

test('a window of nothing is the next turn of the loop', async () => {
  const turns: (() => void)[] = [];
  const { groups, submit } = setUp({ windowMs: 0, nextTurn: (run) => turns.push(run) });

  const all = [submit('a'), submit('b')];
  expect(groups).toEqual([]);
  for (const run of turns) run();
  await Promise.all(all);

  expect(groups).toEqual([['a', 'b']]);
  expect(turns).toHaveLength(1);
});

test('a failed commit acknowledges none of its group, and the next group is tried afresh', async () => {
  const { clock, events, disk, submit } = setUp();

  disk.failing = new Error('disk full');
  const lost = [submit('a'), submit('b')];
  clock.advance(5);
  await Promise.all(lost);
  disk.failing = null;
  const kept = submit('a');
  clock.advance(5);
  await kept;

  expect(events).toEqual(['lost a: disk full', 'lost b: disk full', 'commit', 'kept a']);
});

test('listeners hear of the commit before its acknowledgement, and one that throws stops nobody', async () => {
  const faults: unknown[] = [];
  const { clock, events, committer, submit } = setUp({ onFault: (fault) => faults.push(fault) });
  const broken = new Error('broken listener');
  committer.onCommit(() => {
    throw broken;
  });
  const stop = committer.onCommit(() => void events.push('told'));

  const first = submit('a');
  clock.advance(5);
  await first;
  stop();
  const second = submit('b');
  clock.advance(5);
  await second;

  expect(events).toEqual(['commit', 'told', 'kept a', 'commit', 'kept b']);
  expect(faults).toEqual([broken, broken]);
});

test('listeners hear nothing of a commit that failed', async () => {
  const { clock, events, committer, disk, submit } = setUp();
  committer.onCommit(() => void events.push('told'));

  disk.failing = new Error('disk full');
  const lost = submit('a');
  clock.advance(5);
  await lost;

  expect(events).toEqual(['lost a: disk full']);
});

test('draining commits what waits and takes nothing more', async () => {
  const { groups, events, committer, submit } = setUp();

  const waiting = submit('a');
  await committer.drain();
  await waiting;
  await submit('b');

  expect(groups).toEqual([['a']]);
  expect(events).toEqual(['commit', 'kept a', 'lost b: the hub is stopping: send again later']);
});
