import { staleAt } from '../../judging/held.ts';
import type { FiringCase, FiringState } from '../types.ts';

/** What the probes say of the place the load lies in, and of the load itself. */

export interface Chamber {
  readonly coldest: number;
  readonly hottest: number;
}

export interface OnLoad {
  readonly channel: string;
  readonly celsius: number;
}

/** Fresh values of the watched channels of one sort; null as soon as one of them is missing. */
function fresh(c: FiringCase, state: FiringState, load: boolean): OnLoad[] | null {
  const found: OnLoad[] = [];
  for (const [i, channel] of c.watched.entries()) {
    if ((channel.role === 'load') !== load) continue;
    const held = state.channels[i];
    const end = held === undefined ? null : staleAt(held, channel.staleAfterSeconds);
    if (held === undefined || !held.seen || end === null || state.at >= end) return null;
    found.push({ channel: channel.id, celsius: held.value });
  }
  return found;
}

/** The chamber at this instant; null while a probe of it is blind, or when it has none. */
export function chamberOf(c: FiringCase, state: FiringState): Chamber | null {
  const values = fresh(c, state, false)?.map(({ celsius }) => celsius) ?? [];
  return values.length === 0 ? null : { coldest: Math.min(...values), hottest: Math.max(...values) };
}

/** The coldest fresh thermocouple on the load; null without one, or while one is blind. */
export function onLoad(c: FiringCase, state: FiringState): OnLoad | null {
  const values = fresh(c, state, true) ?? [];
  return values.reduce<OnLoad | null>((a, b) => (a === null || b.celsius < a.celsius ? b : a), null);
}

/** True when the chamber itself is measured: only then can a core be computed. */
export function hasChamber(c: FiringCase): boolean {
  return c.watched.some((channel) => channel.role !== 'load');
}
