import type { AlarmKind } from '../contract/alarm.ts';
import { danger, warning } from './define.ts';
import type { AlarmDefinition, Setpoint, SuppressionRule } from './definitions.ts';

/**
 * The alarms about gas. What may put unburnt gas into the room is a danger to life and is told without a delay: its
 * delay is in the recognition. The rest warns, and waits for what a hand at the regulator does in passing.
 */

export type GasAlarmKind = Extract<AlarmKind, `gas-${string}`>;

const rule = (name: string, unit = ''): Setpoint => ({ from: 'rule', name, unit });
const TRADE = 'trade practice (common practice, no source); the cuts are derived here';
/** Told apart from its neighbours first; then this long, so that a hand at the regulator is not told. */
const SUPPLY = { onDelayMs: 30_000, offDelayMs: 0, secondsToAct: 120 } as const;

/** The same shortage told by its cause. */
const TOLD_BY_CAUSE: readonly SuppressionRule[] = (
  ['gas-empty', 'gas-valve-shut', 'gas-chill', 'gas-restricted', 'gas-droop', 'gas-lost'] as const
).map((by) => ({ rule: 'told-by-its-cause', by, same: 'furnace' }));

export const GAS_DEFINITIONS: Readonly<Record<GasAlarmKind, AlarmDefinition>> = {
  'gas-flame-out': danger({
    rank: 16,
    dangerToLife: true,
    setpoint: rule('chamber cools faster than with a flame, pressure there', 'Cel'),
    secondsToAct: 0,
    offDelayMs: 20_000,
    source:
      'heat balance of a small forge, derived here: 4 % of the excess in two minutes, and 25 K at least',
  }),
  'gas-escaping': danger({
    rank: 17,
    dangerToLife: true,
    setpoint: rule('the cylinder loses mass that no burner takes', 'kg/h'),
    secondsToAct: 0,
    source: 'mass lost past a dead outlet or a shut burner, by the scale; derived here',
  }),
  'gas-on-cold': danger({
    rank: 18,
    dangerToLife: true,
    setpoint: rule('pressure for three minutes and nothing hot', 's'),
    secondsToAct: 0,
    offDelayMs: 20_000,
    source: 'common practice, no source: a forge that burns shows it within three minutes',
  }),
  'gas-empty': warning({ ...SUPPLY, rank: 24, setpoint: rule('no liquid left', 'kg'), source: TRADE }),
  'gas-valve-shut': warning({
    ...SUPPLY,
    rank: 25,
    setpoint: rule('outlet gone at once', 'Pa'),
    source: TRADE,
  }),
  'gas-creep': warning({
    ...SUPPLY,
    rank: 26,
    setpoint: rule('outlet climbs with nothing flowing', 'Pa'),
    source: `regulator practice: a leaking seat, stop use; ${TRADE}`,
  }),
  'gas-chill': warning({
    ...SUPPLY,
    rank: 27,
    setpoint: rule('cylinder too cold to feed the regulator', 'Pa'),
    source: `boiling line of propane (Lemmon, McLinden and Wagner 2009, from memory); ${TRADE}`,
  }),
  'gas-restricted': warning({
    ...SUPPLY,
    rank: 28,
    setpoint: rule('less flows at good cylinder pressure', 'kg/h'),
    source: TRADE,
  }),
  'gas-droop': warning({
    ...SUPPLY,
    rank: 29,
    setpoint: rule('outlet falls as the flow rises', 'Pa'),
    source: TRADE,
  }),
  'gas-lost': warning({
    ...SUPPLY,
    rank: 30,
    setpoint: rule('outlet gone while heat is wanted, cause not told', 'Pa'),
    source: TRADE,
  }),
  'gas-will-not-last': warning({
    rank: 31,
    setpoint: rule('hours of gas left against hours of heat to go', 'h'),
    secondsToAct: 900,
    onDelayMs: 60_000,
    offDelayMs: 60_000,
    deadbandShare: 0.15,
    suppressedBy: [{ rule: 'told-by-its-cause', by: 'gas-empty', same: 'furnace' }],
    source: 'mass over flow, the middle of the range; delays common practice',
  }),
  'gas-off-band': warning({
    rank: 32,
    setpoint: rule('pressure band of the furnace', 'Pa'),
    secondsToAct: 60,
    onDelayMs: 60_000,
    offDelayMs: 20_000,
    deadbandShare: 0.05,
    suppressedBy: TOLD_BY_CAUSE,
    source: 'the band that the shop set for this furnace; delays common practice',
  }),
  'gas-left-on': warning({
    rank: 33,
    setpoint: rule('the closing time of the shop'),
    secondsToAct: 600,
    onDelayMs: 300_000,
    offDelayMs: 20_000,
    source: 'common practice, no source: five minutes to close up',
  }),
};
