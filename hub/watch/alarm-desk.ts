import { type AlarmBook, type BookStep, openBook, type Press, press, stepBook } from '../alarms/book.ts';
import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import { announcedAt, FLOOD_LOOK_BACK_MS, type FloodState, floodOf, stepFlood } from '../alarms/flood.ts';
import { type HeldBack, sift } from '../alarms/suppression.ts';
import type { AlarmRow, Archive } from '../archive/types.ts';
import { type Finding, MOST_SHELF_MINUTES } from '../contract/alarm.ts';
import { ALARM_REFUSALS } from './alarm-refusals.ts';
import { worded } from './alarm-words.ts';
import type { ChangeBus } from './changes.ts';
import { WatchError } from './errors.ts';

interface AlarmDeskParts {
  readonly archive: Archive;
  readonly bus: ChangeBus;
  readonly newId: () => string;
  /** The present instant, epoch ms: the flood of alarms that may be running is read from the journal. */
  readonly now: number;
}

/** Keeps the alarm book and its journal in the archive and tells of every change. */
export class AlarmDesk {
  readonly #parts: AlarmDeskParts;
  #book: AlarmBook;
  #heldBack: readonly HeldBack[] = [];
  #flood: FloodState;

  constructor(parts: AlarmDeskParts) {
    this.#parts = parts;
    const { archive, now } = parts;
    this.#book = openBook(archive.alarms({ state: 'open', limit: 10_000 }));
    const recent = archive.alarmJournal({
      from: now - FLOOD_LOOK_BACK_MS,
      order: 'oldest-first',
      limit: 10_000,
    });
    this.#flood = floodOf(announcedAt(recent), now);
  }

  /** Every alarm that is not normal, loudest first, older before newer. */
  open(): readonly AlarmRow[] {
    const rows = this.#book.open.map((entry) => entry.row);
    const rank = (row: AlarmRow): number => ALARM_DEFINITIONS[row.kind].rank;
    return rows.sort((a, b) => rank(a) - rank(b) || a.raisedAt - b.raisedAt || (a.id < b.id ? -1 : 1));
  }

  /** What a rule of the definitions holds back now, raised or not. */
  heldBack(): readonly HeldBack[] {
    return this.#heldBack;
  }

  /** Since when there has been a flood of alarms, epoch ms; null while there is none. */
  floodSince(): number | null {
    return this.#flood.since;
  }

  /** Takes in everything that holds at `at`, epoch ms. Shelves end here too. */
  judge(findings: readonly Finding[], at: number): void {
    const { told, heldBack } = sift(findings);
    this.#heldBack = heldBack;
    this.#take(stepBook(this.#book, told, { at, newId: this.#parts.newId, heldBack }), at);
  }

  /** Someone has seen it; seeing it twice changes nothing. */
  acknowledge(id: string, by: string, at: number): AlarmRow {
    return this.#press(id, { event: 'acknowledge', at, by }, ['already-acknowledged', 'not-open']);
  }

  /** @throws WatchError `shelf-out-of-bounds`, or the refusal of the life cycle. `until` in epoch ms. */
  shelve(
    id: string,
    shelf: Omit<Press, 'event'> & { readonly until: number; readonly why: string },
  ): AlarmRow {
    const minutes = (shelf.until - shelf.at) / 60_000;
    if (!(minutes >= 1 && minutes <= MOST_SHELF_MINUTES)) {
      throw new WatchError(
        'shelf-out-of-bounds',
        `a shelf ends by itself after 1 to ${MOST_SHELF_MINUTES} minutes: for longer work take the alarm out of service`,
      );
    }
    return this.#press(id, { ...shelf, event: 'shelve' });
  }

  /** @throws WatchError with the refusal of the life cycle. */
  press(id: string, what: Press): AlarmRow {
    return this.#press(id, what);
  }

  #press(id: string, what: Press, excused: readonly string[] = []): AlarmRow {
    const step = press(this.#book, id, what);
    const kept = this.#parts.archive.alarm(id);
    if (kept === null) throw new WatchError('not-found', `there is no alarm ${id}`);
    if (step.refusal === null) {
      this.#take(step, what.at);
      return step.changed[0] ?? kept;
    }
    if (excused.includes(step.refusal)) return kept;
    if (step.refusal === 'not-open') throw new WatchError('alarm-over', 'this alarm is back to normal');
    throw new WatchError(step.refusal, ALARM_REFUSALS[step.refusal]);
  }

  #take({ book, changed, transitions }: BookStep, at: number): void {
    if (changed.length > 0) {
      // Kept first, told afterwards: an alarm that was shown is in the record and in the journal.
      this.#parts.archive.saveAlarms(changed, transitions);
      const unit = this.#parts.archive.shop().settings.displayUnit;
      for (const row of changed) this.#parts.bus.tell({ type: 'alarm', alarm: worded(row, unit) });
    }
    this.#book = book;
    this.#flood = stepFlood(this.#flood, announcedAt(transitions), at);
  }
}
