/**
 * Golden traces and the core of the state table for alarms that need an acknowledgement and do not latch.
 * Source: ISA-18.2-2016 / IEC 62682 state diagram (A normal, B unacknowledged, C acknowledged, D returned to
 * normal unacknowledged), via secondary texts. The whole table, with shelving, suppression, service and latching, is in
 * life-cycle.test.ts; here the book of alarms itself is led through the part that it plays on its own.
 */
export type Letter = 'A' | 'B' | 'C' | 'D';
export type Event = 'cond_on' | 'cond_off' | 'ack';

export interface Trace {
  readonly id: string;
  readonly why: string;
  /** Event, state after it, condition active, changed. */
  readonly steps: readonly (readonly [Event, Letter, 0 | 1, 0 | 1])[];
}

export const TRACES: readonly Trace[] = [
  {
    id: 't01-normal-cycle',
    why: 'ack before clear',
    steps: [
      ['cond_on', 'B', 1, 1],
      ['ack', 'C', 1, 1],
      ['cond_off', 'A', 0, 1],
    ],
  },
  {
    id: 't02-clear-first',
    why: 'fleeting alarm still needs an ack',
    steps: [
      ['cond_on', 'B', 1, 1],
      ['cond_off', 'D', 0, 1],
      ['ack', 'A', 0, 1],
    ],
  },
  {
    id: 't03-rtn-then-again',
    why: 're-annunciation from D (the silence step of the trace is left out)',
    steps: [
      ['cond_on', 'B', 1, 1],
      ['cond_off', 'D', 0, 1],
      ['cond_on', 'B', 1, 1],
      ['ack', 'C', 1, 1],
      ['cond_off', 'A', 0, 1],
    ],
  },
  {
    id: 't05-double-ack',
    why: 'ack is idempotent',
    steps: [
      ['cond_on', 'B', 1, 1],
      ['ack', 'C', 1, 1],
      ['ack', 'C', 1, 0],
      ['cond_off', 'A', 0, 1],
      ['ack', 'A', 0, 0],
    ],
  },
];

/** Every pair of these four states and three events: state, event, next state, changed. */
export const TABLE: readonly (readonly [Letter, Event, Letter, 0 | 1])[] = [
  ['A', 'cond_on', 'B', 1],
  ['A', 'cond_off', 'A', 0],
  ['A', 'ack', 'A', 0],
  ['B', 'cond_on', 'B', 0],
  ['B', 'cond_off', 'D', 1],
  ['B', 'ack', 'C', 1],
  ['C', 'cond_on', 'C', 0],
  ['C', 'cond_off', 'A', 1],
  ['C', 'ack', 'C', 0],
  ['D', 'cond_on', 'B', 1],
  ['D', 'cond_off', 'D', 0],
  ['D', 'ack', 'A', 1],
];

/** How to get to a state from normal. */
export const PATHS: Readonly<Record<Letter, readonly Event[]>> = {
  A: [],
  B: ['cond_on'],
  C: ['cond_on', 'ack'],
  D: ['cond_on', 'cond_off'],
};
