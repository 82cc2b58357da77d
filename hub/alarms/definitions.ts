import type { AlarmKind, AlarmPriority } from '../contract/alarm.ts';
import type { Likeness } from '../contract/alarm-relations.ts';
import type { ShopSettings } from '../contract/shop.ts';
import { AIR_DEFINITIONS } from './air-definitions.ts';
import { danger, warning } from './define.ts';
import { GAS_DEFINITIONS } from './gas-definitions.ts';
import type { LifeRules } from './life-cycle.ts';

/**
 * The alarms as data: one row a kind, read by every judge, by the life cycle and by the table that people see.
 * The words of the rationalisation are in `contract/words/en-rationale.ts`, what follows from what is in
 * `contract/alarm-relations.ts`. Starting values: set the deadband a little wider than the noise, the on-delay a
 * little longer than a normal spike, then check that there is time to act.
 */
export interface AlarmDefinition extends LifeRules {
  readonly priority: AlarmPriority;
  /** Sorts the list: blindness first, then air, then a probe at fault, then the rest. Smaller is louder. */
  readonly rank: number;
  readonly setpoint: Setpoint;
  readonly onDelayMs: number;
  readonly offDelayMs: number;
  /** Share of the limit by which a value must fall back before the alarm ends; 0: none. */
  readonly deadbandShare: number;
  /** The deadband is never more than this share of the tolerance; null: no tolerance applies. */
  readonly deadbandMostOfTolerance: number | null;
  /** From the announcement to the consequence; 0: at once. */
  readonly secondsToAct: number;
  readonly timeSource: string;
  /** Rules that hold it back while another alarm tells the same trouble. Never for a danger to life. */
  readonly suppressedBy: readonly SuppressionRule[];
  readonly source: string;
}

type NumberSetting = {
  [K in keyof ShopSettings]: ShopSettings[K] extends number ? K : never;
}[keyof ShopSettings];

/** Where the limit stands that the alarm is raised by. */
export type Setpoint =
  | { readonly from: 'setting'; readonly name: NumberSetting; readonly unit: string }
  | { readonly from: 'channel' | 'schedule' | 'rule'; readonly name: string; readonly unit: string };

/** Held back by an alarm of another kind about the same thing. */
export interface SuppressionRule {
  readonly rule: string;
  readonly by: AlarmKind;
  readonly same: Likeness;
}

const STARTING_VALUE =
  'EEMUA 191 / ISA-18.2 starting values, secondary: temperature 1 % of range; delay common practice, shorter than the 60 s starting value because a forge crosses its tolerance faster';
const STALE = 'the delay is the age at which the channel counts as old';
const OLD_CHANNEL: Setpoint = { from: 'channel', name: 'staleAfterSeconds', unit: 's' };

/** A stall that is told of the very channel whose probe is at fault has that probe for its cause. */
const PROBE_AT_FAULT: SuppressionRule = { rule: 'probe-at-fault', by: 'probe-fault', same: 'channel' };

export const ALARM_DEFINITIONS: Readonly<Record<AlarmKind, AlarmDefinition>> = {
  'not-watching-channel': danger({ rank: 0, setpoint: OLD_CHANNEL, secondsToAct: 60, source: STALE }),
  'not-watching-node': danger({
    rank: 1,
    setpoint: { from: 'rule', name: 'the last will of the node', unit: '' },
    secondsToAct: 60,
    source: 'the delay is in the broker: the last will follows the keep-alive',
  }),
  'not-watching-air': danger({
    rank: 2,
    setpoint: OLD_CHANNEL,
    secondsToAct: 0,
    dangerToLife: true,
    source: STALE,
  }),
  ...AIR_DEFINITIONS,
  ...GAS_DEFINITIONS,
  // A reading that is not the furnace's makes what follows from it worthless: it comes before the heat.
  'probe-fault': warning({
    rank: 23,
    setpoint: { from: 'rule', name: 'the marks of a probe at fault', unit: '' },
    secondsToAct: 120,
    offDelayMs: 60_000,
    source:
      'common practice; the on-delay is in the recognition itself, the off-delay lets a jump of one reading be seen',
  }),
  overshoot: warning({
    rank: 34,
    setpoint: { from: 'schedule', name: 'upper end of the tolerance', unit: 'Cel' },
    secondsToAct: 30,
    onDelayMs: 5000,
    offDelayMs: 5000,
    deadbandShare: 0.01,
    deadbandMostOfTolerance: 0.5,
    source: STARTING_VALUE,
  }),
  'overshoot-ahead': warning({
    rank: 35,
    setpoint: { from: 'setting', name: 'overshootAheadSeconds', unit: 's' },
    secondsToAct: 60,
    timeSource: 'measured on the simulated shop: told at least 60 s ahead in nine of ten overshoots',
    onDelayMs: 3000,
    offDelayMs: 15_000,
    source: 'common practice',
  }),
  'soak-stalled': warning({
    rank: 36,
    setpoint: { from: 'setting', name: 'soakStalledSeconds', unit: 's' },
    secondsToAct: 300,
    offDelayMs: 10_000,
    suppressedBy: [PROBE_AT_FAULT],
    source: 'common practice; the on-delay is the setting soakStalledSeconds',
  }),
  'ramp-stalled': warning({
    rank: 37,
    setpoint: { from: 'setting', name: 'rampStalledSeconds', unit: 's' },
    secondsToAct: 60,
    suppressedBy: [PROBE_AT_FAULT],
    source:
      'common practice; the window is the setting rampStalledSeconds, progress is 2 °C or half the plan',
  }),
  // Whoever stands at the wall sees everything else there: it comes last.
  'notify-failed': warning({
    rank: 90,
    setpoint: {
      from: 'rule',
      name: 'six attempts in a row, or a refusal that waiting does not mend',
      unit: '',
    },
    secondsToAct: 600,
    source: 'common practice, no source; the on-delay is in the attempts: 155 s at the longest',
  }),
};

/** Order of two alarms on a list: louder first, then older first. */
export function compareAlarms(
  a: { readonly kind: AlarmKind; readonly raisedAt: number },
  b: { readonly kind: AlarmKind; readonly raisedAt: number },
): number {
  return ALARM_DEFINITIONS[a.kind].rank - ALARM_DEFINITIONS[b.kind].rank || a.raisedAt - b.raisedAt;
}

/** How far a value must fall back below `limit`, in its unit. `tolerance`: half width of the band, or null. */
export function deadbandOf(kind: AlarmKind, limit: number, tolerance: number | null): number {
  const { deadbandShare, deadbandMostOfTolerance } = ALARM_DEFINITIONS[kind];
  const wide = Math.abs(limit) * deadbandShare;
  if (deadbandMostOfTolerance === null || tolerance === null) return wide;
  return Math.min(wide, tolerance * deadbandMostOfTolerance);
}
