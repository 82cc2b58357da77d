import type { FigureCautionCode, NoClaimCode } from '../contract/firing-record-piece.ts';
import { criticalTemperatures } from '../physics/steel/critical.ts';
import type { CurvePoint } from '../physics/time-at-temperature/curve.ts';
import { decarburisedDepth } from '../physics/time-at-temperature/decarburisation.ts';
import { grainTrend } from '../physics/time-at-temperature/grain-growth.ts';
import { scaleGrown } from '../physics/time-at-temperature/scale.ts';
import type { PlanSteel } from '../planning/types.ts';
import { curveOf, type PieceHeat } from './heat.ts';
import { safely } from './safely.ts';
import type { Band, Figure } from './types.ts';

/** What the whole curve did to skin and grain. Each number has its band, and where nothing is known it says so. */

const DECARBURISATION = 'carbon diffusing to a bare surface: the spread of four published diffusivities';
const SCALING = 'Paidassi; Davies, Simnad and Birchenall 1951: both from memory, a factor of two either way';
const GRAIN = 'Lee and Lee, ISIJ Int. 48 (2008) 1755, in transcription; the band spans what was measured';

type Asked = Pick<Figure, 'kind' | 'nature' | 'unit' | 'source'>;

interface Said {
  readonly band: Band;
  readonly cautions: readonly FigureCautionCode[];
}

/** Skin and grain of a piece. A curve of fewer than two points claims nothing. */
export function surfaceFigures(steel: PlanSteel, { points }: PieceHeat): Figure[] {
  const depth = {
    kind: 'decarburised-depth',
    nature: 'upper-bound',
    unit: 'mm',
    source: DECARBURISATION,
  } as const;
  const scale = { kind: 'scale', nature: 'estimate', unit: 'mm', source: SCALING } as const;
  const loss = { ...scale, kind: 'metal-loss' } as const;
  const grain = { kind: 'grain', nature: 'trend', unit: 'um', source: GRAIN } as const;
  if (points.length < 2) return [depth, scale, loss, grain].map((asked) => nothing(asked, 'too-few-points'));
  const curves = {
    low: curveOf(points, 'surface', 'low'),
    value: curveOf(points, 'surface', 'value'),
    high: curveOf(points, 'surface', 'high'),
  };
  const scaling = (pick: (curve: readonly CurvePoint[]) => Said | 'never-hot-enough') => over(curves, pick);
  return [
    made(
      depth,
      over(curves, (curve) => decarburised(steel, curve)),
    ),
    made(
      scale,
      scaling((curve) => scaled(curve, 'thicknessMetres')),
    ),
    made(
      loss,
      scaling((curve) => scaled(curve, 'metalLossMetres')),
    ),
    made(
      grain,
      over(curves, (curve) => grown(steel, curve)),
    ),
  ];
}

type Curves = Readonly<Record<'low' | 'value' | 'high', readonly CurvePoint[]>>;

/** The figure of the likely curve, its band widened by what the colder and the hotter assumption give. */
function over(curves: Curves, ask: (curve: readonly CurvePoint[]) => Said | NoClaimCode): Said | NoClaimCode {
  const value = ask(curves.value);
  if (typeof value === 'string') return value;
  const [low, high] = [ask(curves.low), ask(curves.high)];
  return {
    cautions: typeof high === 'string' ? value.cautions : high.cautions,
    band: {
      low: typeof low === 'string' ? 0 : Math.min(low.band.low, value.band.low),
      value: value.band.value,
      high: typeof high === 'string' ? value.band.high : Math.max(high.band.high, value.band.high),
    },
  };
}

function made(asked: Asked, said: Said | NoClaimCode): Figure {
  if (typeof said === 'string') return nothing(asked, said);
  return { ...asked, ...said.band, cautions: said.cautions, noClaim: null };
}

function nothing(asked: Asked, noClaim: NoClaimCode): Figure {
  return { ...asked, low: null, value: null, high: null, cautions: [], noClaim };
}

function times({ low, value, high }: Band, factor: number): Band {
  return { low: low * factor, value: value * factor, high: high * factor };
}

function decarburised({ composition }: PlanSteel, curve: readonly CurvePoint[]): Said | NoClaimCode {
  const { Si: si = 0, Mn: mn = 0, Cr: cr = 0, Ni: ni = 0, Mo: mo = 0, V: v = 0 } = composition;
  const start = safely(() => criticalTemperatures(composition).ac1.value) ?? undefined;
  const found = safely(() =>
    decarburisedDepth({
      curve,
      carbonPercent: composition.C,
      alloy: { si, mn, cr, ni, mo, v },
      ...(start === undefined ? {} : { ac1Celsius: start }),
    }),
  );
  if (found === null) return 'steel-not-covered';
  if (found.secondsCounted === 0 && !found.cautions.includes('above-range')) return 'never-austenite';
  return { band: times(found.depthTo90Metres, 1000), cautions: found.cautions };
}

function scaled(
  curve: readonly CurvePoint[],
  name: 'thicknessMetres' | 'metalLossMetres',
): Said | 'never-hot-enough' {
  const found = scaleGrown(curve);
  if (found.secondsCounted === 0 && !found.cautions.includes('above-range')) return 'never-hot-enough';
  return { band: times(found[name], 1000), cautions: ['air-no-flame', ...found.cautions] };
}

function grown({ composition }: PlanSteel, curve: readonly CurvePoint[]): Said | NoClaimCode {
  const { C: carbonPercent, Ni: ni = 0, Cr: cr = 0, Mo: mo = 0 } = composition;
  const found = safely(() => grainTrend(curve, { carbonPercent, ni, cr, mo }));
  if (found === null) return 'steel-not-covered';
  if (found.sizeMetres === null) return 'never-hot-enough';
  const cautions: FigureCautionCode[] = ['trend-only'];
  if (found.secondsCoarsening > 0) cautions.push('coarsening');
  if (found.secondsAbove > 0) cautions.push('above-range');
  return { band: times(found.sizeMetres, 1e6), cautions };
}
