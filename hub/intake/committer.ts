import type { Archive, IntakeCommit, IntakeWrite } from '../archive/types.ts';
import type { Clock } from '../time/clock.ts';

export type CommitListener = (commit: IntakeCommit) => void;

/** Gathers writes into groups: one commit, one wait for the disk, for all that arrived in a few milliseconds. */
export interface Committer {
  /**
   * Resolves when the write is on the disk, in the order of submission. Rejects, with all others of its group,
   * with the `ArchiveError` of a commit that failed (nothing of the group is kept then), or with
   * `CommitterError` `stopping` after `drain`.
   */
  submit(write: IntakeWrite): Promise<void>;
  /** Told after each commit and before its acknowledgements. Returns the way to stop listening. */
  onCommit(listener: CommitListener): () => void;
  /** Commits what waits and takes nothing more: for the way down, after the broker has stopped. */
  drain(): Promise<void>;
}

export interface CommitterOptions {
  readonly archive: Pick<Archive, 'commitIntake'>;
  readonly clock: Clock;
  /** How long a group stays open after its first write, ms; 0 is until the next turn of the loop. Default 5. */
  readonly windowMs?: number;
  /** A group is closed at this many writes. Default 500. */
  readonly maxWrites?: number;
  /** A group is closed at this many readings, so that one transaction stays short. Default 5000. */
  readonly maxReadings?: number;
  /** Runs something in the next turn of the loop. Default setImmediate. */
  readonly nextTurn?: (run: () => void) => void;
  /** Told of a listener that threw: the commit stands, whatever its listeners make of it. */
  readonly onFault?: (fault: unknown) => void;
}

export class CommitterError extends Error {
  readonly code = 'stopping';
}

interface Waiting {
  readonly write: IntakeWrite;
  readonly resolve: () => void;
  readonly reject: (fault: unknown) => void;
}

/** The queue is bounded by being committed, at once and in the same turn, when a group is full. */
export function createCommitter(options: CommitterOptions): Committer {
  const { archive, clock, windowMs = 5, maxWrites = 500, maxReadings = 5000 } = options;
  const { nextTurn = (run: () => void) => void setImmediate(run), onFault = () => {} } = options;
  const listeners = new Set<CommitListener>();
  let group: Waiting[] = [];
  let readings = 0;
  let cancelWindow = () => {};
  let draining = false;

  function openWindow(): void {
    const mine = group;
    // A group closed early must not have its window close the next one.
    const close = () => {
      if (group === mine) commitGroup();
    };
    if (windowMs > 0) cancelWindow = clock.after(windowMs, close);
    else nextTurn(close);
  }

  function commitGroup(): void {
    cancelWindow();
    cancelWindow = () => {};
    const closed = group;
    group = [];
    readings = 0;
    if (closed.length === 0) return;
    let commit: IntakeCommit;
    try {
      commit = archive.commitIntake(closed.map(({ write }) => write));
    } catch (fault) {
      for (const { reject } of closed) reject(fault);
      return;
    }
    tell(commit);
    for (const { resolve } of closed) resolve();
  }

  function tell(commit: IntakeCommit): void {
    for (const listener of listeners) {
      try {
        listener(commit);
      } catch (fault) {
        onFault(fault);
      }
    }
  }

  return {
    submit(write) {
      if (draining) return Promise.reject(new CommitterError('the hub is stopping: send again later'));
      return new Promise((resolve, reject) => {
        group.push({ write, resolve, reject });
        readings += write.readings.length;
        if (group.length >= maxWrites || readings >= maxReadings) commitGroup();
        else if (group.length === 1) openWindow();
      });
    },
    onCommit(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    async drain() {
      draining = true;
      commitGroup();
    },
  };
}
