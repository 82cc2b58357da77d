import { z } from 'zod';
import { Alarm } from '../../hub/contract/alarm.ts';
import {
  FiringDetail,
  type FiringDraft,
  type FiringPatch,
  type FiringStatus,
  FiringSummary,
  type FiringVerdict,
  Note,
  type NoteDraft,
} from '../../hub/contract/firing.ts';
import { FiringFindings, FiringRecord } from '../../hub/contract/firing-record.ts';
import { FiringProbe } from '../../hub/contract/probe.ts';
import { ReadingSeries } from '../../hub/contract/reading.ts';
import { type DisplayUnit, Schedule, type ScheduleDraft } from '../../hub/contract/schedule.ts';
import { type AirApi, createAirApi } from './air-client.ts';
import { type AlarmApi, createAlarmApi } from './alarm-client.ts';
import { type ComputeApi, createComputeApi } from './compute-client.ts';
import { createGasApi, type GasApi } from './gas-client.ts';
import { createNotifyApi, type NotifyApi } from './notify-client.ts';
import { createPieceApi, type PieceApi } from './piece-client.ts';
import { API, asked, createSend, type Fetch } from './request.ts';
import { createReviewApi, type ReviewApi } from './review-client.ts';
import { createSetupApi, type SetupApi } from './setup-client.ts';
import { createSteelApi, type SteelApi } from './steel-client.ts';

/** What a person sends, before defaults are filled in. */
export type FiringStart = z.input<typeof FiringDraft>;
export type FiringChange = z.input<typeof FiringPatch>;
export type ScheduleInput = z.input<typeof ScheduleDraft>;
export type NoteInput = z.input<typeof NoteDraft>;

export interface Span {
  /** Epoch ms; both ends included. */
  readonly from: number;
  readonly to: number;
  /** Most readings wanted. */
  readonly points: number;
}

export interface FiringQuery {
  readonly status?: FiringStatus;
  readonly furnaceId?: string;
  readonly scheduleId?: string;
  readonly verdict?: FiringVerdict;
  readonly simulated?: 'yes' | 'no';
  /** Words that must all stand in title, note, schedule, mark or furnace. */
  readonly q?: string;
  /** Begun at or after this instant, epoch ms. */
  readonly from?: number;
  /** The id of the last row of the page before. */
  readonly after?: string;
  /** Only firings that started before this instant, epoch ms: for the next page of a long list. */
  readonly before?: number;
  readonly limit?: number;
}

export interface AlarmQuery {
  readonly state?: 'open' | 'all';
  readonly firingId?: string;
  readonly limit?: number;
}

/** Every question the screens ask the hub. Each answer is parsed; each failure is an `ApiError`. */
export interface Api {
  readonly setup: SetupApi;
  readonly notify: NotifyApi;
  readonly compute: ComputeApi;
  readonly steels: SteelApi;
  readonly pieces: PieceApi;
  readonly alarms: AlarmApi;
  readonly review: ReviewApi;
  readonly air: AirApi;
  readonly gas: GasApi;
  listSchedules(): Promise<Schedule[]>;
  schedule(id: string): Promise<Schedule>;
  createSchedule(draft: ScheduleInput): Promise<Schedule>;
  changeSchedule(id: string, draft: ScheduleInput): Promise<Schedule>;
  deleteSchedule(id: string): Promise<void>;
  listFirings(query?: FiringQuery): Promise<FiringSummary[]>;
  firing(id: string): Promise<FiringDetail>;
  startFiring(draft: FiringStart): Promise<FiringDetail>;
  changeFiring(id: string, patch: FiringChange): Promise<FiringDetail>;
  deleteFiring(id: string): Promise<void>;
  confirmSegment(id: string, segment: number): Promise<FiringDetail>;
  finishFiring(id: string, abandoned: boolean): Promise<FiringDetail>;
  listNotes(firingId: string): Promise<Note[]>;
  addNote(firingId: string, note: NoteInput): Promise<Note>;
  record(firingId: string): Promise<FiringRecord>;
  /** What came of it for each piece, without its readings. */
  findings(firingId: string): Promise<FiringFindings>;
  /** The ± and the hours above its limit of each watched channel. */
  firingProbes(firingId: string): Promise<FiringProbe[]>;
  readings(channelId: string, span: Span): Promise<ReadingSeries>;
  listAlarms(query?: AlarmQuery): Promise<Alarm[]>;
  acknowledge(alarmId: string, by: string): Promise<Alarm>;
}

/** Where a firing's record can be saved from, as a file. */
export function recordAddress(firingId: string, format: 'json' | 'csv', unit: DisplayUnit): string {
  return `${API}/firings/${encodeURIComponent(firingId)}/record${asked({ format, unit })}`;
}

/** A client of the hub at `base` (empty: where the page came from). `fetchLike` is the browser's `fetch`. */
export function createApi(fetchLike: Fetch, base = ''): Api {
  const { send, sendForNothing } = createSend(fetchLike, base);
  const at = (folder: string, id: string, rest = '') => `${API}/${folder}/${encodeURIComponent(id)}${rest}`;
  return {
    setup: createSetupApi(send, sendForNothing),
    notify: createNotifyApi(send, sendForNothing),
    compute: createComputeApi(send),
    steels: createSteelApi(send, sendForNothing),
    pieces: createPieceApi(send, sendForNothing),
    alarms: createAlarmApi(send),
    review: createReviewApi(send, sendForNothing),
    air: createAirApi(send),
    gas: createGasApi(send, sendForNothing),
    listSchedules: () => send({ method: 'GET', path: `${API}/schedules` }, z.array(Schedule)),
    schedule: (id) => send({ method: 'GET', path: at('schedules', id) }, Schedule),
    createSchedule: (body) => send({ method: 'POST', path: `${API}/schedules`, body }, Schedule),
    changeSchedule: (id, body) => send({ method: 'PUT', path: at('schedules', id), body }, Schedule),
    deleteSchedule: (id) => sendForNothing({ method: 'DELETE', path: at('schedules', id) }),
    listFirings: (query) =>
      send({ method: 'GET', path: `${API}/firings${asked(query)}` }, z.array(FiringSummary)),
    firing: (id) => send({ method: 'GET', path: at('firings', id) }, FiringDetail),
    startFiring: (body) => send({ method: 'POST', path: `${API}/firings`, body }, FiringDetail),
    changeFiring: (id, body) => send({ method: 'PATCH', path: at('firings', id), body }, FiringDetail),
    deleteFiring: (id) => sendForNothing({ method: 'DELETE', path: at('firings', id) }),
    confirmSegment: (id, segment) =>
      send({ method: 'POST', path: at('firings', id, '/confirm'), body: { segment } }, FiringDetail),
    finishFiring: (id, abandoned) =>
      send({ method: 'POST', path: at('firings', id, '/finish'), body: { abandoned } }, FiringDetail),
    listNotes: (id) => send({ method: 'GET', path: at('firings', id, '/notes') }, z.array(Note)),
    addNote: (id, body) => send({ method: 'POST', path: at('firings', id, '/notes'), body }, Note),
    record: (id) => send({ method: 'GET', path: at('firings', id, '/record?format=json') }, FiringRecord),
    findings: (id) => send({ method: 'GET', path: at('firings', id, '/findings') }, FiringFindings),
    firingProbes: (id) => send({ method: 'GET', path: at('firings', id, '/probes') }, z.array(FiringProbe)),
    readings: (id, { from, to, points }) =>
      send(
        { method: 'GET', path: at('channels', id, `/readings${asked({ from, to, points })}`) },
        ReadingSeries,
      ),
    listAlarms: (query) => send({ method: 'GET', path: `${API}/alarms${asked(query)}` }, z.array(Alarm)),
    acknowledge: (id, by) =>
      send({ method: 'POST', path: at('alarms', id, '/acknowledge'), body: { by } }, Alarm),
  };
}
