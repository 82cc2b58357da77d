import { describe, expect, it } from 'vitest';
import { saidMeasure } from '../../../dashboard/alarms/review-said.ts';
import { reviewSpan } from '../../../dashboard/alarms/review-span.ts';
import type { AlarmMeasure } from '../../../hub/contract/alarm-review.ts';
import { NOW } from '../mock-shop.ts';

const DAY = 86_400_000;
const utc = (day: string, plus: number) => Date.parse(`${day}T00:00:00Z`) + plus * DAY;
const own = (fromDay: string, toDay: string) => reviewSpan({ choice: 'own', fromDay, toDay }, NOW, utc);

describe('the time that a review looks at', () => {
  it('is the days before now for a choice', () => {
    const span = reviewSpan({ choice: 'month', fromDay: '', toDay: '' }, NOW, utc);
    expect(span).toEqual({ from: NOW - 30 * DAY, to: NOW, wrong: null });
  });

  it('holds the last day of own dates whole, but nothing that is not yet', () => {
    const [first, third] = [Date.UTC(2026, 2, 1), Date.UTC(2026, 2, 3)];
    expect(own('2026-03-01', '2026-03-02')).toEqual({ from: first, to: third, wrong: null });
    expect(own('2026-03-14', '2026-03-14')).toEqual({ from: Date.UTC(2026, 2, 14), to: NOW, wrong: null });
  });

  it('refuses in words what ends before it begins, what is empty, and what is too long', () => {
    expect(own('2026-03-02', '2026-03-01').wrong).toMatch(/comes after/);
    expect(own('', '2026-03-01').wrong).toMatch(/comes after/);
    expect(own('2026-03-20', '2026-03-21').wrong).toMatch(/comes after/);
    expect(own('2024-01-01', '2026-03-01').wrong).toMatch(/400 days/);
  });
});

const measure = (change: Partial<AlarmMeasure>): AlarmMeasure => ({
  measure: 'alarms-per-hour',
  value: 0,
  target: 6,
  most: 12,
  verdict: 'within',
  source: 'x',
  standing: 'published',
  ...change,
});

describe('a figure of the review', () => {
  it('says the target and what can still be managed (ISA-18.2-2016 Tables 5 to 7, secondary: 6 and 12 an hour)', () => {
    const said = saidMeasure(measure({ value: 7.256 }));
    expect(said.value).toBe('7.26');
    expect(said.target).toBe('target up to 6; up to 12 can be managed');
  });

  it('marks the target along its bar where it stands, also when the value is far beyond', () => {
    const low = saidMeasure(measure({ value: 3 }));
    expect([low.valueShare, low.targetShare, low.mostShare]).toEqual([3 / 18, 6 / 18, 12 / 18]);
    const high = saidMeasure(measure({ value: 60 }));
    expect([high.valueShare, high.targetShare]).toEqual([1, 0.1]);
  });

  it('never writes a small figure as nothing', () => {
    expect(saidMeasure(measure({ value: 0.001 })).value).toBe('<0.01');
    expect(saidMeasure(measure({ value: 0 })).value).toBe('0');
  });

  it('says "under" for stale alarms (under 5 on any day), and gives a target of none a bar all the same', () => {
    expect(saidMeasure(measure({ measure: 'stale', target: 5, most: null })).target).toBe('target under 5');
    const none = saidMeasure(measure({ measure: 'chattering', target: 0, most: null, value: 0 }));
    expect([none.valueShare, none.targetShare]).toEqual([0, 0]);
  });
});
