/**
 * A pure judge, carried along time, that can go back.
 *
 * The judge's inputs always come out of the archive in one order, so the state at any instant is a function of
 * what is stored up to that instant. A reading that comes late (a node that buffered, messages out of order)
 * takes the judge back to a checkpoint before it and forward again: a late backfill is a replay.
 * Checkpoints are free because states are immutable and share their parts.
 */
export interface Model<State, Input> {
  start(): State;
  step(state: State, input: Input): State;
  /** Every input with `after < at <= upTo`, in order. */
  inputs(after: number, upTo: number): Iterable<Input>;
}

interface Checkpoint<State> {
  readonly at: number;
  readonly state: State;
}

/** Every checkpoint of the last two minutes is kept; older ones are thinned to one a minute. */
const DENSE_MS = 120_000;
const SPARSE_MS = 60_000;

export class Timeline<State, Input> {
  readonly #model: Model<State, Input>;
  #checkpoints: Checkpoint<State>[];
  #thinnedTo: number;

  /** The judge stands at `at` before its first input: everything later is its to judge. */
  constructor(model: Model<State, Input>, at: number) {
    this.#model = model;
    this.#checkpoints = [{ at, state: model.start() }];
    this.#thinnedTo = at;
  }

  get at(): number {
    return this.#last().at;
  }

  get state(): State {
    return this.#last().state;
  }

  /** Something at `at` became known after the judge had passed it: go back before it. True when that moved. */
  rewindBefore(at: number): boolean {
    if (at > this.#last().at) return false;
    const keep = this.#checkpoints.findLastIndex((point) => point.at < at);
    this.#checkpoints.length = Math.max(1, keep + 1);
    this.#thinnedTo = Math.min(this.#thinnedTo, this.#last().at);
    return true;
  }

  /** Carries the judge on to `to`, leaving a checkpoint there, and at most one a minute on the way. */
  advance(to: number): State {
    while (this.#last().at < to) {
      const from = this.#last();
      const until = Math.min(to, from.at + SPARSE_MS);
      let state = from.state;
      for (const input of this.#model.inputs(from.at, until)) state = this.#model.step(state, input);
      this.#checkpoints.push({ at: until, state });
    }
    this.#thin(to);
    return this.state;
  }

  /**
   * Lets go of what nobody will go back to any more: a later word about an instant before `at` is then taken up
   * from the oldest checkpoint kept. Without this a judge that never ends would remember every minute of the year.
   */
  forgetBefore(at: number): void {
    // From the front: what goes is one or two old ones, what stays is hundreds.
    const after = this.#checkpoints.findIndex((point) => point.at > at);
    const keepFrom = (after === -1 ? this.#checkpoints.length : after) - 1;
    if (keepFrom > 0) this.#checkpoints = this.#checkpoints.slice(keepFrom);
  }

  #last(): Checkpoint<State> {
    const last = this.#checkpoints[this.#checkpoints.length - 1];
    if (!last) throw new Error('a timeline always has its first checkpoint');
    return last;
  }

  #thin(now: number): void {
    const dense = now - DENSE_MS;
    if (dense - this.#thinnedTo < SPARSE_MS) return;
    let kept = Number.NEGATIVE_INFINITY;
    this.#checkpoints = this.#checkpoints.filter((point, index) => {
      const keep = index === 0 || point.at > dense || point.at - kept >= SPARSE_MS;
      if (keep) kept = point.at;
      return keep;
    });
    this.#thinnedTo = dense;
  }
}
