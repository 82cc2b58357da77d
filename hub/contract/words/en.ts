import { alarmWords } from './en-alarms.ts';
import { caution } from './en-caution.ts';
import { eventWords } from './en-events.ts';
import { moveWords } from './en-moves.ts';
import { reasonWords } from './en-reasons.ts';
import { uncertaintyWords } from './en-uncertainty.ts';
import type { Words } from './types.ts';

/** English. */
export const ENGLISH: Words = {
  alarm: alarmWords,
  nextMove: moveWords,
  reason: reasonWords,
  event: eventWords,
  uncertainty: uncertaintyWords,
  caution,
};
