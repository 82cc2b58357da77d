import { describe, expect, it } from 'vitest';
import type { Archive } from '../../hub/archive/types.ts';
import {
  addChannel,
  addFurnace,
  alarm,
  firingDraft,
  HOUR,
  judgement,
  openTest,
  segmentResult,
  T0,
} from './helpers.ts';

const withCode = (code: string) => expect.objectContaining({ name: 'ArchiveError', code });

function finished(archive: Archive, extra = {}) {
  const furnace = archive.furnaces()[0] ?? addFurnace(archive);
  return archive.createFiring(firingDraft(furnace.id, { status: 'finished', endedAt: T0 + HOUR, ...extra }));
}

describe('a firing', () => {
  it('is kept with its frozen schedule and watched channels, in their order', () => {
    const archive = openTest();
    const firing = archive.createFiring(firingDraft(addFurnace(archive).id));
    expect(firing).toMatchObject({ judgement: null, confirmations: [], status: 'running' });
    expect(firing.watchedChannels).toEqual(['channel-b', 'channel-a']);
    expect(archive.firing(firing.id)).toEqual(firing);
    expect(archive.runningFirings()).toEqual([firing]);
  });

  it('keeps its schedule and channels frozen when its words are changed', () => {
    const archive = openTest();
    const firing = archive.createFiring(firingDraft(addFurnace(archive).id));
    const thawed = { ...firing.schedule, name: 'Another plan' };
    archive.saveFiring({ ...firing, title: 'Three chisels', schedule: thawed, watchedChannels: [] });
    expect(archive.firing(firing.id)).toEqual({ ...firing, title: 'Three chisels' });
  });

  it('is one at a time on a furnace', () => {
    const archive = openTest();
    const furnace = addFurnace(archive);
    const first = archive.createFiring(firingDraft(furnace.id));
    expect(() => archive.createFiring(firingDraft(furnace.id))).toThrow(withCode('conflict'));
    archive.saveFiring({ ...first, status: 'finished', endedAt: T0 + HOUR });
    expect(archive.createFiring(firingDraft(furnace.id)).status).toBe('running');
  });

  it('needs a furnace that is there', () => {
    const archive = openTest();
    expect(() => archive.createFiring(firingDraft('nowhere'))).toThrow(withCode('not-found'));
    expect(() => archive.saveFiring({ ...firingDraft('nowhere'), id: 'x' })).toThrow(withCode('not-found'));
    expect(archive.firings({ limit: 10 })).toEqual([]);
  });

  it('remembers the first confirmation of each segment', () => {
    const archive = openTest();
    const firing = archive.createFiring(firingDraft(addFurnace(archive).id));
    archive.confirmSegment(firing.id, 1, T0 + 5);
    archive.confirmSegment(firing.id, 1, T0 + 9);
    archive.confirmSegment(firing.id, 0, T0 + 2);
    expect(archive.firing(firing.id)?.confirmations).toEqual([
      { at: T0 + 2, segment: 0 },
      { at: T0 + 5, segment: 1 },
    ]);
    expect(() => archive.confirmSegment('other', 0, T0)).toThrow(withCode('not-found'));
  });
});

describe('a judgement', () => {
  it('comes back equal, segment by segment, to the last digit', () => {
    const archive = openTest();
    const { id } = finished(archive);
    const judged = judgement([
      segmentResult(0, { verdict: 'met', reasons: [] }),
      segmentResult(1, { state: 'waiting', startedAt: null, endedAt: null, soakSeconds: 1 / 3 }),
    ]);
    archive.saveJudgement(id, judged);
    expect(archive.firing(id)?.judgement).toEqual(judged);
  });

  it('replaces the one before, with fewer segments too', () => {
    const archive = openTest();
    const { id } = finished(archive);
    archive.saveJudgement(id, judgement([segmentResult(0), segmentResult(1)]));
    const last = judgement([segmentResult(0, { peakCelsius: 700 })], { verdict: 'not-met' });
    archive.saveJudgement(id, last);
    expect(archive.firing(id)?.judgement).toEqual(last);
  });

  it('gives the list its verdict, highest peak and whole soak time', () => {
    const archive = openTest();
    const { id } = finished(archive);
    const segments = [
      segmentResult(0, { peakCelsius: null, soakSeconds: 0 }),
      segmentResult(1, { peakCelsius: 812.25, soakSeconds: 600.5 }),
      segmentResult(2, { peakCelsius: 640, soakSeconds: 60 }),
    ];
    expect(archive.firings({ limit: 1 })).toMatchObject([
      { verdict: 'pending', peakCelsius: null, soakSeconds: 0 },
    ]);
    archive.saveJudgement(id, judgement(segments, { verdict: 'met' }));
    expect(archive.firings({ limit: 1 })).toMatchObject([
      { id, verdict: 'met', peakCelsius: 812.25, soakSeconds: 660.5 },
    ]);
  });

  it('cannot be kept for a firing that is not there', () => {
    const archive = openTest();
    expect(() => archive.saveJudgement('other', judgement([]))).toThrow(withCode('not-found'));
  });
});

describe('deleting a firing', () => {
  it('takes its results, notes and own alarms, and leaves readings and the air alarms', () => {
    const archive = openTest();
    const channel = addChannel(archive);
    archive.readings.append([{ channel: channel.id, at: T0, value: 20, quality: 'good' }]);
    const { id } = finished(archive, { watchedChannels: [channel.id] });
    archive.saveJudgement(id, judgement([segmentResult(0)]));
    archive.addNote({ firingId: id, at: T0, text: 'Scale was thin', by: '', createdAt: T0 });
    archive.saveAlarms([
      alarm('own', { firingId: id, subject: id }),
      alarm('air', { firingId: id, subject: 'shop', kind: 'unsafe-air-first' }),
    ]);
    expect(archive.deleteFiring(id)).toBe(true);
    expect(archive.firing(id)).toBeNull();
    expect(archive.notes(id)).toEqual([]);
    expect(archive.alarms({ limit: 9 })).toMatchObject([{ id: 'air', firingId: null }]);
    expect(archive.readings.range(channel.id, T0, T0)).toHaveLength(1);
  });

  it('is refused while it runs, and does nothing the second time', () => {
    const archive = openTest();
    const firing = archive.createFiring(firingDraft(addFurnace(archive).id));
    expect(() => archive.deleteFiring(firing.id)).toThrow(withCode('conflict'));
    archive.saveFiring({ ...firing, status: 'abandoned', endedAt: T0 + 1 });
    expect(archive.deleteFiring(firing.id)).toBe(true);
    expect(archive.deleteFiring(firing.id)).toBe(false);
  });
});

describe('late readings', () => {
  it('find the firings that are over and watched their channel at that time', () => {
    const archive = openTest();
    const watched = { watchedChannels: ['chamber'] };
    const early = finished(archive, { ...watched, startedAt: T0, endedAt: T0 + HOUR });
    const late = finished(archive, { ...watched, startedAt: T0 + 2 * HOUR, endedAt: T0 + 3 * HOUR });
    finished(archive, { watchedChannels: ['load'] });
    archive.createFiring(firingDraft(early.furnaceId, watched));
    const find = (from: number, to: number) => archive.finishedFiringsWatching('chamber', from, to);
    expect(find(T0 + HOUR, T0 + HOUR)).toEqual([early.id]);
    expect(find(T0 + HOUR + 1, T0 + 2 * HOUR - 1)).toEqual([]);
    expect(find(T0, T0 + 9 * HOUR)).toEqual([early.id, late.id]);
  });
});

describe('notes', () => {
  it('are listed by the instant they speak of', () => {
    const archive = openTest();
    const { id } = finished(archive);
    const late = archive.addNote({ firingId: id, at: T0 + 2, text: 'b', by: 'Ann', createdAt: T0 });
    const early = archive.addNote({ firingId: id, at: T0 + 1, text: 'a', by: '', createdAt: T0 + 9 });
    expect(archive.notes(id)).toEqual([early, late]);
    expect(() => archive.addNote({ ...late, firingId: 'other' })).toThrow(withCode('not-found'));
  });
});
