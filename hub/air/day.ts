import type { Finding } from '../contract/alarm.ts';
import { requireForward } from '../judging/errors.ts';
import { nextShift } from '../physics/carbon-monoxide/exposure.ts';
import type { AirCell } from './cell.ts';
import type { DayChannel, DayConfig, DayState, DoseState, PastShift } from './day-types.ts';
import { type DecayResult, NO_DECAY, stepDecay } from './decay-watch.ts';
import { dayRules, doseFindings, doseReading, startDose, stepDose } from './dose.ts';
import { startFire, stepFire } from './fire.ts';
import { sourceFindings, stepSource } from './other-source.ts';
import { NO_SENSORS, sensorFindings, stepSensors } from './sensors.ts';

/**
 * The judge of the shop's air over hours: exposure, dose, what the sensors say of each other, and ventilation by the
 * fall of a gas. The level of the instant is `judge.ts`. Pure: the same cells give the same state.
 */

/**
 * A rest of this long without a hot furnace ends a working day. Common practice, no source. In a rest sums are
 * no longer than eight hours; a day that a furnace keeps from ending goes on as long as that furnace is hot.
 */
export const SHIFT_REST_MS = 6 * 3_600_000;
/** What the judge looks back over when it starts: a long working day, and more than any of its windows. */
export const DAY_MS = 12 * 3_600_000;

/** The longest sum in a rest: no longer than any convention's day, so that a week of nothing adds up to nothing. */
const REST_SUM_MS = 8 * 3_600_000;

/** The state at an edge of the grid, epoch ms, before the first reading. */
export function startDay(config: DayConfig, at: number): DayState {
  const doses = Object.fromEntries(monoxide(config).map(({ id }) => [id, startDose(at)]));
  return {
    at,
    shiftStart: at,
    lastShift: null,
    fire: startFire(config),
    doses,
    sensors: NO_SENSORS,
    source: {},
    decays: {},
  };
}

function monoxide(config: DayConfig): DayChannel[] {
  return config.channels.filter(({ gas }) => gas === 'carbon-monoxide');
}

/**
 * The next state. Pure.
 * @throws JudgeError `time-runs-back`
 */
export function stepDay(config: DayConfig, state: DayState, cell: AirCell): DayState {
  requireForward(state.at, cell.from, 'air of the day');
  const fire = stepFire(config, state.fire, cell);
  const begins = isResting(state, cell.from) && beginsAnew(state, fire.lastHotAt === cell.to, cell.from);
  const doses: Record<string, DoseState> = {};
  for (const channel of monoxide(config)) {
    const old = state.doses[channel.id] ?? startDose(state.at);
    doses[channel.id] = stepDose(config, channel, begins ? renewed(config, channel, old, cell) : old, cell);
  }
  return {
    at: cell.to,
    shiftStart: begins ? cell.from : state.shiftStart,
    lastShift: begins ? (endedShift(config, state) ?? state.lastShift) : state.lastShift,
    fire,
    doses,
    sensors: stepSensors(config, state.sensors, fire, cell),
    source: stepSource(config, state.source, fire, cell),
    decays: stepDecays(config, { ...state, fire }, cell),
  };
}

/** Nobody has worked at a furnace for hours, or never: there is no day to sum up. */
function isResting({ fire }: DayState, at: number): boolean {
  return fire.lastHotAt === null || at - fire.lastHotAt >= SHIFT_REST_MS;
}

/** In a rest sums begin anew when the day ends, when the next begins, and three times a day by the clock. */
function beginsAnew({ fire, shiftStart, at }: DayState, isHot: boolean, from: number): boolean {
  const ended = fire.lastHotAt !== null && fire.lastHotAt > shiftStart;
  return isHot || ended || (from % REST_SUM_MS === 0 && at !== shiftStart);
}

/** The day that was still counting one cell ago; null: there was none. */
function endedShift(config: DayConfig, state: DayState): PastShift | null {
  const { lastHotAt } = state.fire;
  if (lastHotAt === null || lastHotAt <= state.shiftStart) return null;
  const exposures = monoxide(config).flatMap((channel) => {
    const dose = state.doses[channel.id];
    return dose === undefined ? [] : [[channel.id, doseReading(config, channel, dose)] as const];
  });
  return { from: state.shiftStart, to: lastHotAt, exposures: Object.fromEntries(exposures) };
}

/**
 * A new day's sums begin at nothing; the rolling windows and the blood run on. After a night without a single
 * reading nobody knows what the air was and nobody is known to have breathed it: then all begins anew, and the
 * coverage says how little is known.
 */
function renewed(config: DayConfig, channel: DayChannel, old: DoseState, cell: AirCell): DoseState {
  const { last } = old.exposure.curve;
  if (last === null || cell.from - last.atMs >= SHIFT_REST_MS) return startDose(cell.from);
  const exposures = { profile: config.profile, rules: dayRules(channel) };
  return { ...old, exposure: nextShift(exposures, old.exposure, cell.from) };
}

function stepDecays(config: DayConfig, state: DayState, cell: AirCell): DayState['decays'] {
  const next: Record<string, DayState['decays'][string]> = {};
  for (const channel of config.channels) {
    if (channel.gas === 'oxygen') continue;
    const others = config.channels
      .filter(({ id, gas }) => id !== channel.id && gas === channel.gas)
      .map(({ id }) => state.decays[id]?.fall?.samples ?? state.decays[id]?.past ?? []);
    const beside = { fire: state.fire, cell, others };
    next[channel.id] = stepDecay(state.decays[channel.id] ?? NO_DECAY, channel, beside);
  }
  return next;
}

/** What holds at the instant the state stands at. */
export function dayFindings(config: DayConfig, state: DayState): Finding[] {
  return [
    ...doseFindings(config, state.doses),
    ...sourceFindings(config, state.source, state.at),
    ...sensorFindings(config, state.sensors, state.at),
  ];
}

/** The last fall at each sensor that gave a figure. */
export function dayDecays(state: DayState): DecayResult[] {
  return Object.values(state.decays).flatMap(({ last }) => (last === null ? [] : [last]));
}
