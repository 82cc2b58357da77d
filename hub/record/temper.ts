import type { ScheduleBasis } from '../contract/schedule-basis.ts';
import type { Answer } from '../physics/steel/estimate.ts';
import { equivalentHoursAtPeak } from '../physics/steel/temper-history.ts';
import { temperedHardness } from '../physics/steel/tempered-hardness.ts';
import type { PlanPiece } from '../planning/types.ts';
import { curveOf, type PieceHeat, type Side } from './heat.ts';
import { safely } from './safely.ts';
import { doubt, type Figure, good, note, type Reason, wrong } from './types.ts';

/** What a temper came to: its parameter over the whole curve, and the hardness that it should have left. */

export interface TemperFound {
  readonly figures: readonly Figure[];
  readonly reasons: readonly Reason[];
}

const HOLLOMON_JAFFE = 'Hollomon and Jaffe 1945, added up over the curve';

export function temperFound(plan: PlanPiece, heat: PieceHeat, basis: ScheduleBasis | undefined): TemperFound {
  if (plan.step !== 'temper' || heat.points.length < 2) return { figures: [], reasons: [] };
  const [low, value, high] = (['low', 'value', 'high'] as const).map((side) => temperOf(plan, heat, side));
  if (value == null || low == null || high == null) {
    return { figures: [noTemper], reasons: [doubt('temper-not-known')] };
  }
  const hardness = banded(low.hardness, value.hardness, high.hardness);
  return {
    figures: [
      figure('temper-parameter', 'K', { low: low.parameter, value: value.parameter, high: high.parameter }),
      figure('temper-hours', 'h', { low: value.hours, value: value.hours, high: value.hours }),
      hardness === null ? noTemper : hardnessFigure(hardness, value.hardness),
    ],
    reasons: hardness === null ? [doubt('temper-not-known')] : [hardnessReason(hardness, wantedOf(basis))],
  };
}

interface Temper {
  readonly parameter: number;
  readonly hours: number;
  readonly hardness: Answer;
}

function temperOf({ steel }: PlanPiece, { points }: PieceHeat, side: Side): Temper | null {
  const history = { kind: 'curve', readings: curveOf(points, 'core', side) } as const;
  return safely(() => {
    const { parameter, constant, hardnessHrc } = temperedHardness(steel, history);
    return { parameter, hours: equivalentHoursAtPeak(history, constant), hardness: hardnessHrc };
  });
}

interface Hardness {
  readonly low: number;
  readonly value: number;
  readonly high: number;
}

/** A colder core is left harder: its upper end is the upper end, save for secondary hardening, so all are asked. */
function banded(cold: Answer, likely: Answer, hot: Answer): Hardness | null {
  if (likely.value === null) return null;
  const all = [cold, likely, hot].flatMap((answer) => (answer.value === null ? [] : [answer]));
  return {
    low: Math.min(...all.map(({ low }) => low)),
    value: likely.value,
    high: Math.max(...all.map(({ high }) => high)),
  };
}

function figure(kind: Figure['kind'], unit: Figure['unit'], band: Hardness): Figure {
  const { value } = band;
  const [low, high] = [Math.min(band.low, value), Math.max(band.high, value)];
  return {
    kind,
    nature: 'estimate',
    unit,
    low,
    value,
    high,
    cautions: [],
    noClaim: null,
    source: HOLLOMON_JAFFE,
  };
}

function hardnessFigure(band: Hardness, { source, flags }: Answer): Figure {
  const below = flags.some(({ code }) => code === 'below-scale');
  return {
    ...figure('temper-hardness', 'HRC', band),
    cautions: below ? ['hardened-through', 'below-scale'] : ['hardened-through'],
    source: source ?? '',
  };
}

const noTemper: Figure = {
  kind: 'temper-hardness',
  nature: 'estimate',
  unit: 'HRC',
  low: null,
  value: null,
  high: null,
  cautions: [],
  noClaim: 'steel-not-covered',
  source: '',
};

function hardnessReason({ low, value, high }: Hardness, wantedHrc: number | null): Reason {
  const params = { valueHrc: value, lowHrc: low, highHrc: high, wantedHrc };
  if (wantedHrc === null) return note('temper-unsure', params);
  if (low > wantedHrc) return wrong('temper-too-hard', params);
  return high < wantedHrc ? wrong('temper-too-soft', params) : good('temper-as-wanted', params);
}

/** The hardness that the schedule was proposed for; null: none was asked for. */
function wantedOf(basis: ScheduleBasis | undefined): number | null {
  const asked = basis?.reasons.find(({ code }) => code === 'target-for-hardness')?.params.wantedHrc;
  return typeof asked === 'number' ? asked : null;
}
