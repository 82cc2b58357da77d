import { describe, expect, it } from 'vitest';
import { definitionTable } from '../../hub/alarms/definition-table.ts';
import { ALARM_DEFINITIONS } from '../../hub/alarms/definitions.ts';
import { ALARM_KINDS } from '../../hub/contract/alarm.ts';
import { ALARM_CAUSES } from '../../hub/contract/alarm-relations.ts';
import { ShopSettings } from '../../hub/contract/shop.ts';
import { words } from '../../hub/contract/words/words.ts';

const table = definitionTable(ShopSettings.parse({}), words('en').rationale);

describe('the table of definitions that people see', () => {
  it('has every kind once, in the order of the contract, which is that of loudness', () => {
    expect(table.map(({ kind }) => kind)).toEqual([...ALARM_KINDS]);
    expect(new Set(table.map(({ rank }) => rank)).size).toBe(table.length);
  });

  it('says what each is for: cause, consequence, action, time and the source of its numbers', () => {
    for (const { kind, name, cause, consequence, action, source, timeSource, secondsToAct } of table) {
      for (const text of [name, cause, consequence, action, source, timeSource]) {
        expect(text.length, kind).toBeGreaterThan(5);
      }
      expect(secondsToAct, kind).toBeGreaterThanOrEqual(0);
    }
  });

  it('makes everything that is louder than a warning about air a danger to life, and blindness of the air too', () => {
    const air = table.filter(({ kind }) => kind.startsWith('unsafe-air') || kind === 'not-watching-air');
    expect(air.filter(({ priority }) => priority === 'danger').every((one) => one.dangerToLife)).toBe(true);
    const heat = table.filter(({ kind }) => /stalled|overshoot|probe/.test(kind));
    expect(heat.some((one) => one.dangerToLife)).toBe(false);
  });

  it('lets nothing follow from what is quieter, and nothing about danger to life follow from anything', () => {
    for (const kind of ALARM_KINDS) {
      for (const cause of ALARM_CAUSES[kind] ?? []) {
        expect(ALARM_DEFINITIONS[kind].dangerToLife, kind).toBe(false);
        if (ALARM_DEFINITIONS[kind].priority === 'danger') {
          expect(ALARM_DEFINITIONS[cause.kind].priority, kind).toBe('danger');
        }
      }
    }
  });
});
