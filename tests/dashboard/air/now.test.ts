import { describe, expect, it } from 'vitest';
import { dateNotes, roomSensors, saysNow } from '../../../dashboard/air/now.ts';
import type { FeedState } from '../../../dashboard/feed/state.ts';
import { Shop } from '../../../hub/contract/shop.ts';
import { channel, good, NOW, settings } from '../mock-shop.ts';

const DAY = 86_400_000;
const co = (id: string, change: Parameters<typeof channel>[0] | object = {}) =>
  channel({ id, quantity: 'carbon-monoxide', role: 'room-air', staleAfterSeconds: 30, ...change });

function feed(...channels: ReturnType<typeof channel>[]): FeedState {
  return {
    seq: 1,
    epoch: 'e',
    shop: Shop.parse({ id: 'shop', simulated: false, settings: settings() }),
    furnaces: new Map(),
    nodes: new Map(),
    channels: new Map(channels.map((one) => [one.id, one])),
    firings: new Map(),
    alarms: new Map(),
  };
}

describe('what a sensor of the room says now', () => {
  it('is measured only while it is fresh, and silence is no level', () => {
    const spoke = co('a', { latest: good(NOW - 20_000, 12) });
    expect(saysNow(spoke, NOW)).toEqual({ kind: 'measured', value: 12, at: NOW - 20_000 });
    expect(saysNow(spoke, NOW + 20_000).kind).toBe('silent');
    expect(saysNow(co('b'), NOW)).toEqual({ kind: 'never' });
  });

  it('is the worst, not a fault to be waved away, at the end of its range', () => {
    const top = { at: NOW, value: 500, quality: 'bad' as const, reason: 'out-of-range' as const };
    expect(saysNow(co('a', { possibleHigh: 500, latest: top }), NOW).kind).toBe('saturated');
    expect(saysNow(co('a', { latest: { ...top, value: -40 } }), NOW).kind).toBe('doubtful');
  });

  it('is no saturation once it has fallen silent', () => {
    const top = good(NOW - 60_000, 500);
    expect(saysNow(co('a', { possibleHigh: 500, latest: top }), NOW).kind).toBe('silent');
  });
});

describe('the sensors of the room', () => {
  it('stand with the blind one first, before the worst reading', () => {
    const state = feed(
      co('low', { latest: good(NOW, 3) }),
      co('high', { latest: good(NOW, 300) }),
      co('silent', { latest: good(NOW - DAY, 1) }),
      co('over', { latest: good(NOW, 20) }),
    );
    const { carbonMonoxide } = roomSensors(state, NOW);
    expect(carbonMonoxide.map((one) => one.channel.id)).toEqual(['silent', 'high', 'over', 'low']);
    expect(carbonMonoxide.map(({ level }) => level)).toEqual([
      null,
      'over-second',
      'over-first',
      'under-first',
    ]);
  });

  it('leave out what nobody took in, and what is not the air of the room', () => {
    const state = feed(
      co('offered', { adopted: false, latest: good(NOW, 900) }),
      channel({ id: 'chamber', quantity: 'temperature', role: 'chamber' }),
      channel({ id: 'room', quantity: 'temperature', role: 'room-air', latest: good(NOW, 21) }),
    );
    const { carbonMonoxide, others } = roomSensors(state, NOW);
    expect(carbonMonoxide).toEqual([]);
    expect(others.map((one) => one.channel.id)).toEqual(['room']);
  });
});

describe('the dates of a sensor', () => {
  it('are said with what has passed first', () => {
    const dates = { calibratedAt: NOW - 400 * DAY, calibrationDueAt: NOW - DAY, endOfLifeAt: NOW + DAY };
    expect(dateNotes(dates, NOW).map(({ kind }) => kind)).toEqual(['overdue', 'ends', 'calibrated']);
    expect(dateNotes({ ...dates, endOfLifeAt: NOW }, NOW)[0]).toEqual({ kind: 'ended', at: NOW });
  });

  it('are missed when nobody entered any', () => {
    const none = { calibratedAt: null, calibrationDueAt: null, endOfLifeAt: null };
    expect(dateNotes(none, NOW)).toEqual([{ kind: 'no-dates' }]);
  });
});
