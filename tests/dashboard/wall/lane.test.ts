import { describe, expect, it } from 'vitest';
import { applyMessage, type FeedState } from '../../../dashboard/feed/state.ts';
import { isActNow, laneOf, lanesOf } from '../../../dashboard/wall/lane.ts';
import { NEXT_MOVES } from '../../../hub/contract/firing.ts';
import type { LiveSnapshot } from '../../../hub/contract/live.ts';
import type { Channel } from '../../../hub/contract/shop.ts';
import {
  alarm,
  channel,
  channels,
  FORGE,
  furnace,
  good,
  HARDENING,
  NOW,
  OVEN,
  snapshot,
} from '../mock-shop.ts';

function stateOf(change: Partial<LiveSnapshot> = {}): FeedState {
  const { state } = applyMessage(null, snapshot(change));
  if (state === null) throw new Error('a snapshot gives a state');
  return state;
}

const withLatest = (id: string, latest: Channel['latest']) =>
  channels().map((one) => (one.id === id ? { ...one, latest } : one));

describe('a lane', () => {
  it('shows what the judge measured while it sees', () => {
    const lane = laneOf(stateOf(), FORGE, NOW);
    expect(lane.heat).toEqual({ kind: 'measured', celsius: 798.25 });
    expect(lane.live).toEqual(HARDENING);
  });

  it('does not show an old value as the temperature, even if the judge has not said so yet', () => {
    const state = stateOf({ channels: withLatest('forge-chamber', good(NOW - 20_001, 798)) });
    expect(laneOf(state, FORGE, NOW).heat).toEqual({ kind: 'last-known', celsius: 798, at: NOW - 20_001 });
    expect(laneOf(stateOf(), FORGE, NOW + 20_000).heat.kind).toBe('last-known');
  });

  it('has no temperature when the only reading is a fault', () => {
    const bad = { at: NOW, value: 1372, quality: 'bad', reason: 'sensor-fault' } as const;
    const state = stateOf({ channels: withLatest('forge-chamber', bad) });
    expect(laneOf(state, FORGE, NOW).heat).toEqual({ kind: 'none' });
  });

  it('shows the hottest channel of an idle furnace, and leaves out what is not adopted', () => {
    const own = { quantity: 'temperature', role: 'chamber', furnaceId: 'oven' } as const;
    const state = stateOf({
      firings: [],
      channels: [
        channel({ id: 'a', ...own, latest: good(NOW, 60) }),
        channel({ id: 'b', ...own, latest: good(NOW, 180) }),
        channel({ id: 'c', ...own, adopted: false, latest: good(NOW, 999) }),
      ],
    });
    expect(laneOf(state, OVEN, NOW).heat).toEqual({ kind: 'measured', celsius: 180 });
    expect(laneOf(state, FORGE, NOW).heat).toEqual({ kind: 'no-channel' });
  });

  it('carries the most urgent alarm of its own furnace only', () => {
    const mine = alarm('overshoot', { furnaceId: 'forge' });
    const state = stateOf({ alarms: [alarm('not-watching-channel', { furnaceId: 'oven' }), mine] });
    expect(laneOf(state, FORGE, NOW).alarm).toEqual(mine);
    expect(laneOf(state, furnace('bath', 'Bath', 'salt-bath'), NOW).alarm).toBeNull();
  });
});

describe('the lanes', () => {
  it('stand with the running firings first, else in the order the furnaces were made', () => {
    const third = furnace('bath', 'Bath', 'salt-bath', 3);
    const state = stateOf({
      furnaces: [third, OVEN, FORGE],
      firings: [{ ...HARDENING, firing: { ...HARDENING.firing, furnaceId: 'oven' } }],
    });
    expect(lanesOf(state, NOW).map((lane) => lane.furnace.id)).toEqual(['oven', 'forge', 'bath']);
  });

  it('set in reverse what a person must do now, and not what goes on by itself', () => {
    expect(NEXT_MOVES.filter((code) => !isActNow(code))).toEqual([
      'heat-up',
      'hold',
      'cool-furnace',
      'wait-cooling',
      'wait-core',
    ]);
  });
});
