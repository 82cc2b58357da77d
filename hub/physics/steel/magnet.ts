/**
 * The magnet test: at what temperature this steel stops holding a magnet on
 * heating, what that proves, and what "magnet plus about 100 °C" comes to.
 *
 * Ferrite is magnetic below 770 °C (Curie), austenite never. So attraction goes
 * at whichever comes first: the Curie point or the end of transformation. Only
 * steel with Ac3 above 770 °C (below about 0.48 % C when plain) loses it at 770.
 */
import { requireRange } from '../errors.ts';
import type { Composition } from './composition.ts';
import { criticalTemperatures } from './critical.ts';
import {
  type Answer,
  type Estimate,
  estimate,
  type Flag,
  flag,
  noEstimate,
  type Provenance,
} from './estimate.ts';
import { CURIE_CELSIUS, EUTECTOID_CARBON_PERCENT } from './iron-carbon.ts';

/**
 * What went first.
 * - `curie`: ferrite was left and passed 770 °C; transformation may not be over
 * - `end-of-transformation`: the last ferrite was gone before 770 °C
 * - `curie-before-transformation`: 770 °C passed before Ac1; the magnet proves nothing
 */
export type MagnetCause = 'curie' | 'end-of-transformation' | 'curie-before-transformation';

/** What a piece that no longer holds the magnet has proved. */
export type MagnetProof = 'above-770' | 'above-ac1' | 'nothing';

export interface MagnetAnswer {
  /** Where attraction goes on heating, °C. */
  readonly lost: Answer;
  readonly cause: MagnetCause | null;
  readonly proves: MagnetProof;
  /** `lost` plus the offset asked for, °C. */
  readonly plus: Answer;
  /** What that temperature means for this steel. */
  readonly meaning: readonly Flag[];
}

const MAGNET: Provenance = {
  standing: 'derived-here',
  source:
    'Curie point 770 °C (from memory: physics handbooks) or end of transformation, whichever comes first',
};
/** The Curie point is read as 765 to 775 °C: alloying moves it by a few degrees. */
const CURIE_SPREAD_CELSIUS = 5;
/** Ordinary heating overshoots a level Ac1: eutectoid steel loses the magnet at 730 to 750 °C, not 727. */
const ORDINARY_OVERSHOOT_CELSIUS = 25;
/** Grains coarsen 2 to 5 times within minutes from here, °C (measured sets for 4140 and 1045). */
const COARSENING_CELSIUS = 950;
/** Forge anneal habit: "until the magnet lets go, and about 100 °C more". */
const FORGE_ANNEAL_OFFSET_CELSIUS = 100;
/** What a smith adds by eye is no better than this, °C. */
const OFFSET_SPREAD_CELSIUS = 20;

/**
 * The magnet answer for a steel.
 *
 * @param offsetCelsius what the smith adds to it, 0 to 300 °C; 100 when left out.
 *   For low and medium carbon steel 100 gives 860 to 870 °C, the common forge anneal.
 * @throws PhysicsError as {@link criticalTemperatures}; `out-of-range` for the offset
 */
export function magnetAnswer(
  composition: Composition,
  offsetCelsius = FORGE_ANNEAL_OFFSET_CELSIUS,
): MagnetAnswer {
  const offset = requireRange('Offset', offsetCelsius, 0, 300, '°C');
  const { ac1, ac3, acm } = criticalTemperatures(composition);
  if (ac1.value === null || ac3.value === null) {
    const none = noEstimate(
      'celsius',
      'outside-validity',
      'Ac1 and Ac3 of this steel are not known: do not use a magnet',
    );
    return { lost: none, cause: null, proves: 'nothing', plus: none, meaning: [none.reason] };
  }
  const cause = causeOf(ac1, ac3);
  const lost = lostAt(cause, ac1, ac3);
  return {
    lost,
    cause,
    proves: proofOf(cause, composition),
    plus: raised(lost, offset),
    meaning: meaningOf(lost.value + offset, ac1, ac3, acm),
  };
}

function causeOf(ac1: Estimate, ac3: Estimate): MagnetCause {
  if (ac1.value >= CURIE_CELSIUS) return 'curie-before-transformation';
  return ac3.value > CURIE_CELSIUS ? 'curie' : 'end-of-transformation';
}

function proofOf(cause: MagnetCause, composition: Composition): MagnetProof {
  if (cause === 'curie-before-transformation') return 'nothing';
  return cause === 'curie' && composition.C < EUTECTOID_CARBON_PERCENT ? 'above-770' : 'above-ac1';
}

function lostAt(cause: MagnetCause, ac1: Estimate, ac3: Estimate): Estimate {
  const curie = cause !== 'end-of-transformation';
  const usual = ac3.value + ORDINARY_OVERSHOOT_CELSIUS;
  return estimate({
    value: Math.min(CURIE_CELSIUS, ac3.value),
    low: Math.min(CURIE_CELSIUS - CURIE_SPREAD_CELSIUS, Math.max(ac1.low, ac3.low)),
    high: Math.min(CURIE_CELSIUS + CURIE_SPREAD_CELSIUS, Math.max(ac3.high, usual)),
    unit: 'celsius',
    formula: curie ? 'Curie point of ferrite' : `end of transformation: ${ac3.formula}`,
    from: MAGNET,
    flags: curie ? ac1.flags : ac3.flags,
  });
}

function raised(lost: Estimate, offset: number): Estimate {
  const spread = offset === 0 ? 0 : OFFSET_SPREAD_CELSIUS;
  return {
    ...lost,
    value: lost.value + offset,
    low: lost.low + offset - spread,
    high: lost.high + offset + spread,
    formula: `${lost.formula} + ${offset} °C`,
  };
}

/** Stable codes for what a temperature does to this steel; see the messages. */
function meaningOf(celsius: number, ac1: Estimate, ac3: Estimate, acm: Answer): Flag[] {
  const found: Flag[] = [];
  const above = Math.round(celsius - ac3.value);
  if (celsius < ac1.low) {
    found.push(
      flag('below-transformation', 'Nothing transforms: this is a sub-critical heat for this steel'),
    );
  } else if (celsius >= ac3.high) {
    found.push(flag('fully-transformed', `Above Ac3 by about ${above} °C: wholly austenite, carbides apart`));
  } else if (celsius >= ac3.value) {
    found.push(
      flag('probably-transformed', `Above Ac3 by about ${above} °C, inside the spread of the formulas`),
    );
  } else {
    found.push(
      flag('partly-transformed', 'Between Ac1 and Ac3: only part of the steel has turned to austenite'),
    );
  }
  if (acm.value !== null) found.push(carbideFlag(celsius, acm));
  if (celsius >= COARSENING_CELSIUS) {
    found.push(
      flag('grain-coarsening', `At or above ${COARSENING_CELSIUS} °C grains coarsen within minutes`),
    );
  }
  return found;
}

function carbideFlag(celsius: number, acm: Estimate): Flag {
  if (celsius < acm.low)
    return flag('carbides-remain', 'Below Acm: undissolved carbides hold the grain fine');
  return flag(
    'above-acm',
    'At or above Acm: carbides dissolve, and slow cooling can leave them as a brittle network',
  );
}
