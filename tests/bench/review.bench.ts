import { afterAll, bench, describe } from 'vitest';
import { openArchive } from '../../hub/archive/open.ts';
import { batchOf } from '../../hub/review/batch.ts';
import { firingDraft, judgement, segmentResult } from '../archive/helpers.ts';

/**
 * Search, filter and batch over ten thousand firings of four furnaces and twenty schedules, one mark in each, in
 * memory. Run: npx vitest bench tests/bench/review.bench.ts
 *
 * 2026-11-25, 2 shared vCPU (Xeon, 2.6 GHz nominal), Node 20.20, other work beside it (load 11); mean (least), ms:
 * a page 1.7 (0.3), from the middle 2.0 (0.3), words that many have 3.5 (0.5), one mark 13 (2.0), none 11 (2.1), one
 * schedule 3.1 (0.3), a verdict 2.4 (0.3), words with filters 6.5 (1.1); statistics: 500 firings of one schedule 27
 * (6.1), their chart with twelve tests 2.4 (0.6). A full-text index would find a rare word sooner and sort a common
 * one; the walk along one covering index is fast enough for both, and needs no second copy of the words.
 */
const COUNT = 10_000;
const SCHEDULES = 20;
const MINUTE_MS = 60_000;
const TITLES = ['Cold chisel', 'Drawknife', 'Gouge', 'Leaf spring', 'Hammer head'];

let made = 0;
const ids = () => {
  made += 1;
  return `id-${String(made).padStart(8, '0')}`;
};
const archive = openArchive({ path: ':memory:', ids, simulated: true, now: 0 });
afterAll(() => archive.close());

const furnaces = ['Forge', 'Oven', 'Kiln', 'Salt bath'].map((name) =>
  archive.createFurnace({ name, kind: 'electric-oven', ratedCelsius: 1200, note: '' }, 0),
);
const plain = firingDraft('').schedule;
const steel = { id: '1095', title: '1095', composition: { C: 0.95, Mn: 0.4 } };
const section = { shape: 'plate' as const, thicknessMm: 6, massKilograms: null };
for (let n = 0; n < COUNT; n += 1) {
  const startedAt = n * MINUTE_MS;
  const piece = {
    pieceId: `p${n}`,
    mark: `M-${n}`,
    title: '',
    steel,
    section,
    routeStepId: null,
    step: null,
  };
  const draft = firingDraft(furnaces[n % furnaces.length]?.id ?? '', {
    ...{ status: 'finished', startedAt, endedAt: startedAt + 1, pieces: [piece] },
    title: `${TITLES[n % TITLES.length]} ${n}`,
    note: `the ${n}th of the year, wiped down and put away dry`,
    schedule: { ...plain, id: `s${n % SCHEDULES}`, name: `Plan ${n % SCHEDULES}` },
  });
  const { id } = archive.createFiring(draft);
  const segments = [segmentResult(0), segmentResult(1, { meanCelsius: 800 + (n % 11), soakSeconds: 600 })];
  archive.saveJudgement(id, judgement(segments, { verdict: n % 7 === 0 ? 'not-met' : 'met' }));
}
const [middle] = archive.firings({ limit: 1, before: (COUNT / 2) * MINUTE_MS });
const after = middle?.id ?? '';

describe(`the list at ${COUNT} firings`, () => {
  bench('a page', () => void archive.firings({ limit: 50 }));
  bench('a page from the middle', () => void archive.firings({ limit: 50, after }));
  bench('words that many have', () => void archive.firings({ limit: 50, q: 'chisel forge' }));
  bench('a mark that one has', () => void archive.firings({ limit: 50, q: 'm-4321' }));
  bench('words that none has', () => void archive.firings({ limit: 50, q: 'nothing like it' }));
  bench('one schedule', () => void archive.firings({ limit: 50, scheduleId: 's7' }));
  bench('a verdict', () => void archive.firings({ limit: 50, verdict: 'not-met' }));
  bench('words, verdict, furnace and days', () => {
    archive.firings({
      limit: 50,
      q: 'gouge',
      verdict: 'not-met',
      furnaceId: furnaces[0]?.id,
      from: 0,
      before: 1e9,
    });
  });
});

describe('batch statistics', () => {
  const row = archive.batch({ scheduleId: 's7', segment: 1, limit: 500 });
  bench('five hundred firings of one schedule', () => {
    archive.batch({ scheduleId: 's7', segment: 1, limit: 500 });
  });
  const points = row.map(({ id, startedAt, result, marks, planned: _, ...about }) => ({
    ...about,
    ...{ at: startedAt, value: result?.meanCelsius ?? 0, firingId: id, pieceId: null, marks: [...marks] },
  }));
  bench('their chart with twelve tests', () => {
    batchOf({ points, tolerance: { lower: 790, upper: 820 }, changes: [] });
  });
});
