import type { Alarm } from '../contract/alarm.ts';
import type { LiveFiring } from '../contract/live.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { Channel, Furnace, Shop, ShopNode } from '../contract/shop.ts';

/** Everything that the live feed tells, as it happens. */
export type Change =
  | { readonly type: 'reading'; readonly reading: ChannelReading }
  | { readonly type: 'firing'; readonly id: string; readonly live: LiveFiring | null }
  | { readonly type: 'alarm'; readonly alarm: Alarm }
  | { readonly type: 'node'; readonly node: ShopNode }
  | { readonly type: 'channel'; readonly channel: Channel }
  | { readonly type: 'furnace'; readonly furnace: Furnace }
  | { readonly type: 'shop'; readonly shop: Shop };

export type ChangeListener = (change: Change) => void;

/** One list of listeners. A listener that throws is reported and does not stop the others. */
export class ChangeBus {
  readonly #listeners = new Set<ChangeListener>();
  readonly #onFault: (fault: unknown) => void;

  constructor(onFault: (fault: unknown) => void) {
    this.#onFault = onFault;
  }

  /** Returns the way to stop listening. */
  listen(listener: ChangeListener): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  tell(change: Change): void {
    for (const listener of this.#listeners) {
      try {
        listener(change);
      } catch (fault) {
        this.#onFault(fault);
      }
    }
  }
}
