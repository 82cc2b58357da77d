import { airNotice } from './en-air.ts';
import { alarmWords } from './en-alarms.ts';
import { benchWords } from './en-bench.ts';
import { caution } from './en-caution.ts';
import { EVENTS } from './en-events.ts';
import { loadWords } from './en-load.ts';
import { MOVES } from './en-moves.ts';
import { NUMBERS } from './en-numbers.ts';
import { rationaleWords } from './en-rationale.ts';
import { CLOCK, REASONS } from './en-reasons.ts';
import { reminderWords } from './en-reminders.ts';
import { uncertaintyWords } from './en-uncertainty.ts';
import { numbersIn } from './numbers.ts';
import { clockTeller } from './say-clock.ts';
import { eventTeller } from './say-event.ts';
import { moveTeller } from './say-move.ts';
import { reasonTeller } from './say-reason.ts';
import { ENGLISH_RECORD, recordTeller } from './say-record.ts';
import type { Words } from './types.ts';

const say = numbersIn(NUMBERS);

/** English. */
export const ENGLISH: Words = {
  alarm: alarmWords,
  rationale: rationaleWords,
  nextMove: moveTeller(MOVES, say),
  reason: reasonTeller(REASONS, say),
  soakClock: clockTeller(CLOCK),
  event: eventTeller(EVENTS, say, alarmWords),
  uncertainty: uncertaintyWords,
  reminder: reminderWords,
  bench: benchWords,
  load: loadWords,
  record: recordTeller(ENGLISH_RECORD, say, NUMBERS.decimalPoint),
  caution,
  airNotice,
};
