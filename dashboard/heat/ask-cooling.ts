import type { z } from 'zod';
import { BuriedBarAnswer, CoolingAnswer } from '../../hub/contract/compute/cooling.ts';
import type { ComputeApi } from '../api/compute-client.ts';
import type { CoolPlan } from './form.ts';
import { buriedQuestion, COOLINGS, type Cooling, coolingQuestion, isPacking } from './questions.ts';
import { refusable } from './refusable.ts';

/** Every way to cool, asked one after the other: between two questions the hub judges firings. */

type Packed = z.output<typeof BuriedBarAnswer>;
type Read = Packed['bar'];

/** How the piece cools in one way, or why the hub cannot say. */
export interface CoolingResult {
  readonly cooling: Cooling;
  readonly curves: {
    readonly seconds: readonly number[];
    readonly core: readonly number[];
    /** Null: the bar is as hot outside as inside as far as the model knows. */
    readonly surface: readonly number[] | null;
  } | null;
  readonly slowest: { readonly seconds: readonly number[]; readonly core: readonly number[] } | null;
  readonly fastest: { readonly seconds: readonly number[]; readonly core: readonly number[] } | null;
  readonly core: Read | null;
  /** The verdicts at both ends of the medium's range, where it has one. */
  readonly ends: { readonly slow: Read; readonly fast: Read } | null;
  readonly t85Shown: string | null;
  /** The same bar with hot steel beside it; null when that was not asked. */
  readonly accompanied: Read | null;
  readonly from: Packed['from'] | null;
  readonly why: string;
  readonly code: string;
}

export interface CoolAnswer {
  readonly plan: CoolPlan;
  readonly results: readonly CoolingResult[];
}

export async function askCooling(
  compute: ComputeApi,
  plan: CoolPlan,
  isWanted: () => boolean,
): Promise<CoolAnswer> {
  const results: CoolingResult[] = [];
  for (const cooling of COOLINGS) {
    if (!isWanted()) break;
    // The model of a packing knows long bars alone.
    if (isPacking(cooling) && plan.shape === 'sphere') continue;
    results.push(
      isPacking(cooling) ? await buried(compute, plan, cooling) : await inMedium(compute, plan, cooling),
    );
  }
  return { plan, results };
}

const NOTHING = {
  ...{ curves: null, slowest: null, fastest: null, core: null, ends: null },
  ...{ t85Shown: null, accompanied: null, from: null, why: '', code: '' },
} as const;

async function inMedium(
  compute: ComputeApi,
  plan: CoolPlan,
  cooling: Exclude<Cooling, 'ash' | 'vermiculite'>,
): Promise<CoolingResult> {
  const asked = compute.ask('cooling', coolingQuestion(plan, cooling), CoolingAnswer);
  const { value, why, code } = await refusable(asked);
  if (value === null) return { ...NOTHING, cooling, why, code };
  const { typical, slowest, fastest } = value;
  const core = (curve: typeof typical) => ({ seconds: curve.curves.seconds, core: curve.curves.coreCelsius });
  return {
    ...NOTHING,
    cooling,
    curves: { ...core(typical), surface: typical.curves.surfaceCelsius },
    slowest: slowest && core(slowest),
    fastest: fastest && core(fastest),
    core: typical.core,
    ends: slowest && fastest ? { slow: slowest.core, fast: fastest.core } : null,
    t85Shown: value.t85Seconds?.shown ?? null,
    from: value.from,
  };
}

async function buried(
  compute: ComputeApi,
  plan: CoolPlan,
  cooling: 'ash' | 'vermiculite',
): Promise<CoolingResult> {
  const ask = (companion: number) =>
    refusable(compute.ask('buried-bar', buriedQuestion(plan, cooling, companion), BuriedBarAnswer));
  const { value, why, code } = await ask(0);
  if (value === null) return { ...NOTHING, cooling, why, code };
  const companion = plan.companionKilogramsPerMetre;
  const accompanied = companion > 0 ? await ask(companion) : null;
  const { seconds, celsius } = value.curve;
  return {
    ...NOTHING,
    cooling,
    curves: { seconds, core: celsius, surface: null },
    core: value.bar,
    accompanied: accompanied?.value?.bar ?? null,
    from: value.from,
    why: accompanied?.why ?? '',
    code: accompanied?.code ?? '',
  };
}
