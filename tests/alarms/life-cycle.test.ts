import { describe, expect, it } from 'vitest';
import {
  type AlarmLife,
  type LifeRefusal,
  type LifeRules,
  NORMAL_LIFE,
  stepLife,
} from '../../hub/alarms/life-cycle.ts';
import { ALARM_EVENTS, type AlarmEvent } from '../../hub/contract/alarm.ts';
import {
  CONFIGS,
  CORE,
  type Config,
  eventOf,
  lettersOf,
  lifeOf,
  rowsOf,
  rulesOf,
  shownLetter,
  TRACES,
} from './alarm-oracle.ts';

// Source of every row: tests/reference/alarm-model.json (ISA-18.2-2016 / IEC 62682, see its "source").

describe('every row of the table of alarm states', () => {
  it('is there: 12 events in every state of the three kinds of alarm', () => {
    expect(CONFIGS.map((config) => rowsOf(config).length)).toEqual([228, 216, 252]);
    const events = new Set(rowsOf('latching').map((row) => eventOf(row[3])));
    expect(events).toEqual(new Set(ALARM_EVENTS));
  });

  for (const config of CONFIGS) {
    for (const [from, active, horn, event, to, activeAfter, hornAfter, changed] of rowsOf(config)) {
      const name = `${config}: ${from}${active ? ' on' : ' off'}${horn ? ' horn' : ''} by ${event}`;
      it(`${name} goes to ${to}`, () => {
        const before = lifeOf(from, active === 1, horn === 1);
        const step = stepLife(rulesOf(config), before, eventOf(event));
        expect(step.life).toEqual(lifeOf(to, activeAfter === 1, hornAfter === 1));
        expect(step.changed).toBe(changed === 1);
        if (step.refusal !== null) expect(step.life).toBe(before);
      });
    }
  }
});

describe('every row of the readable table', () => {
  for (const row of CORE) {
    it(`${row.state} by ${row.event} goes to ${row.next}`, () => {
      const configs = row.applies_to === 'all' ? CONFIGS : (row.applies_to.split(',') as Config[]);
      const states = row.state.replace('any of ', '').split(',');
      const events = row.event.split(' / ').map(eventOf);
      for (const config of configs) {
        for (const state of states) {
          for (const event of events) expectCore(rulesOf(config), state, event, row.next);
        }
      }
    });
  }

  function expectCore(rules: LifeRules, state: string, event: AlarmEvent, next: string): void {
    for (const active of possible(state)) {
      const { life } = stepLife(rules, lifeOf(state, active, false), event);
      const wanted = next.startsWith('B if') ? (life.active ? 'B' : 'A') : next;
      expect(shownLetter(life)).toBe(wanted);
    }
  }

  function possible(state: string): boolean[] {
    if (['B', 'C'].includes(state)) return [true];
    return ['E', 'F', 'G'].includes(state) ? [true, false] : [false];
  }
});

describe('the golden traces', () => {
  for (const { id, config, why, steps } of TRACES) {
    it(`${id}: ${why}`, () => {
      let life = NORMAL_LIFE;
      const got = steps.map(([event]) => {
        const step = stepLife(rulesOf(config), life, eventOf(event));
        life = step.life;
        const letter = lettersOf(life).includes('+') ? lettersOf(life) : shownLetter(life);
        return [event, letter, Number(life.active), Number(life.sounding), Number(step.changed)];
      });
      expect(got).toEqual(steps);
    });
  }
});

describe('what is not allowed', () => {
  const standard = rulesOf('standard');
  const latching = rulesOf('latching');
  const refusals: readonly [LifeRules, AlarmLife, AlarmEvent, LifeRefusal][] = [
    [standard, lifeOf('A', false, false), 'acknowledge', 'nothing-to-acknowledge'],
    [standard, lifeOf('C', true, false), 'acknowledge', 'already-acknowledged'],
    [latching, lifeOf('LA', false, false), 'acknowledge', 'already-acknowledged'],
    [standard, lifeOf('E', true, false), 'acknowledge', 'set-aside'],
    [standard, lifeOf('F', true, false), 'silence', 'set-aside'],
    [latching, lifeOf('G', true, false), 'reset', 'set-aside'],
    [standard, lifeOf('D', false, false), 'silence', 'nothing-to-silence'],
    [standard, lifeOf('D', false, false), 'reset', 'nothing-to-reset'],
    [latching, lifeOf('C', true, false), 'reset', 'condition-still-holds'],
    [latching, lifeOf('LU', false, true), 'reset', 'acknowledge-first'],
    [standard, lifeOf('E', true, false), 'shelve', 'already-shelved'],
    [standard, lifeOf('B', true, true), 'unshelve', 'not-shelved'],
    [standard, lifeOf('G', true, false), 'take-out-of-service', 'already-out-of-service'],
    [standard, lifeOf('C', true, false), 'return-to-service', 'not-out-of-service'],
  ];
  for (const [rules, life, event, refusal] of refusals) {
    it(`refuses ${event} in ${lettersOf(life)} as ${refusal}`, () => {
      expect(stepLife(rules, life, event)).toEqual({ life, changed: false, refusal });
    });
  }

  it('never refuses a condition or a timer: what holds is taken in, in every state', () => {
    const own: AlarmEvent[] = ['condition-on', 'condition-off', 'shelf-ends', 'suppression-ends'];
    for (const [state, active, horn] of rowsOf('latching')) {
      for (const event of own) {
        expect(stepLife(latching, lifeOf(state, active === 1, horn === 1), event).refusal).toBeNull();
      }
    }
  });

  it('sets a danger to life aside by no event, whatever its state', () => {
    const danger = { ...standard, dangerToLife: true };
    for (const letters of ['A', 'B', 'C', 'D']) {
      const life = lifeOf(letters, letters === 'B' || letters === 'C', letters === 'B');
      for (const event of ['shelve', 'suppress', 'take-out-of-service'] as const) {
        expect(stepLife(danger, life, event)).toEqual({ life, changed: false, refusal: 'danger-to-life' });
      }
    }
  });
});
