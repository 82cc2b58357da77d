import { describe, expect, it } from 'vitest';
import { type AlarmBook, acknowledge, EMPTY_BOOK, openBook, stepBook } from '../../hub/alarms/book.ts';
import type { AlarmRow } from '../../hub/archive/types.ts';
import type { AlarmState, Finding, Params } from '../../hub/contract/alarm.ts';
import { type Event, type Letter, PATHS, TABLE, TRACES } from './isa-traces.ts';

const LETTERS: Readonly<Partial<Record<AlarmState, Letter>>> = {
  normal: 'A',
  unacknowledged: 'B',
  acknowledged: 'C',
  'returned-unacknowledged': 'D',
};

const finding = (change: Partial<Finding> = {}): Finding => ({
  kind: 'overshoot',
  subject: 'firing-1',
  since: 900,
  params: { firingId: 'firing-1', furnaceId: 'furnace-1', measuredCelsius: 820 },
  ...change,
});

/** A book with a counter for ids and a clock that is moved by hand. */
class Bench {
  book: AlarmBook = EMPTY_BOOK;
  at = 1000;
  #made = 0;

  find(findings: readonly Finding[], after = 1000): readonly AlarmRow[] {
    this.at += after;
    const context = { at: this.at, newId: () => `alarm-${++this.#made}` };
    const step = stepBook(this.book, findings, context);
    this.book = step.book;
    return step.changed;
  }

  ack(id = 'alarm-1'): readonly AlarmRow[] {
    this.at += 1000;
    const step = acknowledge(this.book, id, 'Ina', this.at);
    this.book = step.book;
    return step.changed;
  }

  play(event: Event): readonly AlarmRow[] {
    if (event === 'ack') return this.ack();
    return this.find(event === 'cond_on' ? [finding()] : []);
  }

  rows(): readonly AlarmRow[] {
    return this.book.open.map((entry) => entry.row);
  }

  letter(): Letter | undefined {
    const [row] = this.rows();
    return row === undefined ? 'A' : LETTERS[row.state];
  }
}

describe('the life cycle of an alarm', () => {
  for (const { id, why, steps } of TRACES) {
    it(`follows the golden trace ${id}: ${why}`, () => {
      const bench = new Bench();
      for (const [event, letter, active, changed] of steps) {
        const told = bench.play(event);
        expect([event, bench.letter(), told.length]).toEqual([event, letter, changed]);
        expect(bench.rows()[0]?.active ?? false).toBe(active === 1);
      }
    });
  }

  for (const [from, event, to, changed] of TABLE) {
    it(`goes from ${from} by ${event} to ${to}${changed === 1 ? '' : ', and tells nobody'}`, () => {
      const bench = new Bench();
      for (const step of PATHS[from]) bench.play(step);
      const told = bench.play(event);
      expect(bench.letter()).toBe(to);
      expect(told.length).toBe(changed);
    });
  }
});

describe('the book of alarms', () => {
  it('makes one alarm of one finding, however often it is found', () => {
    const bench = new Bench();
    expect(bench.find([finding()])).toHaveLength(1);
    for (let i = 0; i < 50; i++) expect(bench.find([finding()])).toEqual([]);
    expect(bench.rows()).toHaveLength(1);
  });

  it('keeps kinds and subjects apart', () => {
    const bench = new Bench();
    bench.find([finding(), finding({ subject: 'firing-2' }), finding({ kind: 'soak-stalled' })]);
    bench.find([finding({ subject: 'firing-2' })]);
    expect(bench.rows().map((row) => row.state)).toEqual([
      'returned-unacknowledged',
      'unacknowledged',
      'returned-unacknowledged',
    ]);
  });

  it('writes down when it was raised, seen and over, and by whom', () => {
    const bench = new Bench();
    bench.find([finding()]);
    bench.ack();
    const [over] = bench.find([]);
    expect(over).toMatchObject({
      state: 'normal',
      raisedAt: 2000,
      acknowledgedAt: 3000,
      acknowledgedBy: 'Ina',
    });
    expect(over).toMatchObject({
      clearedAt: 4000,
      firingId: 'firing-1',
      furnaceId: 'furnace-1',
      priority: 'warning',
    });
    expect(bench.rows()).toEqual([]);
  });

  it('is a new alarm when it comes again after it was normal', () => {
    const bench = new Bench();
    for (const event of ['cond_on', 'ack', 'cond_off', 'cond_on'] as const) bench.play(event);
    expect(bench.rows()).toMatchObject([{ id: 'alarm-2', state: 'unacknowledged', acknowledgedBy: null }]);
  });

  it('is the same alarm, sounding again, when it comes back before anyone saw that it went', () => {
    const bench = new Bench();
    for (const event of ['cond_on', 'cond_off', 'cond_on'] as const) bench.play(event);
    expect(bench.rows()).toMatchObject([{ id: 'alarm-1', state: 'unacknowledged', clearedAt: null }]);
  });

  it('tells new numbers of a standing alarm, but not more often than every ten seconds', () => {
    const bench = new Bench();
    const hotter = (celsius: number): Params => ({ ...finding().params, measuredCelsius: celsius });
    let told = 0;
    for (let s = 0; s <= 60; s++) told += bench.find([finding({ params: hotter(820 + s) })]).length;
    expect(told).toBe(7);
    expect(bench.find([finding({ params: hotter(880) })], 60_000)).toEqual([]);
  });

  it('ignores an acknowledgement of what it does not know', () => {
    const bench = new Bench();
    bench.find([finding()]);
    expect(bench.ack('alarm-77')).toEqual([]);
    expect(bench.letter()).toBe('B');
  });

  it('goes on after a restart as if there had been none', () => {
    const bench = new Bench();
    bench.find([finding(), finding({ subject: 'firing-2' })]);
    bench.ack();
    const kept = bench.rows();
    const normal: AlarmRow = {
      ...finding(),
      ...(kept[0] as AlarmRow),
      id: 'old',
      state: 'normal',
      active: false,
    };
    bench.book = openBook([...kept, normal]);
    expect(bench.rows()).toEqual(kept);
    expect(bench.find([finding(), finding({ subject: 'firing-2' })])).toEqual([]);
    expect(bench.find([]).map((row) => row.state)).toEqual(['normal', 'returned-unacknowledged']);
  });
});
