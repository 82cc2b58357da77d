import type { Answer, Band, Estimate, Flag, Provenance } from '../../../contract/compute/estimate.ts';
import { type BandLike, showBand } from '../../../contract/significant.ts';
import { PhysicsError, type PhysicsErrorCode } from '../../../physics/errors.ts';
import type { Standing as HeatStanding } from '../../../physics/heat/standing.ts';
import type * as steel from '../../../physics/steel/estimate.ts';
import type { Frozen } from './computation.ts';

/** The physics' own answers in the words of the contract, with the figures that people may see. */

const LABEL: Readonly<Record<steel.SteelUnit, string>> = {
  celsius: '°C',
  HRC: 'HRC',
  HV: 'HV',
  mm: 'mm',
  fraction: '%',
};

export function estimateOf(estimate: steel.Estimate): Frozen<Estimate> {
  return { ...estimate, shown: shownOf(estimate) };
}

export function answerOf(answer: steel.Answer): Frozen<Answer> {
  return answer.value === null ? { ...answer, shown: null } : estimateOf(answer);
}

function shownOf(estimate: steel.Estimate): string {
  const times = estimate.unit === 'fraction' ? 100 : 1;
  return showBand(scaled(estimate, times), LABEL[estimate.unit]);
}

function scaled(band: BandLike, times: number): BandLike {
  return { low: band.low * times, value: band.value * times, high: band.high * times };
}

/** A band in base units, shown in a unit that people use: `bandOf(depth, 1000, 'mm')`. */
export function bandOf(band: BandLike, times: number, unit: string): Band {
  const { low, value, high } = band;
  return { low, value, high, shown: showBand(scaled(band, times), unit) };
}

/** An answer among several: where the physics refuses, the reason stands in its place. */
export function answerOrReason(unit: steel.SteelUnit, ask: () => steel.Answer): Frozen<Answer> {
  const given = orReason(ask, ['out-of-range', 'not-applicable', 'no-solution']);
  if (given.reason === null) return answerOf(given.value);
  const { reason } = given;
  const nothing = { value: null, low: null, high: null, formula: null, standing: null, source: null };
  return { ...nothing, unit, reason, flags: [reason], shown: null };
}

type OrReason<T> =
  | { readonly value: T; readonly reason: null }
  | { readonly value: null; readonly reason: Flag };

/**
 * What the physics gives, or why it has nothing to give. Only the refusals named are an answer of their own kind;
 * any other fault is the asker's or ours and is thrown on.
 */
export function orReason<T>(
  ask: () => T,
  refusals: readonly PhysicsErrorCode[] = ['not-applicable', 'no-solution'],
): OrReason<T> {
  try {
    return { value: ask(), reason: null };
  } catch (fault) {
    if (!(fault instanceof PhysicsError) || !refusals.includes(fault.code)) throw fault;
    return { value: null, reason: { code: fault.code, message: fault.message } };
  }
}

/** The words of hub/physics/heat for how a number is known, in those of everything else. */
export function heatProvenance(known: {
  readonly standing: HeatStanding;
  readonly source: string;
}): Provenance {
  return { standing: heatStanding(known.standing), source: known.source };
}

function heatStanding(standing: HeatStanding): Provenance['standing'] {
  switch (standing) {
    case 'published':
      return 'published';
    case 'derived':
      return 'derived-here';
    case 'common-practice':
      return 'common-practice';
    case 'memory':
      return 'from-memory';
    default:
      return standing satisfies never;
  }
}
