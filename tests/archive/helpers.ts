import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openArchive } from '../../hub/archive/open.ts';
import type { AlarmRow, Archive, IncomingReading, IntakeWrite } from '../../hub/archive/types.ts';
import type { Firing, FiringJudgement, SegmentResult } from '../../hub/contract/firing.ts';
import type { Schedule, ScheduleDraft } from '../../hub/contract/schedule.ts';
import type { Channel, Furnace } from '../../hub/contract/shop.ts';

/** A round instant to count from: 2026-03-01 08:00 UTC. */
export const T0 = Date.UTC(2026, 2, 1, 8);
export const SECOND = 1000;
export const MINUTE = 60 * SECOND;
export const HOUR = 60 * MINUTE;

export function countingIds(): () => string {
  let count = 0;
  return () => {
    count += 1;
    return `id-${String(count).padStart(6, '0')}`;
  };
}

/** A folder of this test's own, gone when it is over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'soakwatch-archive-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export function temporaryFile(): string {
  return join(temporaryFolder(), 'shop.soakwatch');
}

/** An archive that is closed when the test is over. */
export function openTest(path = ':memory:', simulated = false): Archive {
  const archive = openArchive({ path, ids: countingIds(), simulated, now: T0 });
  onTestFinished(() => archive.close());
  return archive;
}

export function addFurnace(archive: Archive, name = 'Forge'): Furnace {
  return archive.createFurnace({ name, kind: 'gas-forge', ratedCelsius: 1300, note: '' }, T0);
}

export function addChannel(archive: Archive, name = 'chamber', extra: Partial<Channel> = {}): Channel {
  return archive.createChannel(
    {
      node: 'forge-1',
      name,
      label: '',
      quantity: 'temperature',
      unit: null,
      role: 'chamber',
      furnaceId: null,
      possibleLow: null,
      possibleHigh: null,
      staleAfterSeconds: 20,
      ...extra,
    },
    T0,
  );
}

export const scheduleDraft: ScheduleDraft = {
  name: 'Harden 1095',
  note: '',
  displayUnit: 'Cel',
  segments: [
    { kind: 'ramp', targetCelsius: 800, toleranceCelsius: 10, rateCelsiusPerHour: null },
    { kind: 'soak', targetCelsius: 800, toleranceCelsius: 10, durationSeconds: 600 },
  ],
};

export const schedule: Schedule = {
  ...scheduleDraft,
  id: 'schedule-1',
  version: 1,
  createdAt: T0,
  archived: false,
};

export function firingDraft(furnaceId: string, extra: Partial<Firing> = {}): Omit<Firing, 'id'> {
  return {
    furnaceId,
    title: 'Two chisels',
    note: '',
    status: 'running',
    simulated: false,
    startedAt: T0,
    endedAt: null,
    schedule,
    watchedChannels: ['channel-b', 'channel-a'],
    pieces: [],
    createdAt: T0,
    ...extra,
  };
}

export function segmentResult(index: number, extra: Partial<SegmentResult> = {}): SegmentResult {
  return {
    index,
    state: 'done',
    startedAt: T0,
    endedAt: T0 + HOUR,
    startCelsius: 20.25,
    endCelsius: 801.5,
    soakSeconds: 0,
    soakSecondsCore: null,
    soakSecondsAir: 0,
    elapsedSeconds: 3600,
    blindSeconds: 2.5,
    peakCelsius: 803.75,
    lowestCelsius: null,
    meanCelsius: 0.1 + 0.2,
    overshootCelsius: null,
    secondsAboveTolerance: 0,
    meanRateCelsiusPerHour: 781.25,
    steepestRateCelsiusPerHour: null,
    verdict: 'met-with-doubts',
    reasons: [{ code: 'blind', params: { seconds: 2.5, channel: 'chamber', of: null }, text: 'Blind 2.5 s' }],
    ...extra,
  };
}

export function judgement(segments: SegmentResult[], extra: Partial<FiringJudgement> = {}): FiringJudgement {
  return {
    judgedTo: T0 + HOUR,
    judgeVersion: 'test-1',
    segmentIndex: segments.length - 1,
    segments,
    soakSeconds: 12.5,
    soakClockOn: 'coldest-thermocouple',
    soakClockText: 'by the coldest thermocouple',
    pieces: [],
    forecast: null,
    measuredCelsius: 800,
    hottestCelsius: 801,
    targetCelsius: 800,
    lowCelsius: 790,
    highCelsius: 810,
    plannedCelsius: 800,
    rateCelsiusPerHour: -3.5,
    insideTolerance: true,
    blindSince: null,
    arrivalAt: null,
    endsAt: T0 + 2 * HOUR,
    firingEndsAt: T0 + 2 * HOUR,
    nextMove: { code: 'hold', params: { minutes: 11 }, text: 'Hold: 11 min to go' },
    waitsForConfirmation: false,
    verdict: 'pending',
    plan: [{ at: T0, celsius: 20, low: 10, high: 30 }],
    gaps: [{ from: T0, to: T0 + MINUTE }],
    events: [{ at: T0, kind: 'blind', segment: 0, finding: null, params: {}, text: 'Blind' }],
    ...extra,
  };
}

export function alarm(id: string, extra: Partial<AlarmRow> = {}): AlarmRow {
  return {
    id,
    kind: 'overshoot',
    priority: 'warning',
    subject: 'furnace-1',
    firingId: null,
    furnaceId: null,
    params: { celsius: 812.5, channel: 'chamber', limit: null },
    state: 'unacknowledged',
    active: true,
    raisedAt: T0,
    clearedAt: null,
    acknowledgedAt: null,
    acknowledgedBy: null,
    activeSince: T0,
    shelf: null,
    suppression: null,
    outOfService: null,
    ...extra,
  };
}

export function incoming(
  name: string,
  at: number,
  value: number,
  extra: Partial<IncomingReading> = {},
): IncomingReading {
  return { name, quantity: 'temperature', at, value, quality: 'good', ...extra };
}

export function intake(
  node: string,
  readings: readonly IncomingReading[],
  extra: Partial<IntakeWrite> = {},
): IntakeWrite {
  return { node, receivedAt: T0, readings, refusals: [], ...extra };
}
