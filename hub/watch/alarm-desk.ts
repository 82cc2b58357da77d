import { type AlarmBook, acknowledge, type BookStep, openBook, stepBook } from '../alarms/book.ts';
import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import type { AlarmRow, Archive } from '../archive/types.ts';
import type { Finding } from '../contract/alarm.ts';
import { worded } from './alarm-words.ts';
import type { ChangeBus } from './changes.ts';
import { WatchError } from './errors.ts';

interface AlarmDeskParts {
  readonly archive: Archive;
  readonly bus: ChangeBus;
  readonly newId: () => string;
}

/** Keeps the alarm book in the archive and tells of every change. */
export class AlarmDesk {
  readonly #parts: AlarmDeskParts;
  #book: AlarmBook;

  constructor(parts: AlarmDeskParts) {
    this.#parts = parts;
    this.#book = openBook(parts.archive.alarms({ state: 'open', limit: 10_000 }));
  }

  /** Every alarm that is not normal, loudest first, older before newer. */
  open(): readonly AlarmRow[] {
    const rows = this.#book.open.map((entry) => entry.row);
    const rank = (row: AlarmRow): number => ALARM_DEFINITIONS[row.kind].rank;
    return rows.sort((a, b) => rank(a) - rank(b) || a.raisedAt - b.raisedAt || (a.id < b.id ? -1 : 1));
  }

  judge(findings: readonly Finding[], at: number): void {
    this.#take(stepBook(this.#book, findings, { at, newId: this.#parts.newId }));
  }

  acknowledge(id: string, by: string, at: number): AlarmRow {
    this.#take(acknowledge(this.#book, id, by, at));
    const row = this.#parts.archive.alarm(id);
    if (!row) throw new WatchError('not-found', `there is no alarm ${id}`);
    return row;
  }

  #take(step: BookStep): void {
    if (step.changed.length > 0) {
      // Kept first, told afterwards: an alarm that was shown is in the record.
      this.#parts.archive.saveAlarms(step.changed);
      const unit = this.#parts.archive.shop().settings.displayUnit;
      for (const row of step.changed) this.#parts.bus.tell({ type: 'alarm', alarm: worded(row, unit) });
    }
    this.#book = step.book;
  }
}
