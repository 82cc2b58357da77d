import { describe, expect, it } from 'vitest';
import {
  type AlarmBook,
  type BookStep,
  EMPTY_BOOK,
  openBook,
  type Press,
  press,
  stepBook,
} from '../../hub/alarms/book.ts';
import { DEFINED_RULES, type RulesOf } from '../../hub/alarms/entry.ts';
import { sift } from '../../hub/alarms/suppression.ts';
import type { Finding } from '../../hub/contract/alarm.ts';
import type { AlarmTransition } from '../../hub/contract/alarm-journal.ts';

const MINUTE = 60_000;
const stall: Finding = {
  kind: 'ramp-stalled',
  subject: 'firing-1',
  since: 0,
  params: { firingId: 'firing-1', channel: 'chamber', measuredCelsius: 640 },
};
const fault: Finding = { kind: 'probe-fault', subject: 'chamber', since: 0, params: { channel: 'chamber' } };

/** A book under a clock that is moved by hand, with everything that went into its journal. */
class Bench {
  book: AlarmBook = EMPTY_BOOK;
  at = 0;
  readonly journal: AlarmTransition[] = [];
  readonly #rules: RulesOf;
  #made = 0;

  constructor(rules = DEFINED_RULES) {
    this.#rules = rules;
  }

  find(findings: readonly Finding[], after = 1000): this {
    this.at += after;
    const { told, heldBack } = sift(findings);
    const newId = () => `alarm-${++this.#made}`;
    this.#take(stepBook(this.book, told, { at: this.at, newId, heldBack, rulesOf: this.#rules }));
    return this;
  }

  press(event: Press['event'], more: { until?: number; why?: string } = {}, id = 'alarm-1'): string | null {
    const step = press(this.book, id, { event, at: this.at, by: 'Ina', ...more }, this.#rules);
    this.#take(step);
    return step.refusal;
  }

  restart(): this {
    this.book = openBook(this.book.open.map(({ row }) => row));
    return this;
  }

  states(): readonly string[] {
    return this.book.open.map(({ row }) => `${row.kind} ${row.state}`);
  }

  events(): readonly string[] {
    return this.journal.map(({ event, to }) => `${event} ${to}`);
  }

  #take({ book, transitions }: BookStep): void {
    this.book = book;
    this.journal.push(...transitions);
  }
}

describe('a shelf', () => {
  it('keeps an alarm quiet and listed until its end, then announces what still holds', () => {
    const bench = new Bench().find([stall]);
    bench.press('shelve', { until: bench.at + 10 * MINUTE, why: 'door open for loading' });
    bench.find([stall], 10 * MINUTE - 1);
    expect(bench.states()).toEqual(['ramp-stalled shelved']);
    bench.find([stall], 1);
    expect(bench.states()).toEqual(['ramp-stalled unacknowledged']);
    expect(bench.events()).toEqual([
      'condition-on unacknowledged',
      'shelve shelved',
      'shelf-ends unacknowledged',
    ]);
    expect(bench.journal[1]).toMatchObject({ by: 'Ina', why: 'door open for loading', until: 601_000 });
  });

  it('leaves nothing behind when it ends and nothing holds any more', () => {
    const bench = new Bench().find([stall]);
    bench.press('shelve', { until: bench.at + MINUTE });
    bench.find([], 30_000).find([], 30_000);
    expect(bench.states()).toEqual([]);
    expect(bench.events().slice(2)).toEqual(['condition-off shelved', 'shelf-ends normal']);
  });

  it('follows the condition meanwhile without a word', () => {
    const bench = new Bench().find([stall]);
    bench.press('shelve', { until: bench.at + 10 * MINUTE });
    bench.find([]).find([stall]);
    expect(bench.book.open).toMatchObject([{ row: { state: 'shelved', active: true, activeSince: 3000 } }]);
    expect(bench.press('acknowledge')).toBe('set-aside');
  });

  it('outlives a restart, and ends on time after one that took longer than the shelf', () => {
    const bench = new Bench().find([stall]);
    bench.press('shelve', { until: bench.at + 10 * MINUTE });
    bench.restart().find([stall], MINUTE);
    expect(bench.states()).toEqual(['ramp-stalled shelved']);
    bench.restart().find([stall], 60 * MINUTE);
    expect(bench.states()).toEqual(['ramp-stalled unacknowledged']);
  });

  it('asks for a fresh acknowledgement when it is taken away by hand', () => {
    const bench = new Bench().find([stall]);
    bench.press('acknowledge');
    bench.press('shelve', { until: bench.at + 10 * MINUTE });
    expect(bench.press('unshelve')).toBeNull();
    expect(bench.book.open[0]?.row).toMatchObject({ state: 'unacknowledged', acknowledgedBy: null });
  });
});

describe('suppressed by design', () => {
  it('is what stands open when a rule begins to hold it back, and the rule is written down', () => {
    const bench = new Bench().find([stall]).find([stall, fault]);
    expect(bench.states()).toEqual(['ramp-stalled suppressed', 'probe-fault unacknowledged']);
    expect(bench.book.open[0]?.row.suppression).toEqual({ at: 2000, rule: 'probe-at-fault' });
    bench.find([stall]);
    expect(bench.states()[0]).toBe('ramp-stalled unacknowledged');
  });

  it('is not raised at all when the rule was there first', () => {
    const bench = new Bench().find([fault]).find([fault, stall]);
    expect(bench.states()).toEqual(['probe-fault unacknowledged']);
  });

  it('is never announced for an instant when both come and go together', () => {
    const bench = new Bench().find([stall]);
    bench.press('acknowledge');
    bench.find([]).find([stall]);
    bench.find([stall, fault]).find([]);
    const announced = bench.journal.filter((t) => t.kind === 'ramp-stalled' && t.to === 'unacknowledged');
    expect(announced.map(({ at }) => at)).toEqual([1000, 3000]);
    expect(bench.states()).toEqual(['probe-fault returned-unacknowledged']);
  });
});

describe('out of service', () => {
  it('lasts until it is returned, through restarts, with who and why', () => {
    const bench = new Bench().find([stall]);
    expect(bench.press('take-out-of-service', { why: 'burner taken apart' })).toBeNull();
    bench.restart().find([stall], 100 * MINUTE);
    expect(bench.book.open[0]?.row).toMatchObject({
      state: 'out-of-service',
      outOfService: { at: 1000, by: 'Ina', why: 'burner taken apart' },
    });
    expect(bench.press('return-to-service', { why: 'tested' })).toBeNull();
    expect(bench.states()).toEqual(['ramp-stalled unacknowledged']);
  });

  it('stands over a shelf: the shelf ends under it, and the alarm stays out', () => {
    const bench = new Bench().find([stall]);
    bench.press('shelve', { until: bench.at + MINUTE });
    bench.press('take-out-of-service', { why: 'work' });
    bench.find([stall], 2 * MINUTE);
    expect(bench.book.open[0]?.row).toMatchObject({ state: 'out-of-service', shelf: null });
  });
});

describe('danger to life', () => {
  it('is neither shelved nor taken out of service', () => {
    const bench = new Bench();
    for (const kind of ['not-watching-air', 'unsafe-air-second', 'unsafe-air-first'] as const) {
      bench.find([{ ...stall, kind, subject: 'shop' }]);
      const id = bench.book.open.find(({ row }) => row.kind === kind)?.row.id ?? '';
      expect(bench.press('shelve', { until: bench.at + MINUTE }, id)).toBe('danger-to-life');
      expect(bench.press('take-out-of-service', { why: 'quiet please' }, id)).toBe('danger-to-life');
    }
  });
});

describe('an alarm whose definition latches', () => {
  const latching: RulesOf = (kind) => ({ ...DEFINED_RULES(kind), latching: true });

  it('stays, seen or not, until a person resets it after it is over', () => {
    const bench = new Bench(latching).find([stall]);
    bench.press('acknowledge');
    expect(bench.press('reset')).toBe('condition-still-holds');
    bench.find([]);
    expect(bench.states()).toEqual(['ramp-stalled latched-acknowledged']);
    bench.restart();
    expect(bench.press('reset')).toBeNull();
    expect(bench.states()).toEqual([]);
  });

  it('is not reset before someone has seen it', () => {
    const bench = new Bench(latching).find([stall]).find([]);
    expect(bench.states()).toEqual(['ramp-stalled latched-unacknowledged']);
    expect(bench.press('reset')).toBe('acknowledge-first');
  });

  it('is, as defined, carbon monoxide above the second limit: one does not walk back in because a number fell', () => {
    const air: Finding = { kind: 'unsafe-air-second', subject: 'shop', since: 0, params: { ppm: 85 } };
    const bench = new Bench().find([air, stall]).find([]);
    const left = ['unsafe-air-second latched-unacknowledged', 'ramp-stalled returned-unacknowledged'];
    expect(new Set(bench.states())).toEqual(new Set(left));
    // The level rises again before anybody came: announced afresh, as one and the same alarm.
    bench.find([air]);
    expect(bench.states()).toContain('unsafe-air-second unacknowledged');
    bench.find([]);
    expect([bench.press('acknowledge'), bench.press('reset')]).toEqual([null, null]);
    expect(bench.states()).not.toContain('unsafe-air-second latched-acknowledged');
  });
});
