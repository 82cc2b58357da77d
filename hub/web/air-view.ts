import type { z } from 'zod';
import type { DayChannel, DayConfig, DayState } from '../air/day-types.ts';
import { BLOOD_LIMIT_PERCENT, doseReading } from '../air/dose.ts';
import type { Archive } from '../archive/types.ts';
import type { AirExposure, AirSensorNow, AirView } from '../contract/air.ts';
import type { Channel } from '../contract/shop.ts';
import { freshness } from '../judging/held.ts';
import { cohbRange } from '../physics/carbon-monoxide/carboxyhaemoglobin-course.ts';
import { LIMIT_KINDS } from '../physics/carbon-monoxide/limits.ts';
import { ventilationView } from './air-ventilation.ts';
import { exposureAnswer, limitAnswer, noticesOf } from './routes/compute/air-answers.ts';
import type { Frozen } from './routes/compute/computation.ts';

/** What the page about the air shows, out of the judges' states and the archive. It adds no judgement. */

interface Known {
  readonly archive: Archive;
  readonly config: DayConfig;
  readonly state: DayState;
  readonly now: number;
}

export function airView({ archive, config, state, now }: Known): Frozen<AirView> {
  const { settings } = archive.shop();
  const { profile, blood } = config;
  const sensors = archive
    .channels()
    .filter((channel) => channel.adopted && !channel.archived && channel.role === 'room-air')
    .map((channel) => sensorNow(channel, now));
  return {
    now,
    judgedTo: state.at,
    profile: profile.id,
    convention: profile.convention,
    workRate: settings.workRate,
    constants: blood.chosen,
    firstPpm: settings.carbonMonoxideFirstPpm,
    secondPpm: settings.carbonMonoxideSecondPpm,
    limits: LIMIT_KINDS.flatMap((kind) => {
      const limit = profile[kind];
      return limit === null ? [] : [{ kind, limit: limitAnswer(limit) }];
    }),
    sensors,
    shift: shiftOf(state),
    countedFrom: state.shiftStart,
    lastShift: lastShiftOf(config, state),
    exposure: config.channels.flatMap((channel) => exposureOf(config, state, channel)),
    furnaces: state.fire.furnaces.map(({ id, hot, burning }, i) => {
      return { id, name: config.furnaces[i]?.name ?? '', hot, burning };
    }),
    fires: state.fire.stretches,
    ventilation: ventilationView({ archive, config, state, highestPpm: highestNow(sensors) }),
    notices: noticesOf([
      'not-a-safety-device',
      'no-claim',
      'where-it-hangs',
      'gaps-are-held',
      'may-be-hydrogen',
      'alarm-is-no-evidence',
      'estimate-for-an-adult',
      'holds-for-that-hour',
    ]),
  };
}

/** A day goes on while a furnace is hot or was so within its rest; in a rest there is none. */
function shiftOf({ fire, shiftStart, at }: DayState): AirView['shift'] {
  if (fire.lastHotAt === null || fire.lastHotAt <= shiftStart) return null;
  return { from: shiftStart, to: at };
}

function lastShiftOf(config: DayConfig, { lastShift }: DayState): Frozen<AirView>['lastShift'] {
  if (lastShift === null) return null;
  const { from, to, exposures } = lastShift;
  const exposure = config.channels.flatMap(({ id, label }) => {
    const reading = exposures[id];
    return reading === undefined ? [] : [{ channel: id, label, ...exposureAnswer(reading) }];
  });
  return { from, to, exposure };
}

function sensorNow(channel: Channel, now: number): z.infer<typeof AirSensorNow> {
  const { id, label, name, quantity, baseUnit, latest, staleAfterSeconds } = channel;
  const { calibratedAt, calibrationDueAt, endOfLifeAt } = channel;
  const good = latest?.quality === 'good' ? latest : null;
  const held =
    good === null ? { seen: false as const } : { seen: true as const, value: good.value, goodAt: good.at };
  const fresh = freshness(held, staleAfterSeconds, now) === 'fresh';
  return {
    channel: id,
    label: label || name,
    gas: quantity,
    unit: baseUnit,
    value: fresh && good !== null ? good.value : null,
    at: good?.at ?? null,
    fresh,
    calibratedAt,
    calibrationDueAt,
    endOfLifeAt,
  };
}

function highestNow(sensors: readonly z.infer<typeof AirSensorNow>[]): number | null {
  const levels = sensors.flatMap(({ gas, value }) =>
    gas === 'carbon-monoxide' && value !== null ? [value] : [],
  );
  return levels.length === 0 ? null : Math.max(...levels);
}

function exposureOf(
  config: DayConfig,
  state: DayState,
  channel: DayChannel,
): Frozen<z.infer<typeof AirExposure>>[] {
  const dose = state.doses[channel.id];
  if (dose === undefined) return [];
  const { low, high } = cohbRange(dose.cohb.band);
  const blood = {
    lowPercent: low,
    chosenPercent: dose.cohb.band.chosen,
    highPercent: high,
    highestPercent: cohbRange(dose.cohb.highest).high,
    limitPercent: BLOOD_LIMIT_PERCENT,
  };
  const doseShare = Math.max(dose.en.dose, dose.ul.dose);
  const reading = exposureAnswer(doseReading(config, channel, dose));
  return [{ channel: channel.id, label: channel.label, ...reading, blood, doseShare }];
}
