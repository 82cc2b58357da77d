import { describe, expect, it } from 'vitest';
import { actOf, standingOf } from '../../../dashboard/alarms/standing.ts';
import { ALARM_STATES, type Alarm } from '../../../hub/contract/alarm.ts';
import { alarm, NOW } from '../mock-shop.ts';

const MINUTE = 60_000;
const said = (change: Partial<Alarm>) => standingOf(alarm('soak-stalled', change), NOW, 'UTC');

describe('how an alarm stands, in words', () => {
  it('says since when it holds while nobody has seen it', () => {
    expect(said({ state: 'unacknowledged', activeSince: NOW - 2 * MINUTE })).toBe(
      'Unacknowledged. It holds since 14:01; nobody has seen it yet.',
    );
  });

  it('says who saw it, and that it still holds', () => {
    const seen = { acknowledgedBy: 'Ann', acknowledgedAt: NOW - MINUTE };
    expect(said({ state: 'acknowledged', ...seen })).toBe('Acknowledged by Ann at 14:02. It still holds.');
  });

  it('tells what went by itself from what stays until it is reset', () => {
    const over = { active: false, clearedAt: NOW - MINUTE, acknowledgedBy: 'Ann' };
    expect(said({ state: 'returned-unacknowledged', ...over })).toMatch(/^Returned, unacknowledged.*14:02/);
    expect(said({ state: 'latched-unacknowledged', ...over })).toMatch(/^Latched, unacknowledged.*reset/);
    expect(said({ state: 'latched-acknowledged', ...over })).toMatch(/^Latched, acknowledged by Ann/);
  });

  it('says of a shelf until when, how long yet, by whom and why, and that the trouble holds all the same', () => {
    const shelf = { at: NOW, until: NOW + 57 * MINUTE, by: 'Ann', why: 'burner being cleaned' };
    expect(said({ state: 'shelved', shelf, active: true, activeSince: NOW - 3 * MINUTE })).toBe(
      'Shelved until 15:00 (57 min left) by Ann: burner being cleaned. What it is about holds now, since 14:00.',
    );
  });

  it('names the day of a time that is not of today', () => {
    const out = { at: NOW - 24 * 60 * MINUTE, by: 'Bo', why: 'sensor away for repair' };
    expect(said({ state: 'out-of-service', outOfService: out, active: false })).toBe(
      'Out of service since 13 Mar 2026, 14:03 by Bo because: sensor away for repair. What it is about does not hold now.',
    );
  });

  it('says in words which rule holds it back, and the bare code of a rule that it does not know', () => {
    const by = (rule: string) => said({ state: 'suppressed', suppression: { at: NOW, rule } });
    expect(by('probe-at-fault')).toMatch(/^Suppressed by rule: the probe that it rests on is at fault/);
    expect(by('new-rule')).toMatch(/^Suppressed by rule: new-rule\./);
  });

  it('has words for every state, none of them that of another', () => {
    const all = ALARM_STATES.map((state) => said({ state }));
    expect(new Set(all).size).toBe(ALARM_STATES.length);
  });
});

describe('the one thing to press', () => {
  it('is a reset only for what is seen, over and latched', () => {
    expect(actOf({ state: 'latched-acknowledged' })).toBe('reset');
    expect(actOf({ state: 'latched-unacknowledged' })).toBe('acknowledge');
  });

  it('takes up what is set aside by a person, and not what a rule holds back', () => {
    expect(actOf({ state: 'shelved' })).toBe('unshelve');
    expect(actOf({ state: 'out-of-service' })).toBe('give-back');
    expect(actOf({ state: 'suppressed' })).toBeNull();
  });

  it('is nothing while what somebody has seen still holds', () => {
    expect(actOf({ state: 'acknowledged' })).toBeNull();
  });
});
