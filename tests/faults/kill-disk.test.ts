import { connectAsync } from 'mqtt';
import { afterEach, expect, test } from 'vitest';
import { ArchiveError } from '../../hub/archive/errors.ts';
import type { IntakeWrite } from '../../hub/archive/types.ts';
import { createEmbeddedBroker } from '../../hub/broker/embedded.ts';
import { createCommitter } from '../../hub/intake/committer.ts';
import { createIntake } from '../../hub/intake/intake.ts';
import { systemClock } from '../../hub/time/clock.ts';
import { createLog } from '../broker/log.ts';
import { memoryArchive } from '../intake/support.ts';

const cleanUp: (() => unknown)[] = [];

afterEach(async () => {
  for (const undo of cleanUp.splice(0).reverse()) await undo();
});

/** A hub whose disk fails while it is told to. */
async function hubOnBadDisk() {
  const archive = memoryArchive();
  const disk = { full: false };
  const faults = createLog();
  const committer = createCommitter({
    archive: {
      commitIntake(writes: readonly IntakeWrite[]) {
        if (disk.full) throw new ArchiveError('disk', 'the disk is full: make room, then carry on');
        return archive.commitIntake(writes);
      },
    },
    clock: systemClock,
  });
  const intake = createIntake({ archive, committer, clock: systemClock });
  const broker = createEmbeddedBroker({
    bind: '127.0.0.1',
    port: 0,
    maxPacketBytes: 4 * 1024 * 1024,
    clock: systemClock,
    onFault: (fault) => faults.add(fault instanceof ArchiveError ? fault.code : 'other'),
  });
  const { address } = await broker.start((message) => intake.accept(message));
  cleanUp.push(() => broker.stop());
  return { archive, disk, faults, address };
}

test('a full disk acknowledges nothing and closes the connection; with room again all is stored once', async () => {
  const { archive, disk, faults, address } = await hubOnBadDisk();
  const events = createLog();
  const node = await connectAsync(address, { reconnectPeriod: 20 });
  node.on('error', () => {});
  node.on('close', () => events.add('closed'));
  node.on('packetreceive', ({ cmd }) => events.add(cmd));
  cleanUp.push(() => node.endAsync(true));

  disk.full = true;
  const sent = [1, 2, 3].map((value) => {
    const pack = [{ n: 't', u: 'Cel', t: 1_700_000_000 + value, v: value }];
    return node.publishAsync('soakwatch/forge-1/readings', JSON.stringify(pack), { qos: 1 });
  });
  // Three times round: sent, refused by the disk, closed, connected again.
  await events.seen('closed', 3);
  expect(events.events).not.toContain('puback');
  disk.full = false;
  await Promise.all(sent);

  const [channel] = archive.channels();
  const kept = archive.readings.range(channel?.id ?? '', 0, Number.MAX_SAFE_INTEGER);
  expect(kept.map(({ value }) => value)).toEqual([1, 2, 3]);
  expect(new Set(faults.events)).toEqual(new Set(['disk']));
});

test('a node that does not ask for acknowledgements is cut off as well: silence would hide the fault', async () => {
  const { disk, address } = await hubOnBadDisk();
  const events = createLog();
  const node = await connectAsync(address, { reconnectPeriod: 0 });
  node.on('error', () => {});
  node.on('close', () => events.add('closed'));
  cleanUp.push(() => node.endAsync(true));

  disk.full = true;
  node.publish('soakwatch/forge-1/readings', '[{"n":"t","u":"Cel","v":1}]', { qos: 0 });
  await events.seen('closed');

  expect(node.connected).toBe(false);
});
