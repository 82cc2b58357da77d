/**
 * What a bar buried in ash or vermiculite really does.
 *
 * The bar (equally hot throughout: its own resistance is a hundredth of the
 * packing's) loses heat through a cylinder of packing into the wall of a can.
 * Transient: the packing must warm up too, which is why the bar cools fastest
 * at first. No published cooling rates were found; the properties below are
 * what the answer hangs on.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { type Chain, type ChainState, implicitStep } from './chain.ts';
import { requireTemperature } from './exposure.ts';
import { type Material, plainMaterial } from './material.ts';
import type { Standing } from './standing.ts';

export interface Packing {
  readonly material: Material;
  readonly standing: Standing;
  readonly source: string;
}

/**
 * Loose ash: 0.14 ± 0.03 W/(m K) measured on loose, unsintered ash deposits
 * (Robinson, Buckley and Baxter, Energy & Fuels 15 (2001) 66, abstract).
 * Density and specific heat: common practice.
 * Vermiculite: 0.063 to 0.074 W/(m K) loose at room temperature (Low, abstract);
 * rising to 0.13 on the hot side; 100 kg/m³ and 900 J/(kg K) from memory: Incropera.
 */
const PACKINGS = {
  ash: {
    material: plainMaterial({ densityKgM3: 500, specificHeatJKgK: 900, conductivityWmK: 0.14 }),
    standing: 'published',
    source: 'conductivity Robinson, Buckley and Baxter 2001 (coal ash); density 500 common practice',
  },
  vermiculite: {
    material: plainMaterial({
      densityKgM3: 100,
      specificHeatJKgK: 900,
      conductivityWmK: { at20: 0.068, perKelvin: 1.6e-4 },
    }),
    standing: 'derived',
    source: 'conductivity 0.068 cold (published) to about 0.13 at 400 °C; density 100 from memory',
  },
} as const satisfies Record<string, Packing>;

export type PackingId = keyof typeof PACKINGS;
export const PACKING_IDS: readonly PackingId[] = ['ash', 'vermiculite'];

export interface BuriedPlan {
  readonly steel: Material;
  /** Cross-section of the bar, m. A round bar: width = thickness × pi/4 gives its area. */
  readonly widthMetres: number;
  readonly thicknessMetres: number;
  /** One of PACKING_IDS, or a packing of your own with its source. */
  readonly packing: PackingId | Packing;
  /** Radius of packing around the bar, m: 0.03 to 1. */
  readonly canRadiusMetres: number;
  readonly startCelsius: number;
  readonly shopCelsius: number;
  /** Hot steel packed beside the bar, kg per m of bar; it cools with it. Default 0. */
  readonly hotCompanionKgPerMetre?: number;
  /** The curve ends when the bar is below this, °C, or after 48 h. */
  readonly untilCelsius: number;
}

export interface BuriedPoint {
  readonly atSeconds: number;
  readonly celsius: number;
}

const SHELLS = 24;
const SHOP_FILM = { film: 8, emissivity: 0.8 } as const;
const LONGEST_SECONDS = 48 * 3600;

/**
 * Cooling curve of the buried bar.
 *
 * @throws PhysicsError `out-of-range` for sizes or temperatures outside the
 *   model, `bad-input` when the bar does not fit into the can
 */
export function buriedCurve(plan: BuriedPlan): BuriedPoint[] {
  const chain = bury(plan);
  requireTemperature('start', plan.startCelsius);
  requireRange('end', plan.untilCelsius, plan.shopCelsius + 10, plan.startCelsius, '°C');
  let state = startBuried(chain, plan);
  let atSeconds = 0;
  const points: BuriedPoint[] = [{ atSeconds, celsius: barCelsius(state) }];
  const exposure = { ...SHOP_FILM, surroundingsCelsius: plan.shopCelsius };
  let seconds = 0.5;
  while (barCelsius(state) > plan.untilCelsius && atSeconds < LONGEST_SECONDS) {
    const before = barCelsius(state);
    state = implicitStep(chain, state, seconds, exposure, plan.shopCelsius).state;
    atSeconds += seconds;
    points.push({ atSeconds, celsius: barCelsius(state) });
    seconds = nextSeconds(seconds, before - barCelsius(state));
  }
  return points;
}

/** Steps that move the bar by about 2 K; across an arrest they may grow to five minutes. */
function nextSeconds(seconds: number, fell: number): number {
  const wish = (seconds * 2) / Math.max(0.1, fell);
  return Math.min(300, Math.max(0.5, Math.min(wish, seconds * 1.5)));
}

/**
 * Radius of the round bar that loses as much heat into a wide packing, m: the
 * logarithmic capacity of the cross-section. Exact for a square (0.5902 a) and
 * for a thin strip (a/4); our interpolation between, which enters only through
 * a logarithm.
 */
export function equivalentRadius(widthMetres: number, thicknessMetres: number): number {
  const sum = widthMetres + thicknessMetres;
  const squareness = (4 * widthMetres * thicknessMetres) / sum ** 2;
  return (sum / 4) * (1 + 0.18034 * squareness);
}

function bury(plan: BuriedPlan): Chain {
  const width = requireRange('width', plan.widthMetres, 5e-4, 0.3, 'm');
  const thickness = requireRange('thickness', plan.thicknessMetres, 5e-4, 0.3, 'm');
  const can = requireRange('radius of the packing', plan.canRadiusMetres, 0.03, 1, 'm');
  const companion = requireRange('hot companion', plan.hotCompanionKgPerMetre ?? 0, 0, 500, 'kg/m');
  const companionArea = companion / plan.steel.densityKgM3;
  const bar = width * thickness;
  // A bundle is as round as its area allows; alone, the bar keeps its own shape.
  const radius = equivalentRadius(width, thickness) * Math.sqrt(1 + companionArea / bar);
  if (radius > can / 1.5) {
    throw new PhysicsError('bad-input', 'the steel fills the packing; take a wider can', { radius, can });
  }
  const steelKg = bar * plan.steel.densityKgM3 + companion;
  return chainOf(plan.steel, steelKg, packingOf(plan.packing).material, radius, can);
}

/** Node 0 is the steel; the rest are shells of packing, thicker outwards, the last on the can's wall. */
function chainOf(steel: Material, steelKg: number, packing: Material, radius: number, can: number): Chain {
  const ratio = (can / radius) ** (1 / SHELLS);
  const nodes = Array.from({ length: SHELLS + 1 }, (_, i) => radius * ratio ** i);
  const faces = nodes.map((r, i) => (i < SHELLS ? r * Math.sqrt(ratio) : can));
  const shells = faces.map((outer, i) => {
    const inner = i === 0 ? radius : (faces[i - 1] ?? radius);
    return Math.PI * packing.densityKgM3 * (outer ** 2 - inner ** 2);
  });
  return {
    massKg: [steelKg, ...shells.slice(1)],
    pathMetres: faces.slice(1).map(() => (2 * Math.PI) / Math.log(ratio)),
    material: [steel, ...shells.slice(1).map(() => packing)],
    pathMaterial: faces.slice(1).map(() => packing),
    outerAreaM2: 2 * Math.PI * can,
  };
}

function startBuried(chain: Chain, plan: BuriedPlan): ChainState {
  const celsius = chain.massKg.map((_, i) => (i === 0 ? plan.startCelsius : plan.shopCelsius));
  const austenite = chain.material.map((m, i) => m.austeniteAtRest(celsius[i] ?? 0));
  const enthalpyJKg = chain.material.map((m, i) => m.enthalpy(celsius[i] ?? 0, austenite[i] ?? 0));
  return { celsius, austenite, enthalpyJKg };
}

function barCelsius(state: ChainState): number {
  return state.celsius[0] ?? Number.NaN;
}

/** What is known of a packing: where its numbers come from and how far to trust them. */
export function packingOf(packing: PackingId | Packing): Packing {
  return typeof packing === 'string' ? PACKINGS[packing] : packing;
}
