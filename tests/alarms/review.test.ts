import { describe, expect, it } from 'vitest';
import { answerTimes, percentile } from '../../hub/alarms/answer-time.ts';
import { chatteringIn, fleetingIn, mostWithin, staleAt } from '../../hub/alarms/nuisance.ts';
import { reviewAlarms } from '../../hub/alarms/review.ts';
import type { AlarmTransition } from '../../hub/contract/alarm-journal.ts';
import { ack, burst, HOUR, MINUTE, off, SECOND, step } from './journal-kit.ts';

const review = (journal: readonly AlarmTransition[], to: number, standing: readonly AlarmTransition[] = []) =>
  reviewAlarms({ from: 0, to, journal, standing, titleOf: ({ kind }) => kind });

const measure = (found: ReturnType<typeof review>, name: string) =>
  found.measures.find((one) => one.measure === name);

// SOURCE: three activations in a minute: secondary, the standard fixes no number.
describe('chattering', () => {
  const thrice = (everyMs: number) =>
    [0, 1, 2].flatMap((n) => [step(n * everyMs), off(n * everyMs + SECOND)]);

  it('is an alarm that comes on three times within a minute', () => {
    expect(chatteringIn(thrice(29 * SECOND))).toMatchObject([
      { activations: 3, mostInOneMinute: 3, from: 0, to: 58 * SECOND },
    ]);
  });

  it('is not one that comes on three times in a minute and more, nor three alarms that come once', () => {
    expect(chatteringIn(thrice(30 * SECOND))).toEqual([]);
    const three = ['forge', 'oven', 'bath'].map((furnaceId, n) =>
      step(n, { furnaceId, firingId: furnaceId, subject: furnaceId }),
    );
    expect(chatteringIn(three)).toEqual([]);
  });

  it('shows across alarms and firings of one furnace', () => {
    const again = (n: number) =>
      step(n * 10 * SECOND, { alarmId: `a${n}`, subject: `f${n}`, firingId: `f${n}` });
    expect(chatteringIn([again(0), again(1), again(2)])).toHaveLength(1);
  });
});

describe('fleeting', () => {
  it('is over within ten seconds with nobody doing anything', () => {
    expect(fleetingIn([step(0), off(10 * SECOND)])).toMatchObject([{ count: 1 }]);
    expect(fleetingIn([step(0), off(10 * SECOND + 1)])).toEqual([]);
    expect(fleetingIn([step(0), ack(2000), off(5000)])).toEqual([]);
  });
});

// SOURCE: ISA-18.2-2016, secondary: stale is active for more than 24 h.
describe('stale', () => {
  it('is what has held for more than a day, seen or not', () => {
    const seen = step(0, { to: 'acknowledged' });
    expect(staleAt([seen], 24 * HOUR)).toEqual([]);
    expect(staleAt([seen], 24 * HOUR + 1)).toEqual([seen]);
  });

  it('is neither what has returned nor what somebody set aside', () => {
    const over = step(0, { to: 'returned-unacknowledged', active: false, activeSince: null });
    expect(staleAt([over, step(0, { to: 'shelved' }), step(0, { to: 'out-of-service' })], 99 * HOUR)).toEqual(
      [],
    );
  });
});

describe('the time to acknowledge', () => {
  it('runs from the announcement, anew when it is announced again', () => {
    const journal = [
      step(0),
      off(5 * SECOND),
      step(60 * SECOND, { from: 'returned-unacknowledged' }),
      ack(72 * SECOND),
      step(100 * SECOND, { alarmId: 'b' }),
    ];
    expect(answerTimes(journal)).toEqual({ answeredMs: [12 * SECOND], unanswered: 2 });
  });

  // SOURCE: NIST/SEMATECH e-Handbook 7.2.6.2 (from memory): gauge study, 90th percentile 95.1981 by p(N + 1).
  it('has its percentiles by the NIST convention', () => {
    const gauge = [
      95.061, 95.0925, 95.1065, 95.1195, 95.1442, 95.1567, 95.1591, 95.1682, 95.1772, 95.1937, 95.1959,
      95.199,
    ];
    expect(percentile(gauge, 0.9)).toBeCloseTo(95.1981, 4);
    expect(percentile(gauge, 0.5)).toBeCloseTo((95.1567 + 95.1591) / 2, 9);
    expect(percentile([7], 0.9)).toBe(7);
    expect(percentile([], 0.5)).toBeNull();
  });
});

describe('the review', () => {
  it('of a stretch without alarms is all within, with no times and no NaN', () => {
    const found = review([], 24 * HOUR);
    expect(found.measures.every(({ value, verdict }) => value === 0 && verdict === 'within')).toBe(true);
    expect(found.acknowledgement).toEqual({
      answered: 0,
      unanswered: 0,
      medianSeconds: null,
      ninetiethPercentileSeconds: null,
    });
    expect(found.enoughData).toBe(false);
  });

  // SOURCE: ISA-18.2-2016 Tables 5 to 7, secondary: 6 an hour acceptable, 12 the most; 10 in any ten minutes.
  it.each([
    [6, 'within'],
    [12, 'manageable'],
    [13, 'above'],
  ])('calls %i alarms an hour %s', (perHour, verdict) => {
    const spread = burst(perHour, Math.floor(HOUR / perHour));
    expect(measure(review(spread, HOUR), 'alarms-per-hour')).toMatchObject({ value: perHour, verdict });
  });

  it('finds the worst ten minutes wherever they lie, and the share of busy periods and of flood', () => {
    const found = review(burst(11, SECOND, 5 * MINUTE), 100 * MINUTE);
    expect(measure(found, 'most-in-ten-minutes')).toMatchObject({ value: 11, verdict: 'above' });
    expect(measure(found, 'busy-periods-percent')?.value).toBe(10);
    // From 5:10 to 15:06.
    expect(measure(found, 'flood-percent')?.value).toBeCloseTo((100 * 596) / 6000, 9);
    expect(found.floods).toHaveLength(1);
  });

  it('names the ten most frequent with their share, most first', () => {
    const of = (n: number) =>
      burst(n, 2 * HOUR, n * 1000).map((one) => ({ ...one, subject: `node-${n}`, firingId: null }));
    const found = review(
      Array.from({ length: 12 }, (_, n) => of(n + 1))
        .flat()
        .sort((a, b) => a.at - b.at),
      48 * HOUR,
    );
    expect(found.mostFrequent).toHaveLength(10);
    expect(found.mostFrequent[0]).toMatchObject({ place: 'node-12', count: 12, percent: (100 * 12) / 78 });
    expect(measure(found, 'most-frequent-percent')?.value).toBeCloseTo((100 * 75) / 78, 9);
  });

  it('calls five stale alarms too many, four not yet; names each figure with its source', () => {
    const old = (n: number) =>
      Array.from({ length: n }, (_, i) => step(0, { alarmId: `s${i}`, to: 'acknowledged' }));
    expect(measure(review([], 48 * HOUR, old(4)), 'stale')?.verdict).toBe('within');
    expect(measure(review([], 48 * HOUR, old(5)), 'stale')?.verdict).toBe('above');
    for (const { source } of review([], HOUR).measures) expect(source).toMatch(/ISA-18\.2|EEMUA 191/);
  });

  it('lists what stands, in whatever state', () => {
    const standing = [step(0, { to: 'shelved' }), step(0, { alarmId: 'b', to: 'out-of-service' })];
    expect(review([], HOUR, standing).standing.map(({ state }) => state)).toEqual([
      'shelved',
      'out-of-service',
    ]);
  });
});

describe('the most within a stretch', () => {
  it('leaves out what is exactly the stretch away', () => {
    expect(mostWithin([0, 10, 20], 10)).toBe(1);
    expect(mostWithin([0, 9, 18, 19], 10)).toBe(2);
    expect(mostWithin([], 10)).toBe(0);
  });
});
