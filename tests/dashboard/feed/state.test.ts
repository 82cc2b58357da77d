import { describe, expect, it } from 'vitest';
import { applyMessage, type FeedState } from '../../../dashboard/feed/state.ts';
import type { LiveChange } from '../../../hub/contract/live.ts';
import { alarm, channel, FORGE, good, HARDENING, NOW, snapshot } from '../mock-shop.ts';

function begun(): FeedState {
  const { state } = applyMessage(null, snapshot());
  if (state === null) throw new Error('a snapshot gives a state');
  return state;
}

function carry(state: FeedState, change: LiveChange): FeedState {
  const applied = applyMessage(state, change);
  expect(applied.verdict).toBe('applied');
  if (applied.state === null) throw new Error('a change keeps the state');
  return applied.state;
}

const beat = (seq: number) => ({ type: 'heartbeat', seq, now: NOW, judging: true }) as const;

describe('what the feed has told', () => {
  it('begins with a snapshot, and makes nothing of changes before it', () => {
    expect(applyMessage(null, { type: 'firing', seq: 1, id: 'x', live: null })).toEqual({
      state: null,
      verdict: 'gap',
    });
    const state = begun();
    expect([...state.furnaces.keys()]).toEqual(['forge', 'oven']);
    expect(state.seq).toBe(100);
  });

  it('carries a reading to its channel and leaves the others untouched', () => {
    const before = begun();
    const reading = good(NOW + 1000, 801);
    const state = carry(before, { type: 'reading', seq: 101, channel: 'forge-chamber', reading });
    expect(state.channels.get('forge-chamber')?.latest).toEqual(reading);
    expect(state.channels.get('oven-chamber')).toBe(before.channels.get('oven-chamber'));
    expect(before.channels.get('forge-chamber')?.latest?.value).toBe(798.25);
  });

  it('does not let a late reading pass for the newest', () => {
    const late = {
      type: 'reading',
      seq: 101,
      channel: 'forge-chamber',
      reading: good(NOW - 60_000, 20),
    } as const;
    const state = carry(begun(), late);
    expect(state.channels.get('forge-chamber')?.latest?.value).toBe(798.25);
    expect(state.seq).toBe(101);
  });

  it('takes away what is over: a firing, a normal alarm, an archived furnace', () => {
    const raised = carry(begun(), { type: 'alarm', seq: 101, alarm: alarm('overshoot') });
    expect(raised.alarms.size).toBe(1);
    const normal = carry(raised, { type: 'alarm', seq: 102, alarm: alarm('overshoot', { state: 'normal' }) });
    expect(normal.alarms.size).toBe(0);
    const over = carry(normal, { type: 'firing', seq: 103, id: HARDENING.firing.id, live: null });
    expect([...over.firings.keys()]).toEqual(['firing-2']);
    const away = carry(over, { type: 'furnace', seq: 104, furnace: { ...FORGE, archived: true } });
    expect([...away.furnaces.keys()]).toEqual(['oven']);
  });

  it('ignores what it has had already, as a resumed feed may repeat it', () => {
    const state = begun();
    const again = applyMessage(state, { type: 'alarm', seq: 100, alarm: alarm('overshoot') });
    expect(again.verdict).toBe('old');
    expect(again.state).toBe(state);
  });

  it('does not call a jump a gap: the hub leaves out what a newer value superseded', () => {
    const jumped = carry(begun(), {
      type: 'channel',
      seq: 140,
      channel: channel({ id: 'new', quantity: 'mass' }),
    });
    expect(jumped.seq).toBe(140);
    expect(applyMessage(jumped, beat(140)).verdict).toBe('applied');
  });

  it('calls it a gap when the heartbeat knows of a change that never came', () => {
    const state = begun();
    expect(applyMessage(state, beat(101))).toEqual({ state, verdict: 'gap' });
    expect(applyMessage(state, beat(99)).verdict).toBe('gap');
    expect(applyMessage(state, beat(100)).verdict).toBe('applied');
  });

  it('lets a new snapshot replace everything, of whatever epoch', () => {
    const old = carry(begun(), { type: 'alarm', seq: 101, alarm: alarm('overshoot') });
    const { state } = applyMessage(old, snapshot({ epoch: 'epoch-2', seq: 3 }));
    expect(state?.alarms.size).toBe(0);
    expect(state).toMatchObject({ epoch: 'epoch-2', seq: 3 });
  });
});
