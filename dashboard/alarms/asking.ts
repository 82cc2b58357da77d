import { signal } from '@preact/signals';
import type { Alarm } from '../../hub/contract/alarm.ts';

/** Which form is open, and for which alarm as it was then. */
export interface Asking {
  readonly form: 'set-aside' | 'give-back';
  readonly alarm: Alarm;
}

/**
 * Kept outside the cards: an alarm moves from list to list while somebody types, and what was typed must not go
 * with it.
 */
export const asking = signal<Asking | null>(null);
