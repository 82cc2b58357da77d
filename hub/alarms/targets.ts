import type { AlarmMeasure } from '../contract/alarm-review.ts';

/** The figures that alarms are held against, each with its source and standing. */

type Target = Omit<AlarmMeasure, 'measure' | 'value' | 'verdict'>;

const ISA = 'ISA-18.2-2016 Tables 5 to 7, secondary';

export const ALARM_TARGETS: Readonly<Record<AlarmMeasure['measure'], Target>> = {
  'alarms-per-hour': { target: 6, most: 12, source: ISA, standing: 'published' },
  'alarms-per-ten-minutes': {
    target: 1,
    most: 2,
    source: `${ISA}; EEMUA 191 3rd edition: under 1 very likely acceptable, secondary`,
    standing: 'published',
  },
  'most-in-ten-minutes': { target: 10, most: null, source: ISA, standing: 'published' },
  'busy-periods-percent': {
    target: 1,
    most: null,
    source: `${ISA}: share of 10 min periods with more than 10 alarms`,
    standing: 'published',
  },
  'flood-percent': { target: 1, most: null, source: ISA, standing: 'published' },
  'most-frequent-percent': {
    target: 5,
    most: null,
    source: `${ISA}: the ten most frequent, 1 to 5 % of the load; says little where alarms are few`,
    standing: 'published',
  },
  chattering: { target: 0, most: null, source: ISA, standing: 'published' },
  fleeting: {
    target: 0,
    most: null,
    source: `${ISA}; the cut-off of 10 s is one site's rule, secondary`,
    standing: 'site-rule',
  },
  stale: { target: 5, most: null, source: `${ISA}: under 5 on any day, over 24 h`, standing: 'published' },
};

/** A measured figure beside its target. */
export function measured(measure: AlarmMeasure['measure'], value: number): AlarmMeasure {
  const target = ALARM_TARGETS[measure];
  return { measure, value, ...target, verdict: verdictOf(value, target, measure === 'stale') };
}

/** `strict`: the target itself is already too much. */
function verdictOf(value: number, { target, most }: Target, strict: boolean): AlarmMeasure['verdict'] {
  if (strict ? value < target : value <= target) return 'within';
  return most !== null && value <= most ? 'manageable' : 'above';
}
