import { airNotice } from './en-air.ts';
import { alarmWords } from './en-alarms.ts';
import { benchWords } from './en-bench.ts';
import { caution } from './en-caution.ts';
import { eventWords } from './en-events.ts';
import { loadWords } from './en-load.ts';
import { moveWords } from './en-moves.ts';
import { rationaleWords } from './en-rationale.ts';
import { reasonWords } from './en-reasons.ts';
import { reminderWords } from './en-reminders.ts';
import { uncertaintyWords } from './en-uncertainty.ts';
import type { Words } from './types.ts';

/** English. */
export const ENGLISH: Words = {
  alarm: alarmWords,
  rationale: rationaleWords,
  nextMove: moveWords,
  reason: reasonWords,
  event: eventWords,
  uncertainty: uncertaintyWords,
  reminder: reminderWords,
  bench: benchWords,
  load: loadWords,
  caution,
  airNotice,
};
