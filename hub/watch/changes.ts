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
  readonly #listeners = new Map<ChangeListener, readonly Change['type'][] | null>();
  readonly #onFault: (fault: unknown) => void;

  constructor(onFault: (fault: unknown) => void) {
    this.#onFault = onFault;
  }

  /** Hears every change, or those of some types alone. Returns the way to stop listening. */
  listen(listener: ChangeListener, types: readonly Change['type'][] | null = null): () => void {
    this.#listeners.set(listener, types);
    return () => this.#listeners.delete(listener);
  }

  /** False: nobody would hear it, so that what is costly to tell need not be made. */
  isHeard(type: Change['type']): boolean {
    for (const types of this.#listeners.values()) {
      if (types === null || types.includes(type)) return true;
    }
    return false;
  }

  tell(change: Change): void {
    for (const [listener, types] of this.#listeners) {
      if (types !== null && !types.includes(change.type)) continue;
      try {
        listener(change);
      } catch (fault) {
        this.#onFault(fault);
      }
    }
  }
}
