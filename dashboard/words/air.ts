import type { AirView } from '../../hub/contract/air.ts';
import type { LimitKind } from '../../hub/contract/compute/exposure.ts';

/** Words of the page about the air. None of them says that air is free of danger. */

type Profile = AirView['profile'];

export const PROFILE_WORDS: Readonly<Record<Profile, string>> = {
  strictest: 'The strictest of all bodies here',
  eu: 'European Union',
  uk: 'United Kingdom',
  germany: 'Germany',
  osha: 'OSHA (USA, law)',
  niosh: 'NIOSH (USA, advice)',
  acgih: 'ACGIH (advice)',
  custom: 'Limits of our own',
};

export const WORK_RATE_WORDS: Readonly<Record<Exclude<AirView['workRate'], 'rest' | 'level-0'>, string>> = {
  light: 'Light work',
  heavy: 'Heavy work (forging)',
  'level-1': 'Level 1: sedentary',
  'level-2': 'Level 2: light',
  'level-3': 'Level 3: moderate',
  'level-4': 'Level 4: heavy',
};

export const LIMIT_WORDS: Readonly<Record<LimitKind, { readonly name: string; readonly long: string }>> = {
  twa: { name: 'The day', long: 'mean of 8 h (TWA)' },
  stel: { name: 'Short', long: 'mean of the last 15 min (STEL)' },
  excursion: { name: 'Peaks', long: 'never above (excursion)' },
  ceiling: { name: 'Ceiling', long: 'at no instant above' },
  idlh: { name: 'Danger to life', long: 'at no instant (IDLH)' },
};

export const FORCE_WORDS = {
  'in-force': 'law or binding list',
  guideline: 'advice',
  superseded: 'no longer in force',
} as const;

export const airWords = {
  title: 'Air',
  caution:
    'An aid, never a certified CO alarm: hang one up and heed it. The local code comes before every number here. Who feels ill goes out and calls for help, whatever stands here.',
  asking: 'Asking the hub about the air',
  oldTitle: 'These figures are old',
  old: (time: string) =>
    `They stood so at ${time}. The hub has not answered since: nobody knows how it is now.`,
  alarmsTitle: 'What the hub calls out now',
  alarmsLast: (time: string) => `What the hub called out last, at ${time}`,
  lastKnown: (time: string) => `last known ${time}`,
  alarmOver: 'This has passed and nobody has acknowledged it yet.',
  toWall: 'Acknowledge on the wall',

  nowTitle: 'Carbon monoxide now',
  noSensor: 'NOBODY WATCHES',
  noSensorLong: 'No carbon monoxide sensor is set up. Nothing on this page knows anything of it.',
  setUp: 'Set one up',
  blind: 'NO READING',
  blindSince: (time: string) => `Silent since ${time}. Nobody knows what the air is like here.`,
  blindNever: 'It has never said anything. Nobody knows what the air is like here.',
  lastValue: (value: string) => `last: ${value}`,
  doubtful: 'NOT BELIEVED',
  doubtfulLong: (value: string) => `It says ${value}, which cannot be taken as a measurement. Nobody knows.`,
  saturated: 'BEYOND THE SENSOR',
  saturatedLong: (value: string) =>
    `It says ${value}, at or past the end of its range. Take it for the worst.`,
  under: (first: string, second: string) => `measured; alarm limits ${first} and ${second} ppm`,
  overFirst: (limit: string) => `ABOVE the first limit, ${limit} ppm`,
  overSecond: (limit: string) => `ABOVE the second limit, ${limit} ppm: out`,
  readAt: (time: string) => `read at ${time}`,
  calibratedAt: (day: string) => `calibrated ${day}`,
  calibrationDue: (day: string) => `calibration due ${day}`,
  calibrationOverdue: (day: string) => `Calibration overdue since ${day}: it may read low.`,
  endOfLife: (day: string) => `Past its end of life (${day}): replace it, do not rely on it.`,
  endOfLifeAt: (day: string) => `end of life ${day}`,
  noDates: 'no calibration date entered',
  othersTitle: 'Other measurements in the room',
  otherBlind: (time: string) => `no reading since ${time}`,
  otherNever: 'never a reading',

  exposureTitle: 'Against the limits',
  shiftSince: (time: string) => `This working day, since ${time}`,
  restSince: (time: string) => `No furnace has been hot for six hours. Counted since ${time}.`,
  sumOver: (hours: string) =>
    `The day’s sum is divided by ${hours} h, however long the work was: the convention of this body.`,
  meanOfShift: (least: string, most: string) =>
    `The mean of the hours worked, at least ${least} h and at most ${most} h: the convention of this body.`,
  ofLimit: (value: string, limit: string) => `${value} of ${limit} ppm`,
  unknownOf: (limit: string) => `UNKNOWN of ${limit} ppm`,
  unknownLast: (value: string, limit: string) => `UNKNOWN, last ${value} of ${limit} ppm`,
  atLeast: (value: string) => `at least ${value} ppm from what was measured`,
  above: 'ABOVE',
  minutesAbove: (minutes: string) => `${minutes} min with the level above it`,
  coverage: (percent: string) => `measured ${percent} % of the time`,
  allUnknown: 'nothing was measured',
  limitTick: 'limit',
  keyMeasured: 'measured',
  keyHeld: 'not measured: the last level stands in',
  noExposure: 'Without a carbon monoxide sensor there is nothing to hold against a limit.',
  peak: (ppm: string, time: string) => `Highest ${ppm} ppm at ${time}.`,
  worstShort: (ppm: string) => `Highest 15 min ${ppm} ppm.`,
  noPeak: 'Highest: unknown.',
  barSaid: (name: string, said: string, standing: string) => `${name}: ${said}. ${standing}`,
  standing: {
    above: 'Above the limit',
    'not-above': 'Not above, which is no claim about the air',
    unknown: 'Unknown',
  },
  doseName: 'Dose of household alarms',
  doseLong: 'EN 50291, UL 2034: full is where such an alarm must sound',
  dose: (percent: string) => `${percent} % full`,

  bloodTitle: 'In the blood, as an estimate',
  bloodNote:
    'Carboxyhaemoglobin (COHb) reckoned for a typical adult at work, from the readings where the sensor hangs. Not a medical statement. A low figure never says that someone is well.',
  bloodBand: (low: string, high: string) => `${low} to ${high} %`,
  bloodBetween: (rate: string) => `from light to heavy work; the shop counts with: ${rate}`,
  bloodHighest: (percent: string) => `Highest of the day: ${percent} %.`,
  bloodUnknown: 'UNKNOWN',
  bloodUnknownLong: 'Too little was measured to reckon with.',
  bloodLimit: (percent: string) => `warning ${percent} %`,

  curveTitle: 'Carbon monoxide over time',
  hours: (hours: number) => `${hours} h`,
  span: 'How far back',
  curveSummary: (hours: number, highest: string) =>
    `Carbon monoxide over the last ${hours} h. Highest ${highest}.`,
  curveNothing: 'no reading',
  readout: (time: string, values: string) => `${time}: ${values}`,
  curveValue: (label: string, value: string) => `${label} ${value}`,
  notMeasured: 'not measured',
  beyond: (names: string) => `Higher than this picture: ${names}.`,
  limitAt: (name: string, ppm: string) => `${name} ${ppm} ppm`,
  hot: (name: string) => `${name} hot`,
  hotUnknown: (name: string) => `${name}: nobody knows whether it is hot`,
  gapOf: (label: string) => `${label} silent`,
  stripSaid: (name: string, stretches: string) => `${name}: ${stretches}`,
  stripNone: 'not in this time',
  stretch: (from: string, to: string) => `${from} to ${to}`,

  lastShiftTitle: 'The working day before',
  lastShiftSpan: (from: string, to: string) => `${from} to ${to}, as far as the hub has seen it`,
  lastShiftNone: 'The hub has seen no working day end in the last twelve hours.',
  sensor: 'Sensor',
  dayMean: 'Mean of the day',
  highest15: 'Highest 15 min',
  highest: 'Highest',
  measured: 'Measured',
  aboveLimits: 'Above',
  unknown: 'unknown',
  none: '–',
  atLeastPpm: (ppm: string) => `at least ${ppm} ppm`,

  limitsTitle: 'Whose limits',
  limitsCaption: (profile: string) => `Limits: ${profile}`,
  limitHead: 'Limit',
  ppmHead: 'ppm',
  bodyHead: 'Set by',
  editionHead: 'Edition',
  fromHead: 'Known from',
  change: 'Change in Setup',
  limitsNote: 'A limit is a ceiling on risk, never a line below which air is free of danger.',

  noticesTitle: 'What the numbers do not tell',
} as const;
