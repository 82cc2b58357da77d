import { EVENTS } from './de-events.ts';
import { MOVES } from './de-moves.ts';
import { NUMBERS } from './de-numbers.ts';
import { CLOCK, REASONS } from './de-reasons.ts';
import { RECORD } from './de-record.ts';
import { ENGLISH } from './en.ts';
import { numbersIn } from './numbers.ts';
import { clockTeller } from './say-clock.ts';
import { eventTeller } from './say-event.ts';
import { moveTeller } from './say-move.ts';
import { reasonTeller } from './say-reason.ts';
import { recordTeller } from './say-record.ts';
import type { Words } from './types.ts';

const say = numbersIn(NUMBERS);

/** German. What has no German words yet is told in English rather than not at all. */
export const GERMAN: Words = {
  ...ENGLISH,
  nextMove: moveTeller(MOVES, say),
  reason: reasonTeller(REASONS, say),
  soakClock: clockTeller(CLOCK),
  event: eventTeller(EVENTS, say, ENGLISH.alarm),
  record: recordTeller(RECORD, say, NUMBERS.decimalPoint),
};
