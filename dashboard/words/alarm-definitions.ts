import type { AlarmDefinitionEntry } from '../../hub/contract/alarm-definition.ts';

/** Words of the table of definitions: why each alarm exists. */

export const SETPOINT_WORDS: Readonly<Record<AlarmDefinitionEntry['setpoint']['from'], string>> = {
  setting: 'a setting of the shop',
  channel: 'set for each channel',
  schedule: 'set for each segment of a schedule',
  rule: 'a rule',
};

export const definitionWords = {
  title: 'Why each alarm exists',
  intro: (count: number) =>
    `${count} alarms, the loudest first. Each must ask something of somebody: what is wrong, what comes of it, what to do, and how long there is.`,
  asking: 'Asking the hub',
  save: 'Save as CSV',
  find: 'Find',
  found: (shown: number, all: number) => `${shown} of ${all}`,
  none: 'No alarm has these words.',
  rank: (rank: number) => `no. ${rank}`,
  dangerToLife: 'danger to life',
  latching: 'latches: stays until it is reset',
  cause: 'Cause',
  consequence: 'If nobody acts',
  action: 'What to do',
  time: 'Time to act',
  atOnce: 'at once',
  setpoint: 'Limit',
  deadband: 'Deadband',
  ofLimit: (percent: string) => `${percent} % of the limit`,
  mostOfTolerance: (percent: string) => `, at most ${percent} % of the tolerance`,
  noDeadband: 'none',
  delays: 'Delay on / off',
  delay: (on: string, off: string) => `${on} / ${off}`,
  after: 'After it returns',
  mustBeSeen: 'waits to be seen',
  goesByItself: 'goes by itself',
  heldBackBy: 'Suppressed by',
  followsFrom: 'May follow from',
  source: 'Source',
  timeSource: 'Source of the time',
} as const;
