import type { AlarmKind, Params } from '../contract/alarm.ts';
import type { FurnaceGas, GasBand } from '../contract/gas.ts';
import type { ConditionState } from '../judging/condition.ts';
import type { ContentsState } from '../physics/gas-supply/contents-by-flow.ts';
import type { SupplySample } from '../physics/gas-supply/supply-sample.ts';

/** What the judge of the gas is told, takes in and remembers. Everything is immutable, so time can run back. */

/** A channel and how long its reading counts. */
export interface Heard {
  readonly id: string;
  readonly staleAfterSeconds: number;
}

export interface GasFurnace {
  readonly id: string;
  readonly name: string;
  readonly gas: FurnaceGas;
  /** Gauge, between regulator and jet. */
  readonly pressures: readonly Heard[];
  readonly chambers: readonly Heard[];
}

/** Cylinders and the furnaces that they feed. */
export interface GasSupply {
  /** A furnace's id where its scale belongs to that furnace, else "shop". */
  readonly id: string;
  readonly furnaces: readonly GasFurnace[];
  readonly scales: readonly Heard[];
  readonly cylinderPressures: readonly Heard[];
  readonly walls: readonly Heard[];
}

export interface GasConfig {
  readonly supplies: readonly GasSupply[];
  readonly hotAboveCelsius: number;
  /** Empty weight on the scale, kg; 0: the scale shows gas alone; null: not known. */
  readonly tareKilograms: number | null;
  readonly cylinderKilograms: number | null;
  readonly cylinders: number;
}

/** What a firing asks of its furnace at an instant. */
export interface FiringNow {
  readonly firingId: string;
  readonly furnaceId: string;
  /** The schedule wants heat: a ramp or a soak. */
  readonly wanted: boolean;
  /** Of the running segment; null: none runs. */
  readonly targetCelsius: number | null;
  /** When the heating is expected to be over, epoch ms; null: not foretold. */
  readonly heatEndsAt: number | null;
}

export interface NotedFill {
  readonly at: number;
  readonly supply: string;
  readonly kilograms: number;
}

/** One stretch of time, ten seconds. */
export interface GasCell {
  /** from < at <= to, epoch ms. */
  readonly from: number;
  readonly to: number;
  /** Mean of the good readings by channel id; a channel without one is not in it. */
  readonly values: Readonly<Record<string, { readonly mean: number }>>;
  readonly firings: readonly FiringNow[];
  /** Fills noted in this cell. */
  readonly fills: readonly NotedFill[];
  /** null: the shop has no closing time. */
  readonly afterClosing: boolean | null;
}

export type GasKind = Extract<AlarmKind, `gas-${string}`>;

/** Troubles of the supply that are told apart from each other: one at a time. */
export const TROUBLE_KINDS = [
  'gas-escaping',
  'gas-empty',
  'gas-valve-shut',
  'gas-chill',
  'gas-creep',
  'gas-restricted',
  'gas-droop',
  'gas-lost',
] as const satisfies readonly GasKind[];
export type TroubleKind = (typeof TROUBLE_KINDS)[number];

/** Told beside whatever trouble there is. */
export const WATCH_KINDS = [
  'gas-flame-out',
  'gas-on-cold',
  'gas-will-not-last',
  'gas-off-band',
  'gas-left-on',
] as const satisfies readonly GasKind[];
export type WatchKind = (typeof WATCH_KINDS)[number];

/** One cell as the recognition sees it. */
export interface GasSample extends Omit<SupplySample, 'outletPascals'> {
  /** null: nothing fresh. */
  readonly outletPascals: number | null;
  readonly chamberCelsius: number | null;
  readonly wanted: boolean | null;
  /** What the running segment asks for; null: nothing does. */
  readonly targetCelsius: number | null;
}

export interface Trouble {
  readonly kind: TroubleKind;
  readonly since: number;
  readonly raised: boolean;
  /** The signal was last seen, epoch ms. */
  readonly seenAt: number;
  /** Outlet before it, Pa gauge. */
  readonly beforePascals: number;
  readonly params: Params;
}

export interface FurnaceGasState {
  readonly id: string;
  readonly samples: readonly GasSample[];
  readonly trouble: Trouble | null;
  readonly watch: Readonly<Record<WatchKind, ConditionState>>;
  readonly params: Readonly<Partial<Record<WatchKind, Params>>>;
  readonly firing: FiringNow | null;
  /** A flame-out was last suspected, epoch ms; null: not yet. */
  readonly flameOutAt: number | null;
}

export interface SupplyState {
  readonly id: string;
  /** Since a noted fill; null: none is known. */
  readonly byFlow: ContentsState | null;
  readonly contents: GasBand | null;
  readonly contentsFrom: 'scale' | 'counted' | null;
  /** Mean draw of the last ten minutes with gas flowing, kg/h; null: none. */
  readonly drawKilogramsPerHour: number | null;
}

export interface GasState {
  /** Judged up to here, epoch ms. */
  readonly at: number;
  readonly furnaces: readonly FurnaceGasState[];
  readonly supplies: readonly SupplyState[];
}

/** A furnace beside the supply that feeds it. */
export interface FurnaceAt {
  readonly supply: GasSupply;
  readonly furnace: GasFurnace;
  readonly held: SupplyState;
}
