import type { AlarmKind } from '../contract/alarm.ts';
import { danger, warning } from './define.ts';
import type { AlarmDefinition, Setpoint } from './definitions.ts';

/**
 * The alarms about air and about the sensors that watch it. Means and doses have their delay in themselves; what
 * tells an instant level is quick. All but the two that harm slowly are a danger to life.
 */

export type AirAlarmKind = Extract<AlarmKind, `unsafe-air-${string}` | `air-${string}`>;

const rule = (name: string, unit = ''): Setpoint => ({ from: 'rule', name, unit });
/** Level of the instant: a tenth of the limit back, for half a minute. */
const LEVEL = { dangerToLife: true, offDelayMs: 30_000, deadbandShare: 0.1 } as const;
const AT_ONCE = { ...LEVEL, secondsToAct: 0 } as const;
const PROFILE = 'the profile of limits that the shop chose, by its own body and edition';

export const AIR_DEFINITIONS: Readonly<Record<AirAlarmKind, AlarmDefinition>> = {
  'unsafe-air-idlh': danger({
    ...AT_ONCE,
    rank: 3,
    setpoint: rule('immediately dangerous level of the profile', 'ppm'),
    source: `${PROFILE}; NIOSH (1200 ppm, 1994) where it sets none`,
  }),
  'unsafe-air-second': danger({
    ...AT_ONCE,
    rank: 4,
    // Nobody goes back in unasked: it stands after the level has fallen, until somebody has looked and resets it.
    latching: true,
    setpoint: { from: 'setting', name: 'carbonMonoxideSecondPpm', unit: 'ppm' },
    source: 'common practice: at once; deadband 10 % of the limit',
  }),
  'unsafe-air-ceiling': danger({
    ...AT_ONCE,
    rank: 5,
    setpoint: rule('ceiling or excursion limit of the profile', 'ppm'),
    source: PROFILE,
  }),
  'unsafe-air-saturated': danger({
    rank: 6,
    dangerToLife: true,
    setpoint: { from: 'channel', name: 'possibleHigh', unit: 'ppm' },
    secondsToAct: 0,
    offDelayMs: 30_000,
    source: 'the full scale of the sensor: beyond it nobody knows the level; common practice',
  }),
  'unsafe-air-dose': danger({
    rank: 7,
    dangerToLife: true,
    setpoint: rule('response windows of EN 50291-1 and UL 2034, whichever comes first'),
    secondsToAct: 0,
    offDelayMs: 60_000,
    source: 'EN 50291-1 and UL 2034 windows, public summaries; a third into the window, derived here',
  }),
  'unsafe-air-short-mean': danger({
    rank: 8,
    dangerToLife: true,
    setpoint: rule('short-term limit of the profile, mean of 15 min', 'ppm'),
    secondsToAct: 0,
    offDelayMs: 60_000,
    deadbandShare: 0.1,
    source: PROFILE,
  }),
  'unsafe-air-low-oxygen': danger({
    ...AT_ONCE,
    rank: 9,
    deadbandShare: 0.01,
    setpoint: rule('oxygen below 19.5 %', '%'),
    source: '29 CFR 1910.146 definition of a hazardous atmosphere, quoted; deadband common practice',
  }),
  'unsafe-air-carbon-dioxide-second': danger({
    ...AT_ONCE,
    rank: 10,
    setpoint: rule('carbon dioxide above 30 000 ppm', 'ppm'),
    source: 'NIOSH and ACGIH short-term limit (secondary), applied to the instant reading',
  }),
  'unsafe-air-first': warning({
    ...LEVEL,
    rank: 11,
    setpoint: { from: 'setting', name: 'carbonMonoxideFirstPpm', unit: 'ppm' },
    secondsToAct: 300,
    onDelayMs: 5000,
    source: 'common practice: two samples or 5 s; deadband 10 % of the limit',
  }),
  'unsafe-air-blood': warning({
    rank: 12,
    dangerToLife: true,
    setpoint: rule('estimate of carboxyhaemoglobin at the end of the shift', '%'),
    secondsToAct: 300,
    offDelayMs: 60_000,
    deadbandShare: 0.1,
    source: 'ACGIH BEI 3.5 % (from memory), German BGW 5 % (TRGS 903): the lower; an estimate, earlier only',
  }),
  'unsafe-air-day-mean': warning({
    rank: 13,
    setpoint: rule('limit of the profile for the day, mean by its convention', 'ppm'),
    secondsToAct: 600,
    offDelayMs: 60_000,
    deadbandShare: 0.02,
    source: PROFILE,
  }),
  'unsafe-air-carbon-dioxide-first': warning({
    rank: 14,
    setpoint: rule('carbon dioxide above 5000 ppm', 'ppm'),
    secondsToAct: 600,
    onDelayMs: 60_000,
    offDelayMs: 60_000,
    deadbandShare: 0.1,
    source: 'OSHA, ACGIH, EU and German 8 h limit (secondary), applied to the instant reading',
  }),
  'unsafe-air-high-oxygen': warning({
    ...LEVEL,
    rank: 15,
    deadbandShare: 0.01,
    setpoint: rule('oxygen above 23.5 %', '%'),
    secondsToAct: 60,
    onDelayMs: 5000,
    source: '29 CFR 1910.146 definition of a hazardous atmosphere, quoted; delays common practice',
  }),
  'air-other-source': warning({
    rank: 19,
    setpoint: rule('carbon monoxide 10 ppm up with every furnace cold', 'ppm'),
    secondsToAct: 300,
    onDelayMs: 60_000,
    offDelayMs: 60_000,
    source: 'common practice, no source: well above noise and drift, well below the first limit',
  }),
  'air-sensors-disagree': warning({
    rank: 20,
    setpoint: rule('two sensors apart by half of the higher, and by 20 ppm'),
    secondsToAct: 600,
    onDelayMs: 600_000,
    offDelayMs: 300_000,
    source: 'common practice, no source: places in a room differ, for minutes by less',
  }),
  'air-sensor-flat': warning({
    rank: 21,
    setpoint: rule('a sensor that does not move while the air does'),
    secondsToAct: 600,
    offDelayMs: 60_000,
    source: 'common practice, no source; the delay is in the recognition itself',
  }),
  'air-sensor-overdue': warning({
    rank: 22,
    setpoint: { from: 'channel', name: 'calibrationDueAt, endOfLifeAt', unit: '' },
    secondsToAct: 86_400,
    source: 'the dates that the maker or the shop set for this sensor',
  }),
};
