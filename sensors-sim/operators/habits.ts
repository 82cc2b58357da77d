/** How a person at a furnace works: data, so that a test can have a slow one. */

export interface Habits {
  /** From what the instruments show to the hand that does something about it, seconds. */
  readonly reactionSeconds: number;
  /** What the soak is counted by: the coldest of what is measured, or the chamber alone. */
  readonly goesBy: 'coldest' | 'chamber';
  /** How much of the planned soak is waited for; below 1 the steel comes out early. */
  readonly soakShare: number;
}

export const STEADY_HABITS: Habits = { reactionSeconds: 0, goesBy: 'coldest', soakShare: 1 };

/** A setting that takes effect only after a while. */
export class DelayedHand {
  #pending: { readonly dueSeconds: number; readonly setting: number }[] = [];
  #setting = 0;

  /** What the hand has really set, when it wants `setting` now. */
  follow(setting: number, nowSeconds: number, delaySeconds: number): number {
    const last = this.#pending.at(-1)?.setting ?? this.#setting;
    if (setting !== last) this.#pending.push({ dueSeconds: nowSeconds + delaySeconds, setting });
    while (this.#pending[0] !== undefined && this.#pending[0].dueSeconds <= nowSeconds) {
      this.#setting = this.#pending.shift()?.setting ?? this.#setting;
    }
    return this.#setting;
  }
}
