import { describe, expect, it } from 'vitest';
import {
  EVERYTHING,
  filterAddress,
  filterFrom,
  inOrder,
  isNarrowed,
  nextAfter,
  queryOf,
  withLive,
} from '../../../dashboard/firings/list.ts';
import { span } from '../../../dashboard/words/span.ts';
import type { FiringSummary } from '../../../hub/contract/firing.ts';

function row(id: string, startedAt: number, status: FiringSummary['status'] = 'finished'): FiringSummary {
  return {
    id,
    startedAt,
    status,
    furnaceId: 'forge',
    title: id,
    note: '',
    simulated: false,
    endedAt: status === 'running' ? null : startedAt + 1,
    createdAt: startedAt,
    furnaceName: 'Forge',
    scheduleName: 'Anneal',
    verdict: 'pending',
    peakCelsius: 700,
    soakSeconds: 0,
    alarmCount: 0,
    marks: [],
  };
}

describe('the list of firings', () => {
  it('asks for what is wanted and nothing else', () => {
    expect(queryOf(EVERYTHING, null)).toEqual({ limit: 50 });
    expect(queryOf({ ...EVERYTHING, furnaceId: 'forge', status: 'finished', q: ' chisel ' }, 'f-77')).toEqual(
      {
        limit: 50,
        furnaceId: 'forge',
        status: 'finished',
        q: 'chisel',
        after: 'f-77',
      },
    );
  });

  it('takes days as whole ones of this screen’s clock, the last included', () => {
    const { from, before } = queryOf({ ...EVERYTHING, from: '2026-03-01', to: '2026-03-01' }, null);
    expect(from).toBe(new Date(2026, 2, 1).getTime());
    expect(before).toBe(new Date(2026, 2, 2).getTime());
    expect(queryOf({ ...EVERYTHING, from: 'soon' }, null)).toEqual({ limit: 50 });
  });

  it('keeps its filter in the address, and reads only what it knows back', () => {
    const filter = { ...EVERYTHING, q: 'two chisels', verdict: 'not-met' as const, to: '2026-03-01' };
    expect(filterFrom(`#/firings${filterAddress(filter)}`)).toEqual(filter);
    expect(filterAddress(EVERYTHING)).toBe('');
    expect(filterFrom('#/firings?verdict=fine&status=odd&q=a')).toEqual({ ...EVERYTHING, q: 'a' });
    expect([isNarrowed(filter), isNarrowed({ ...EVERYTHING, q: '  ' })]).toEqual([true, false]);
  });

  it('puts running ones on top, then the newest, each once though pages overlap', () => {
    const rows = inOrder([
      [row('old', 1), row('new', 9)],
      [row('run', 5, 'running'), row('old', 1)],
    ]);
    expect(rows.map(({ id }) => id)).toEqual(['run', 'new', 'old']);
    expect(nextAfter(rows)).toBe(rows.at(-1)?.id);
    expect(nextAfter([])).toBeNull();
  });

  it('leaves a finished firing alone whatever the feed says', () => {
    expect(withLive(row('done', 1), undefined)).toEqual(row('done', 1));
  });
});

describe('a stretch of time in words', () => {
  it.each([
    [0, '0 s'],
    [175, '2 min 55 s'],
    [180, '3 min'],
    [-4, '0 s'],
  ])('%d s reads %s', (seconds, words) => {
    expect(span(seconds)).toBe(words);
  });
});
