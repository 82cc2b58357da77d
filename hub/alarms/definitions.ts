import type { AlarmKind, AlarmPriority } from '../contract/alarm.ts';

/**
 * The alarms as data: one row a kind, read by every judge. Starting values: set the deadband a little wider
 * than the noise, the on-delay a little longer than a normal spike, then check that there is time to act.
 */
export interface AlarmDefinition {
  readonly priority: AlarmPriority;
  /** Sorts the list: blindness first, then air, then a probe at fault, then the rest. Smaller is louder. */
  readonly rank: number;
  readonly onDelayMs: number;
  readonly offDelayMs: number;
  /** Share of the limit by which a value must fall back before the alarm ends; 0: none. */
  readonly deadbandShare: number;
  /** The deadband is never more than this share of the tolerance; null: no tolerance applies. */
  readonly deadbandMostOfTolerance: number | null;
  readonly source: string;
}

const STARTING_VALUE =
  'EEMUA 191 / ISA-18.2 starting values, secondary: temperature 1 % of range; delay common practice, shorter than the 60 s starting value because a forge crosses its tolerance faster';

export const ALARM_DEFINITIONS: Readonly<Record<AlarmKind, AlarmDefinition>> = {
  'not-watching-channel': danger(0, 'the delay is the age at which the channel counts as old'),
  'not-watching-node': danger(1, 'the delay is in the broker: the last will follows the keep-alive'),
  'not-watching-air': danger(2, 'the delay is the age at which the channel counts as old'),
  'unsafe-air-second': {
    ...danger(3, 'common practice: at once; deadband 10 % of the limit'),
    offDelayMs: 30_000,
    deadbandShare: 0.1,
  },
  'unsafe-air-first': {
    priority: 'warning',
    rank: 4,
    onDelayMs: 5000,
    offDelayMs: 30_000,
    deadbandShare: 0.1,
    deadbandMostOfTolerance: null,
    source: 'common practice: two samples or 5 s; deadband 10 % of the limit',
  },
  // A reading that is not the furnace's makes what follows from it worthless: it comes before the heat.
  'probe-fault': {
    priority: 'warning',
    rank: 5,
    onDelayMs: 0,
    offDelayMs: 60_000,
    deadbandShare: 0,
    deadbandMostOfTolerance: null,
    source:
      'common practice; the on-delay is in the recognition itself, the off-delay lets a jump of one reading be seen',
  },
  overshoot: {
    priority: 'warning',
    rank: 6,
    onDelayMs: 5000,
    offDelayMs: 5000,
    deadbandShare: 0.01,
    deadbandMostOfTolerance: 0.5,
    source: STARTING_VALUE,
  },
  'overshoot-ahead': {
    priority: 'warning',
    rank: 7,
    onDelayMs: 10_000,
    offDelayMs: 15_000,
    deadbandShare: 0,
    deadbandMostOfTolerance: null,
    source: 'common practice',
  },
  'soak-stalled': {
    priority: 'warning',
    rank: 8,
    onDelayMs: 0,
    offDelayMs: 10_000,
    deadbandShare: 0,
    deadbandMostOfTolerance: null,
    source: 'common practice; the on-delay is the setting soakStalledSeconds',
  },
  'ramp-stalled': {
    priority: 'warning',
    rank: 9,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandShare: 0,
    deadbandMostOfTolerance: null,
    source:
      'common practice; the window is the setting rampStalledSeconds, progress is 2 °C or half the plan',
  },
};

function danger(rank: number, source: string): AlarmDefinition {
  return {
    priority: 'danger',
    rank,
    onDelayMs: 0,
    offDelayMs: 0,
    deadbandShare: 0,
    deadbandMostOfTolerance: null,
    source,
  };
}

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
