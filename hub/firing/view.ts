import type { Segment } from '../contract/schedule.ts';
import { type HeldChannel, staleAt } from '../judging/held.ts';
import type { FiringCase, FiringState, WatchedChannel } from './types.ts';

/** What the watched channels say at one instant. */
export interface Measured {
  readonly coldest: number;
  readonly hottest: number;
  readonly coldestChannel: string;
  readonly hottestChannel: string;
}
export interface SeenView extends Measured {
  readonly kind: 'seen';
}
export type View = { readonly kind: 'blind' } | { readonly kind: 'unwatched' } | SeenView;

const BLIND: View = { kind: 'blind' };
const UNWATCHED: View = { kind: 'unwatched' };

/** A cooling for which the piece leaves the furnace: the chamber says nothing about the piece any more. */
export function isAway(segment: Segment | undefined): boolean {
  return segment?.kind === 'cool' && segment.medium !== 'furnace';
}

/** True when this channel speaks for the work in this segment. */
export function counts(channel: WatchedChannel, segment: Segment | undefined): boolean {
  return isAway(segment) ? channel.role === 'load' : true;
}

/** True when nobody measures the work in this segment, by design: it is away and carries no probe. */
export function isUnwatched(c: FiringCase, segment: Segment | undefined): boolean {
  return isAway(segment) && !c.watched.some((channel) => channel.role === 'load');
}

/**
 * Coldest and hottest of the last good values. With `requireFresh` null as soon as one of them is not younger
 * than its `staleAfterSeconds`; without, null only while one was never seen.
 */
export function measure(
  c: FiringCase,
  channels: readonly HeldChannel[],
  segment: Segment | undefined,
  freshAt: number | null,
): SeenView | null {
  let found: SeenView | null = null;
  // Every step of the judge comes through here several times: a plain loop, and no copies.
  for (let i = 0; i < c.watched.length; i++) {
    const channel = c.watched[i];
    if (channel === undefined || !counts(channel, segment)) continue;
    const held = channels[i];
    if (held === undefined || !held.seen) return null;
    const end = staleAt(held, channel.staleAfterSeconds);
    if (freshAt !== null && end !== null && freshAt >= end) return null;
    found = widen(found, channel.id, held.value);
  }
  return found;
}

function widen(found: SeenView | null, id: string, value: number): SeenView {
  if (found === null) {
    return { kind: 'seen', coldest: value, hottest: value, coldestChannel: id, hottestChannel: id };
  }
  const colder = value < found.coldest;
  const hotter = value > found.hottest;
  return {
    kind: 'seen',
    coldest: colder ? value : found.coldest,
    coldestChannel: colder ? id : found.coldestChannel,
    hottest: hotter ? value : found.hottest,
    hottestChannel: hotter ? id : found.hottestChannel,
  };
}

/** What is measured in the running segment at the instant the state stands at. */
export function viewOf(c: FiringCase, state: FiringState): View {
  const segment = c.schedule.segments[state.index];
  if (isUnwatched(c, segment)) return UNWATCHED;
  return measure(c, state.channels, segment, state.at) ?? BLIND;
}

/** The next instant after `state.at` at which a watched channel stops being fresh; null when there is none. */
export function nextStaleAt(c: FiringCase, state: FiringState): number | null {
  let next: number | null = null;
  for (const [i, channel] of c.watched.entries()) {
    const held = state.channels[i];
    const end = held === undefined ? null : staleAt(held, channel.staleAfterSeconds);
    if (end !== null && end > state.at && (next === null || end < next)) next = end;
  }
  return next;
}
