import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import type { Finding, Params } from '../contract/alarm.ts';
import { type ConditionState, QUIET, stepCondition } from '../judging/condition.ts';
import type { AirCell } from './cell.ts';
import type { DayChannel, DayConfig } from './day-types.ts';
import type { FireState } from './fire.ts';
import { type FlatTrack, type FlatWhy, stepFlat, UNTOUCHED } from './flat.ts';

/**
 * What the gas sensors say about each other and about themselves: one that does not move, two that disagree, one
 * past its date. A sensor that is flat is not compared: it has its own alarm, and that is the cause.
 */

/** Places in a room differ; for ten minutes and by this much they should not. Common practice, no source. */
const APART_PPM = 20;
const APART_SHARE = 0.5;

export interface SensorState {
  readonly flat: Readonly<Record<string, FlatTrack>>;
  readonly flatHeld: Readonly<Record<string, ConditionState>>;
  /** By "first second" of two channel ids. */
  readonly apart: Readonly<Record<string, ApartTrack>>;
}

interface ApartTrack {
  readonly a: number;
  readonly b: number;
  readonly condition: ConditionState;
}

export const NO_SENSORS: SensorState = { flat: {}, flatHeld: {}, apart: {} };

/** The next state. Pure. */
export function stepSensors(
  config: DayConfig,
  state: SensorState,
  fire: FireState,
  cell: AirCell,
): SensorState {
  const flat: Record<string, FlatTrack> = {};
  const flatHeld: Record<string, ConditionState> = {};
  const burning = fire.furnaces.some((furnace) => furnace.burning === true);
  for (const channel of config.channels) {
    // Oxygen that stays where it belongs shows one number for days.
    if (channel.gas === 'oxygen') continue;
    const peers = config.channels.filter(({ id, gas }) => id !== channel.id && gas === channel.gas);
    const track = stepFlat(state.flat[channel.id] ?? UNTOUCHED, channel, { cell, peers, burning });
    flat[channel.id] = track;
    const signal = { active: cell.values[channel.id] === undefined ? null : track.why !== null, at: cell.to };
    const before = state.flatHeld[channel.id] ?? QUIET;
    flatHeld[channel.id] = stepCondition(before, signal, ALARM_DEFINITIONS['air-sensor-flat']);
  }
  return { flat, flatHeld, apart: stepApart(config, state, flatHeld, cell) };
}

function stepApart(
  config: DayConfig,
  state: SensorState,
  flat: SensorState['flatHeld'],
  cell: AirCell,
): SensorState['apart'] {
  const next: Record<string, ApartTrack> = {};
  for (const [first, second] of pairs(config)) {
    const key = `${first.id} ${second.id}`;
    const old = state.apart[key] ?? { a: 0, b: 0, condition: QUIET };
    const a = cell.values[first.id]?.mean ?? null;
    const b = cell.values[second.id]?.mean ?? null;
    const isFlat = flat[first.id]?.raised === true || flat[second.id]?.raised === true;
    const active = isFlat ? false : a === null || b === null ? null : isApart(a, b);
    const condition = stepCondition(
      old.condition,
      { active, at: cell.to },
      ALARM_DEFINITIONS['air-sensors-disagree'],
    );
    next[key] = { a: a ?? old.a, b: b ?? old.b, condition };
  }
  return next;
}

function pairs(config: DayConfig): (readonly [DayChannel, DayChannel])[] {
  const monoxide = config.channels.filter(({ gas }) => gas === 'carbon-monoxide');
  return monoxide.flatMap((first, i) => monoxide.slice(i + 1).map((second) => [first, second] as const));
}

function isApart(a: number, b: number): boolean {
  return Math.abs(a - b) > Math.max(APART_PPM, APART_SHARE * Math.max(a, b));
}

export function sensorFindings(config: DayConfig, state: SensorState, at: number): Finding[] {
  return [...apartFindings(config, state, at), ...flatFindings(config, state, at), ...overdue(config, at)];
}

function apartFindings(config: DayConfig, state: SensorState, at: number): Finding[] {
  return pairs(config).flatMap(([first, second]) => {
    const track = state.apart[`${first.id} ${second.id}`];
    if (track?.condition.raised !== true) return [];
    const firstIsHigher = track.a >= track.b;
    const [high, low] = firstIsHigher ? [first, second] : [second, first];
    const params = {
      ppm: Math.max(track.a, track.b),
      otherPpm: Math.min(track.a, track.b),
      channel: high.id,
      label: high.label,
      other: low.id,
      otherLabel: low.label,
    };
    const subject = `${first.id} ${second.id}`;
    return [{ kind: 'air-sensors-disagree' as const, subject, since: track.condition.since ?? at, params }];
  });
}

function flatFindings(config: DayConfig, state: SensorState, at: number): Finding[] {
  return config.channels.flatMap((channel) => {
    const held = state.flatHeld[channel.id];
    const track = state.flat[channel.id];
    if (held?.raised !== true || track === undefined) return [];
    const why: FlatWhy = track.why ?? 'still';
    const seconds = track.since === null ? null : (at - track.since) / 1000;
    const params: Params = { ppm: track.value, seconds, why, channel: channel.id, label: channel.label };
    return [{ kind: 'air-sensor-flat' as const, subject: channel.id, since: held.since ?? at, params }];
  });
}

const DAY_MS = 86_400_000;

/** The end of its life is told before a calibration that is due: no calibration helps then. */
function overdue(config: DayConfig, at: number): Finding[] {
  return config.channels.flatMap(({ id, label, endOfLifeAt, calibrationDueAt }) => {
    const dead = endOfLifeAt !== null && at >= endOfLifeAt;
    const since = dead ? endOfLifeAt : calibrationDueAt;
    if (since === null || at < since) return [];
    const what = dead ? 'end-of-life' : 'calibration';
    const params = { what, dueAt: since, days: (at - since) / DAY_MS, channel: id, label };
    return [{ kind: 'air-sensor-overdue' as const, subject: id, since, params }];
  });
}
