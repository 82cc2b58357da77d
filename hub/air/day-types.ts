import type { Furnace } from '../contract/shop.ts';
import type { ConditionState } from '../judging/condition.ts';
import type { CohbConstants } from '../physics/carbon-monoxide/carboxyhaemoglobin-constants.ts';
import type { CohbCourseState } from '../physics/carbon-monoxide/carboxyhaemoglobin-course.ts';
import type { DoseGateState } from '../physics/carbon-monoxide/dose-gate.ts';
import type { ExposureState } from '../physics/carbon-monoxide/exposure.ts';
import type { ExposureReading } from '../physics/carbon-monoxide/exposure-reading.ts';
import type { LimitProfile } from '../physics/carbon-monoxide/limits.ts';
import type { DecayState } from './decay-watch.ts';
import type { FireState } from './fire.ts';
import type { SourceState } from './other-source.ts';
import type { SensorState } from './sensors.ts';
import type { AirGas } from './types.ts';

/** A gas channel of the shop's air with what is known of its sensor. Instants in epoch ms. */
export interface DayChannel {
  readonly id: string;
  readonly label: string;
  readonly gas: AirGas;
  readonly staleAfterSeconds: number;
  readonly calibrationDueAt: number | null;
  readonly endOfLifeAt: number | null;
}

/** A furnace and the channels that tell whether it burns. */
export interface DayFurnace {
  readonly id: string;
  readonly name: string;
  readonly kind: Furnace['kind'];
  readonly chambers: readonly { readonly id: string; readonly staleAfterSeconds: number }[];
  readonly pressures: readonly { readonly id: string; readonly staleAfterSeconds: number }[];
}

export interface DayConfig {
  readonly channels: readonly DayChannel[];
  readonly furnaces: readonly DayFurnace[];
  readonly hotAboveCelsius: number;
  readonly profile: LimitProfile;
  /** Heavy unless chosen otherwise; light and heavy are the ends of the band. */
  readonly blood: {
    readonly chosen: CohbConstants;
    readonly light: CohbConstants;
    readonly heavy: CohbConstants;
  };
}

/** What has added up at one carbon monoxide sensor. */
export interface DoseState {
  readonly exposure: ExposureState;
  readonly cohb: CohbCourseState;
  readonly en: DoseGateState;
  readonly ul: DoseGateState;
  readonly shortMean: ConditionState;
  readonly dayMean: ConditionState;
  readonly dose: ConditionState;
  readonly blood: ConditionState;
}

export interface PastShift {
  readonly from: number;
  readonly to: number;
  /** By channel id. */
  readonly exposures: Readonly<Record<string, ExposureReading>>;
}

export interface DayState {
  /** Edge of the grid, epoch ms. */
  readonly at: number;
  /** When the working day began that the sums belong to; while the shop rests, now. */
  readonly shiftStart: number;
  /** The working day before, as it stood when its last furnace had gone cold; null: none was seen. */
  readonly lastShift: PastShift | null;
  readonly fire: FireState;
  /** By channel id, for carbon monoxide only. */
  readonly doses: Readonly<Record<string, DoseState>>;
  readonly sensors: SensorState;
  readonly source: SourceState;
  /** By channel id: carbon monoxide and carbon dioxide. */
  readonly decays: Readonly<Record<string, DecayState>>;
}
