import type { AirCell } from './cell.ts';
import type { DayChannel } from './day-types.ts';

/**
 * A gas sensor that does not move. Clean air shows one number for hours, so standing still is no fault of its own;
 * it is one where the air cannot stand still: well above nothing, or while another sensor moves, or with a flame
 * burning and a sensor that used to move under one. All figures: common practice, no source.
 */

const STILL_ABOVE_PPM = 10;
const STILL_MS = 30 * 60_000;
const PEER_PPM = 15;
const PEER_MS = 10 * 60_000;
const USED_MOVES = 20;
const USED_MS = 60 * 60_000;
const USED_TIMES = 5;

/**
 * - `still`: an exact level well above nothing for half an hour
 * - `others-move`: another sensor of the gas moved by 15 ppm meanwhile
 * - `used-to-move`: an hour with a flame, and five times its longest rest so far
 */
export type FlatWhy = 'still' | 'others-move' | 'used-to-move';

interface Range {
  readonly low: number;
  readonly high: number;
}

export interface FlatTrack {
  readonly value: number | null;
  /** Since when it has shown exactly that, epoch ms. */
  readonly since: number | null;
  readonly seenAt: number;
  readonly moves: number;
  readonly longestRestMs: number;
  /** Since when a flame has burnt without a break in this rest; null: not now. */
  readonly flameSince: number | null;
  /** Of the other sensors of the gas, since this one rests. */
  readonly peers: Readonly<Record<string, Range>>;
  readonly why: FlatWhy | null;
}

export const UNTOUCHED: FlatTrack = {
  value: null,
  since: null,
  seenAt: 0,
  moves: 0,
  longestRestMs: 0,
  flameSince: null,
  peers: {},
  why: null,
};

interface Beside {
  readonly cell: AirCell;
  readonly peers: readonly Pick<DayChannel, 'id'>[];
  readonly burning: boolean;
}

/** The next state. Pure. A sensor that is silent is not flat: its rest begins anew when it speaks again. */
export function stepFlat(old: FlatTrack, channel: DayChannel, { cell, peers, burning }: Beside): FlatTrack {
  const seen = cell.values[channel.id];
  if (seen === undefined) return old;
  const silent = cell.from - old.seenAt > channel.staleAfterSeconds * 1000;
  const moved = old.value === null || seen.low !== old.value || seen.high !== old.value;
  if (moved || silent || old.since === null) {
    const rest = moved && !silent && old.since !== null ? cell.from - old.since : 0;
    return {
      ...UNTOUCHED,
      value: seen.high,
      since: cell.to,
      seenAt: cell.to,
      moves: old.moves + (moved && old.value !== null ? 1 : 0),
      longestRestMs: Math.max(old.longestRestMs, rest),
      flameSince: burning ? cell.from : null,
    };
  }
  const next = {
    ...old,
    seenAt: cell.to,
    flameSince: burning ? (old.flameSince ?? cell.from) : null,
    peers: rangesAfter(old.peers, peers, cell),
  };
  return { ...next, why: whyOf(next, cell.to) };
}

function rangesAfter(old: FlatTrack['peers'], peers: Beside['peers'], cell: AirCell): FlatTrack['peers'] {
  const next: Record<string, Range> = { ...old };
  for (const { id } of peers) {
    const mean = cell.values[id]?.mean;
    if (mean === undefined) continue;
    const { low, high } = next[id] ?? { low: mean, high: mean };
    next[id] = { low: Math.min(low, mean), high: Math.max(high, mean) };
  }
  return next;
}

function whyOf(track: FlatTrack, at: number): FlatWhy | null {
  const rested = at - (track.since ?? at);
  const peerMoved = Object.values(track.peers).some(({ low, high }) => high - low >= PEER_PPM);
  if (peerMoved && rested >= PEER_MS) return 'others-move';
  if ((track.value ?? 0) > STILL_ABOVE_PPM && rested >= STILL_MS) return 'still';
  const flame = track.flameSince === null ? 0 : at - track.flameSince;
  const unusual = rested >= Math.max(USED_MS, USED_TIMES * track.longestRestMs);
  return track.moves >= USED_MOVES && flame >= USED_MS && unusual ? 'used-to-move' : null;
}
