import { describe, expect, it } from 'vitest';
import { MORNING } from '../harness/shop.ts';
import { FAILED, MINUTE, REFUSED, Rules, seenAlarm, way } from './kit.ts';

describe('who is told', () => {
  it('tells an alarm once, at once, by every way whose rule wants its priority', () => {
    const rules = new Rules([way('mail'), way('boss', { priorities: ['warning'] })]);
    rules.alarm(seenAlarm('a'));
    rules.pass(3600);
    expect(rules.told('mail')).toEqual(['raised a']);
    expect(rules.told('boss')).toEqual([]);
  });

  it('says nothing of what somebody has seen, what is set aside, and what went by itself', () => {
    const rules = new Rules([way('mail')]);
    const states = [
      'acknowledged',
      'shelved',
      'suppressed',
      'out-of-service',
      'returned-unacknowledged',
    ] as const;
    for (const state of states) rules.alarm(seenAlarm(state, { state }));
    rules.pass(60);
    expect(rules.sent).toEqual([]);
  });

  it('says nothing by a way that is off, and does not say again what it had told before', () => {
    const rules = new Rules([way('mail')]);
    rules.alarm(seenAlarm('a'));
    const off = {
      type: 'configured',
      at: rules.now,
      zone: 'UTC',
      rules: [{ ...way('mail'), enabled: false }],
    } as const;
    rules.take(off);
    rules.alarm(seenAlarm('b'));
    expect(rules.told('mail')).toEqual(['raised a']);
    rules.take({ ...off, rules: [way('mail')] });
    expect(rules.told('mail')).toEqual(['raised a', 'raised b']);
  });

  it('goes on to the next person when nobody has acknowledged in time, not a second earlier', () => {
    const rules = new Rules([way('smith'), way('boss', { afterMinutes: 10 })]);
    rules.alarm(seenAlarm('a'));
    rules.pass(599);
    expect(rules.told('boss')).toEqual([]);
    rules.pass(1);
    expect(rules.told('boss')).toEqual(['not-acknowledged a']);
    expect(rules.told('smith')).toEqual(['raised a']);
  });

  it('does not go on when somebody has acknowledged it', () => {
    const rules = new Rules([way('boss', { afterMinutes: 10 })]);
    rules.alarm(seenAlarm('a'));
    rules.pass(590);
    rules.alarm(seenAlarm('a', { state: 'acknowledged' }));
    rules.pass(3600);
    expect(rules.sent).toEqual([]);
  });

  it('repeats while nobody answers, and stops when somebody does', () => {
    const rules = new Rules([way('mail', { repeatMinutes: 5 })]);
    rules.alarm(seenAlarm('a'));
    rules.pass(11 * 60);
    expect(rules.told('mail')).toEqual(['raised a', 'repeated a', 'repeated a']);
    rules.alarm(seenAlarm('a', { state: 'acknowledged' }));
    rules.pass(3600);
    expect(rules.sent).toHaveLength(3);
  });

  it('puts what comes while a message is under way into one next message, danger first', () => {
    const rules = new Rules([way('mail')]);
    rules.answer = () => null;
    rules.alarm(seenAlarm('a', { priority: 'warning', kind: 'overshoot' }));
    rules.alarm(seenAlarm('b', { priority: 'warning', kind: 'soak-stalled' }));
    rules.alarm(seenAlarm('c'));
    const [first] = rules.sent;
    if (first) rules.settle(first, { ok: true });
    expect(rules.told('mail')).toEqual(['raised a', 'raised c+b']);
  });
});

describe('hours', () => {
  // MORNING is Monday 2026-03-02 08:00 UTC.
  const night = { days: [1, 2, 3, 4, 5, 6, 7], from: '18:00', to: '07:00' };

  it('waits with a warning until its hours begin', () => {
    const rules = new Rules([way('mail', { hours: night })]);
    rules.alarm(seenAlarm('w', { priority: 'warning', kind: 'overshoot' }));
    rules.pass(60);
    expect(rules.sent).toEqual([]);
    rules.now = MORNING + 10 * 60 * MINUTE - 1000;
    rules.pass(1);
    expect(rules.told('mail')).toEqual(['raised w']);
  });

  it('lets a danger through at any hour, unless the rule forbids it', () => {
    const rules = new Rules([
      way('any', { hours: night }),
      way('strict', { hours: night, dangerAnyHour: false }),
    ]);
    rules.alarm(seenAlarm('a'));
    expect(rules.told('any')).toEqual(['raised a']);
    expect(rules.told('strict')).toEqual([]);
  });
});

describe('when it does not get through', () => {
  it('tries again with growing, jittered waits: 2.5, 5, 10, 20, 40 s at half jitter, then every 15 minutes', () => {
    const rules = new Rules([way('mail')]);
    const at: number[] = [];
    rules.answer = () => {
      at.push((rules.now - MORNING) / 1000);
      return FAILED;
    };
    rules.alarm(seenAlarm('a'));
    rules.pass(2000);
    // Ticks come each second, so a wait of 2.5 s ends at the third. First waits of 5 s doubling, halved by the jitter.
    expect(at).toEqual([0, 3, 8, 18, 38, 78, 978, 1878]);
    expect(rules.sent.map(({ attempt }) => attempt)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(new Set(rules.sent.map(({ sendId }) => sendId)).size).toBe(1);
  });

  it('counts as trouble after six failures in a row, or at once where waiting does not help', () => {
    const rules = new Rules([way('slow'), way('wrong')]);
    rules.answer = ({ wayId }) => (wayId === 'wrong' ? REFUSED : FAILED);
    rules.alarm(seenAlarm('a'));
    expect(rules.state.ways.wrong?.trouble).toMatchObject({ since: MORNING, code: 'sign-in-refused' });
    rules.pass(77);
    expect(rules.state.ways.slow?.trouble).toBeNull();
    rules.pass(1);
    expect(rules.state.ways.slow?.trouble).toMatchObject({ code: 'not-reached' });
  });

  it('lets a danger go out at once while a warning waits for its next attempt, both in one message', () => {
    const rules = new Rules([way('mail')]);
    rules.answer = () => REFUSED;
    rules.alarm(seenAlarm('w', { priority: 'warning', kind: 'overshoot' }));
    rules.pass(10);
    rules.answer = () => ({ ok: true });
    rules.alarm(seenAlarm('d'));
    expect(rules.told('mail')).toEqual(['raised w', 'raised d+w']);
    expect(rules.state.ways.mail).toMatchObject({ failures: 0, trouble: null, outgoing: null });
  });

  it('gives up what nobody needs any more', () => {
    const rules = new Rules([way('mail')]);
    rules.answer = () => FAILED;
    rules.alarm(seenAlarm('a'));
    rules.alarm(seenAlarm('a', { state: 'acknowledged' }));
    rules.pass(3600);
    expect(rules.sent).toHaveLength(1);
    expect(rules.state.ways.mail?.outgoing).toBeNull();
  });

  it('ends the trouble with a test that gets through, and sends at once what waits', () => {
    const rules = new Rules([way('mail')]);
    rules.answer = () => REFUSED;
    rules.alarm(seenAlarm('a'));
    rules.pass(30);
    rules.answer = () => ({ ok: true });
    rules.take({ type: 'tested', at: rules.now, wayId: 'mail', outcome: { ok: true } });
    expect(rules.told('mail')).toEqual(['raised a', 'raised a']);
    expect(rules.state.ways.mail).toMatchObject({ trouble: null, outgoing: null });
  });
});

describe('an alarm about not reaching people', () => {
  const failed = (subject: string) =>
    seenAlarm(`about-${subject}`, { kind: 'notify-failed', priority: 'warning', subject });

  it('goes by the other ways, once, never by the way that does not work', () => {
    const rules = new Rules([way('mail', { repeatMinutes: 1 }), way('push', { repeatMinutes: 1 })]);
    rules.alarm(failed('mail'));
    rules.pass(3600);
    expect(rules.told('mail')).toEqual([]);
    expect(rules.told('push')).toEqual(['raised about-mail']);
  });

  it('makes no loop where every way fails: an hour brings no more than the slow pace of each', () => {
    const rules = new Rules([way('mail'), way('push')]);
    rules.answer = () => REFUSED;
    rules.alarm(failed('mail'));
    rules.alarm(failed('push'));
    rules.pass(3600);
    // At 0, 15, 30, 45 and 60 minutes.
    expect(rules.told('push')).toHaveLength(5);
    expect(rules.told('mail')).toHaveLength(5);
  });
});

describe('a restart', () => {
  const kept = (rules: Rules) => ({ ways: rules.state.ways, next: rules.state.next });

  it('does not tell again what was told', () => {
    const before = new Rules([way('mail')]);
    before.alarm(seenAlarm('a'));
    const after = new Rules([way('mail')], JSON.parse(JSON.stringify(kept(before))), [seenAlarm('a')]);
    after.pass(3600);
    expect(after.sent).toEqual([]);
  });

  it('sends again under its old number what may not have arrived', () => {
    const before = new Rules([way('mail')]);
    before.answer = () => null;
    before.alarm(seenAlarm('a'));
    const after = new Rules([way('mail')], kept(before), [seenAlarm('a')]);
    expect(after.sent.map(({ sendId }) => sendId)).toEqual(before.sent.map(({ sendId }) => sendId));
  });

  it('forgets what is back to normal: the same trouble next week is told again', () => {
    const rules = new Rules([way('mail')]);
    rules.alarm(seenAlarm('a'));
    rules.alarm(seenAlarm('a', { state: 'normal' }));
    expect(rules.state.ways.mail?.told).toEqual({});
    rules.alarm(seenAlarm('b'));
    expect(rules.told('mail')).toEqual(['raised a', 'raised b']);
  });
});
