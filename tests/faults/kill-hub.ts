/**
 * A hub of broker, intake and archive and nothing else, run as a process of its own so that it can be killed.
 *
 *   node --import tsx tests/faults/kill-hub.ts ARCHIVE PORT FAULT
 *
 * Writes {"port": N} on standard output when it listens, and the line "accepting" for each message.
 */
import { randomUUID } from 'node:crypto';
import { writeSync } from 'node:fs';
import { openArchive } from '../../hub/archive/open.ts';
import type { IntakeCommit, IntakeWrite } from '../../hub/archive/types.ts';
import { createEmbeddedBroker } from '../../hub/broker/embedded.ts';
import { createCommitter } from '../../hub/intake/committer.ts';
import { createIntake } from '../../hub/intake/intake.ts';
import { systemClock } from '../../hub/time/clock.ts';

const AN_HOUR_MS = 3_600_000;
const [, , path = '', port = '0', fault = 'none'] = process.argv;

// Written through at once: what is said before the kill must have been said.
const say = (line: string) => writeSync(1, `${line}\n`);

/** No goodbye, no flush, no handler: the end that a power cut or the kernel gives. */
function die(): never {
  process.kill(process.pid, 'SIGKILL');
  throw new Error('killed');
}

const archive = openArchive({ path, ids: randomUUID, simulated: false, now: Date.now() });
const faulty = {
  commitIntake(writes: readonly IntakeWrite[]): IntakeCommit {
    if (fault === 'dies-before-commit') die();
    const commit = archive.commitIntake(writes);
    if (fault === 'dies-after-commit') die();
    return commit;
  },
};
const committer = createCommitter({
  archive: faulty,
  clock: systemClock,
  windowMs: fault === 'never-commits' ? AN_HOUR_MS : 5,
});
const intake = createIntake({ archive, committer, clock: systemClock });
const broker = createEmbeddedBroker({
  bind: '127.0.0.1',
  port: Number(port),
  maxPacketBytes: 4 * 1024 * 1024,
  clock: systemClock,
});

const { address } = await broker.start((message) => {
  say('accepting');
  return intake.accept(message);
});
say(JSON.stringify({ port: Number(new URL(address).port) }));
