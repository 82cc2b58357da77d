import type { z } from 'zod';
import { ConductionAnswer } from '../../hub/contract/compute/conduction.ts';
import { SoakTimeAnswer } from '../../hub/contract/compute/soak-time.ts';
import type { ComputeApi } from '../api/compute-client.ts';
import { ApiError } from '../api/error.ts';
import type { HeatPlan } from './form.ts';
import type { FurnaceHeat, Heating } from './furnace.ts';
import { chamberCurve, conductionQuestion, otherThicknesses, soakQuestions } from './questions.ts';
import { refusable } from './refusable.ts';

/**
 * Asks the hub one question after the other and never several at once: between two of them it judges firings. Stops
 * as soon as the answer is no longer wanted.
 */

export type Curves = z.output<typeof ConductionAnswer>['curves'];

/** Arrival of one section; times in seconds. */
export interface Arrival {
  readonly thicknessMm: number;
  /** Null: it does not arrive, or the hub refuses to say; `why` tells. */
  readonly seconds: number | null;
  readonly lagCelsius: number | null;
  readonly surfaceBeyondBand: boolean;
  readonly why: string;
}

export interface HeatAnswer {
  readonly plan: HeatPlan;
  readonly heat: FurnaceHeat;
  readonly conduction: z.output<typeof ConductionAnswer>;
  /** With the weakest and the strongest likely heating, each section of `sections`. */
  readonly weak: readonly Arrival[];
  readonly usual: readonly Arrival[];
  readonly strong: readonly Arrival[];
}

export async function askHeat(
  compute: ComputeApi,
  plan: HeatPlan,
  heat: FurnaceHeat,
  isWanted: () => boolean,
): Promise<HeatAnswer> {
  const others = otherThicknesses(plan.thicknessMm);
  const ask = (heating: Heating, all: readonly number[]) =>
    askArrivals(compute, plan, heating, all, isWanted);
  const own = await askOwn(compute, plan, heat.usual);
  if (own === null) {
    const conduction = await compute.ask(
      'conduction',
      conductionQuestion(plan, heat.usual),
      ConductionAnswer,
    );
    return { plan, heat, conduction, weak: [], usual: [], strong: [] };
  }
  // The ends of the band are asked for the others too where one question answers all of them.
  const ends = chamberCurve(plan) === undefined ? [plan.thicknessMm, ...others] : [plan.thicknessMm];
  const weak = await ask(heat.weak, ends);
  const strong = await ask(heat.strong, ends);
  const latest = Math.max(...[own, ...weak.filter(isOwn(plan))].map(({ seconds }) => seconds ?? 0));
  const question = conductionQuestion(plan, heat.usual, BEYOND_ARRIVAL * Math.max(60, latest));
  const conduction = await compute.ask('conduction', question, ConductionAnswer);
  const rest = await ask(heat.usual, others);
  const usual = [own, ...rest].sort((a, b) => a.thicknessMm - b.thicknessMm);
  return { plan, heat, conduction, weak, usual, strong };
}

/** The curves go on a little after the latest arrival, so that one sees them level out. */
const BEYOND_ARRIVAL = 1.12;

export function isOwn(plan: HeatPlan): (arrival: Arrival) => boolean {
  return ({ thicknessMm }) => thicknessMm === plan.thicknessMm;
}

/** The section itself; null when it never arrives. Any other refusal concerns a field and is thrown on. */
async function askOwn(compute: ComputeApi, plan: HeatPlan, heating: Heating): Promise<Arrival | null> {
  const [question] = soakQuestions(plan, heating, [plan.thicknessMm]);
  try {
    const [own] = readArrivals(await compute.ask('soak-time', question ?? {}, SoakTimeAnswer));
    return own ?? null;
  } catch (fault) {
    if (fault instanceof ApiError && fault.code === 'no-solution') return null;
    throw fault;
  }
}

async function askArrivals(
  compute: ComputeApi,
  plan: HeatPlan,
  heating: Heating,
  thicknesses: readonly number[],
  isWanted: () => boolean,
): Promise<Arrival[]> {
  const arrivals: Arrival[] = [];
  for (const question of soakQuestions(plan, heating, thicknesses)) {
    if (!isWanted()) break;
    const answer = await refusable(compute.ask('soak-time', question, SoakTimeAnswer));
    if (answer.value === null) arrivals.push(noArrival(question.thicknessMm, answer.why));
    else arrivals.push(...readArrivals(answer.value));
  }
  return arrivals.sort((a, b) => a.thicknessMm - b.thicknessMm);
}

/** The section asked about and the others, in one form. */
export function readArrivals(answer: z.output<typeof SoakTimeAnswer>): Arrival[] {
  return [answer, ...answer.others].map((soak) =>
    soak.arrivalSeconds === null
      ? noArrival(soak.thicknessMm, soak.reason.message)
      : {
          thicknessMm: soak.thicknessMm,
          seconds: soak.arrivalSeconds,
          lagCelsius: soak.lagCelsius,
          surfaceBeyondBand: soak.surfaceBeyondBand,
          why: '',
        },
  );
}

function noArrival(thicknessMm: number, why: string): Arrival {
  return { thicknessMm, seconds: null, lagCelsius: null, surfaceBeyondBand: false, why };
}
