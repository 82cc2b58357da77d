import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { openArchive } from '../../hub/archive/open.ts';
import type { NewPiece } from '../../hub/archive/piece-types.ts';
import { batchesOf } from '../../hub/bench/batches.ts';
import { MOST_EXACT, orderStops } from '../../hub/bench/order.ts';
import type { LoadPiece } from '../../hub/contract/load.ts';
import { benchList } from '../../hub/watch/bench-list.ts';
import { firingDraft } from '../archive/helpers.ts';

/**
 * Ten thousand pieces and ten thousand firings, five pieces in each, in memory; five hundred pieces are
 * open. A photo goes to a real file with full sync. Run: npx vitest bench tests/bench/pieces.bench.ts
 *
 * 2026-11-25, 2 shared vCPU (Xeon, 2.6 GHz nominal), Node 20.20, other work beside it (load 12); mean (least), ms:
 * page of firings with marks 1.2 (0.3), page of pieces 1.0 (0.2), by mark 0.08 (0.01), search that finds many
 * 1.3 (0.4), one 5.7 (1.4), none 4.2 (0.9), history 0.17 (0.04), bench list of 500 open pieces 57 (18), least
 * order of 12 batches 8.8 (3.4), a photo of 8 MiB committed 206 (108; 64 when the disk was idle).
 */
const COUNT = 10_000;
const LOAD = 5;
const OPEN = 500;

const folder = mkdtempSync(join(tmpdir(), 'soakwatch-bench-'));
let made = 0;
const ids = () => {
  made += 1;
  return `id-${String(made).padStart(8, '0')}`;
};
const archive = openArchive({ path: ':memory:', ids, simulated: true, now: 0 });
const onDisk = openArchive({ path: join(folder, 'shop.soakwatch'), ids, simulated: true, now: 0 });
afterAll(() => {
  archive.close();
  onDisk.close();
  rmSync(folder, { recursive: true });
});

const furnace = archive.createFurnace(
  { name: 'Oven', kind: 'electric-oven', ratedCelsius: 1200, note: '' },
  0,
);
const [template] = archive.routeTemplates();
const STEELS = ['1095', '1045', 'O1', 'W1', '5160'];
const TITLES = ['Cold chisel', 'Drawknife', 'Gouge', 'Leaf spring', 'Hammer head'];
const done = { at: 1, by: '', firingId: null, outcome: 'done' } as const;

function draftOf(n: number): NewPiece {
  return {
    mark: `P${n}`,
    title: TITLES[n % TITLES.length] ?? '',
    note: `number ${n} of the bench`,
    steel: { grade: STEELS[n % STEELS.length] ?? null, title: '', certificateId: null, composition: null },
    section: { shape: 'plate', thicknessMm: 2 + (n % 20), massKilograms: null },
    route: n % (COUNT / OPEN) === 0 ? [...(template?.steps ?? [])] : [],
  };
}
const pieces = Array.from({ length: COUNT }, (_, n) => archive.createPiece(draftOf(n), n));
for (const [n, piece] of pieces.filter(({ route }) => route.length > 0).entries()) {
  for (const step of piece.route.slice(0, n % 6)) archive.tickStep(piece.id, step.id, done, 1);
}

function loadOf(n: number): LoadPiece[] {
  return Array.from({ length: LOAD }, (_, k) => {
    const piece = pieces[(n * 7 + k * 13) % COUNT];
    return {
      pieceId: piece?.id ?? '',
      mark: piece?.mark ?? '',
      title: '',
      steel: { id: '1095', title: '1095', composition: { C: 0.95, Mn: 0.4 } },
      section: { shape: 'plate' as const, thicknessMm: 6, massKilograms: null },
      routeStepId: null,
      step: 'normalise' as const,
    };
  });
}
for (let n = 0; n < COUNT; n++) {
  const startedAt = n * 60_000;
  archive.createFiring(
    firingDraft(furnace.id, { status: 'finished', startedAt, endedAt: startedAt + 1, pieces: loadOf(n) }),
  );
}
for (let n = 0; n < 20_000; n++) {
  archive.addObservation({
    pieceId: pieces[n % COUNT]?.id ?? '',
    firingId: null,
    stepId: null,
    at: n,
    by: '',
    note: '',
    seen: { kind: 'hardness', scale: 'HRC', readings: [{ value: 60, position: '' }] },
    createdAt: n,
  });
}
const some = pieces[4321]?.id ?? '';
const middle = pieces[5000]?.id ?? '';

describe(`at ${COUNT} pieces and firings`, () => {
  bench('a page of firings with their marks', () => void archive.firings({ limit: 50 }));
  bench('a page of pieces', () => void archive.pieces({ limit: 50 }));
  bench('a page from the middle', () => void archive.pieces({ limit: 50, after: middle }));
  bench('a piece by its mark', () => void archive.pieces({ mark: 'p4321', archived: 'any', limit: 1 }));
  bench('a search that finds many', () => void archive.pieces({ q: 'chisel 1095', limit: 50 }));
  bench('a search that finds one', () => void archive.pieces({ q: 'number 4321', limit: 50 }));
  bench('a search that finds none', () => void archive.pieces({ q: 'nothing like it', limit: 50 }));
  bench('the history of a piece', () => {
    archive.firingsOfPiece(some);
    archive.observations(some);
  });
  bench(`the bench list of ${OPEN} open pieces`, () => void benchList(archive, 1_000));
});

describe('the bench list by itself', () => {
  const heats = Array.from({ length: 1000 }, (_, n) => ({
    pieceId: `p${n}`,
    step: 'normalise' as const,
    lowCelsius: 800 + ((n * 37) % 100),
    highCelsius: 830 + ((n * 37) % 100),
    scheduleId: null,
    heatLengthMm: 1 + ((n * 11) % 30),
    urgent: false,
    coolsInFurnaceTo: null,
  }));
  const stops = Array.from({ length: MOST_EXACT }, (_, n) => ({
    targetCelsius: 200 + ((n * 337) % 900),
    leavesCelsius: 150 + ((n * 531) % 800),
    urgent: false,
  }));
  bench('batches of 1000 heats', () => void batchesOf(heats));
  bench(`the least order of ${MOST_EXACT} batches`, () => void orderStops(stops, 20));
});

const photo = Buffer.alloc(8 * 1024 * 1024, 7);
describe('a photo of 8 MiB', () => {
  const { id: pieceId } = onDisk.createPiece({ ...draftOf(0), mark: 'A' }, 0);
  const about = { pieceId, firingId: null, stepId: null, at: 1, by: '', note: '', createdAt: 1 };
  const file = { fileName: 'a.jpg', contentType: 'image/jpeg', sha256: 'x' } as const;
  bench('is kept', () => void onDisk.addAttachment({ ...about, file, content: photo }), {
    iterations: 5,
    time: 1,
  });
});
