import type { IntakeCommit } from '../../hub/archive/types.ts';
import { createEmbeddedBroker } from '../../hub/broker/embedded.ts';
import { createCommitter } from '../../hub/intake/committer.ts';
import { createIntake } from '../../hub/intake/intake.ts';
import { systemClock } from '../../hub/time/clock.ts';
import { memoryArchive } from './support.ts';

/** Real broker, intake and archive (in memory), on a free port of the loopback. */
export async function wiredHub() {
  const archive = memoryArchive();
  const faults: unknown[] = [];
  const onFault = (fault: unknown) => faults.push(fault);
  const committer = createCommitter({ archive, clock: systemClock, onFault });
  const intake = createIntake({ archive, committer, clock: systemClock, onFault });
  const broker = createEmbeddedBroker({
    bind: '127.0.0.1',
    port: 0,
    maxPacketBytes: 4 * 1024 * 1024,
    clock: systemClock,
    onFault,
    onOversize: (seen) => void intake.reportOversize(seen).catch(onFault),
  });
  const { address } = await broker.start((message) => intake.accept(message));
  return {
    archive,
    intake,
    address,
    port: Number(new URL(address).port),
    faults,
    /** Resolves with the first commit that `wanted` is true of. */
    committed: (wanted: (commit: IntakeCommit) => boolean) =>
      new Promise<IntakeCommit>((resolve) => {
        const stop = committer.onCommit((commit) => {
          if (!wanted(commit)) return;
          stop();
          resolve(commit);
        });
      }),
    values(node: string, name: string): readonly number[] {
      const channel = archive.channels().find((known) => known.node === node && known.name === name);
      return channel
        ? archive.readings.range(channel.id, 0, Number.MAX_SAFE_INTEGER).map((r) => r.value)
        : [];
    },
    async stop() {
      await broker.stop();
      await committer.drain();
      archive.close();
    },
  };
}
export type WiredHub = Awaited<ReturnType<typeof wiredHub>>;
