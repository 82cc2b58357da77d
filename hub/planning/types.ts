import type { Params } from '../contract/alarm.ts';
import type { PlanFault, PlanFaultCode } from '../contract/planning.ts';
import type { RouteHeat } from '../contract/route-template.ts';
import type { CoolSegment } from '../contract/schedule.ts';
import type { PlanReason, PlanReasonCode } from '../contract/schedule-basis.ts';
import type { Furnace } from '../contract/shop.ts';
import type { Shape } from '../physics/heat/body.ts';
import type { Provenance } from '../physics/steel/estimate.ts';
import type { QuenchAdvice, StepName } from '../physics/steel/grade.ts';
import type { Steel } from '../physics/steel/own-steel.ts';

/** What planning works on: pieces with their steel resolved, and the furnace as heat meets it. */

export interface PlanSteel extends Steel {
  readonly quench: QuenchAdvice | null;
  readonly notRecommended: readonly StepName[];
}

export interface PlanPiece {
  /** Null: a piece that is only described. */
  readonly id: string | null;
  readonly mark: string | null;
  readonly steel: PlanSteel;
  readonly shape: Shape;
  readonly thicknessMm: number;
  /** What the firing is for; null: not said, and only what holds for every heat is looked at. */
  readonly step: RouteHeat | null;
}

export interface PlanFurnace {
  readonly name: string;
  readonly kind: Furnace['kind'];
  readonly ratedCelsius: number;
  /** Likely, then what leaves a heating piece coldest. Film in W/(m² K). */
  readonly exposure: { readonly emissivity: number; readonly film: number };
  readonly slowExposure: { readonly emissivity: number; readonly film: number };
  readonly exposureFrom: Provenance;
}

/** A reason before its words. */
export type Reason = Omit<PlanReason, 'text' | 'from' | 'value'> & {
  readonly code: PlanReasonCode;
  readonly from: Provenance;
};

/** A fault before its words. */
export interface Fault {
  readonly code: PlanFaultCode;
  readonly weight: PlanFault['weight'];
  readonly segment: number | null;
  readonly piece: PlanPiece | null;
  readonly params: Params;
}

export type CoolMedium = CoolSegment['medium'];

/** Trade habit without a source. */
export const HABIT: Provenance = { standing: 'common-practice', source: '' };
