/** Fixed points of the iron-carbon diagram, what they say about a steel, and Acm. */
import { requireRange } from '../errors.ts';
import { type Composition, MAX_CARBON_PERCENT, percentOf } from './composition.ts';
import { type Answer, estimate, type Flag, flag, noEstimate, type Provenance } from './estimate.ts';

/** Carbon of the eutectoid, mass %: textbook pages print 0.76 or 0.77. */
export const EUTECTOID_CARBON_PERCENT = 0.77;
/** Eutectoid temperature of plain iron-carbon, °C. */
export const EUTECTOID_CELSIUS = 727;
/** Most carbon that ferrite holds, at 727 °C, mass %. */
const FERRITE_CARBON_PERCENT = 0.022;
/** Carbon of cementite, mass %, as the lever-rule examples use it. */
const CEMENTITE_CARBON_PERCENT = 6.7;
/** Curie point of ferrite, °C (1043 K). Source: any physics handbook, from memory. */
export const CURIE_CELSIUS = 770;

/** Eutectoid carbon that the published chord and lever-rule examples use, mass %. */
const CHORD_CARBON_PERCENT = 0.76;
const CHORD_END_CARBON_PERCENT = 2.14;
const CHORD_END_CELSIUS = 1147;

export type CarbonClass = 'hypoeutectoid' | 'near-eutectoid' | 'hypereutectoid';

/**
 * Which side of the eutectoid a steel lies on, by its carbon alone.
 * Below 0.70 % the Ac3 formulas still speak; above 0.85 % Acm logic rules; the
 * strip between is both, because mill ranges straddle the eutectoid.
 * Alloying moves the eutectoid to lower carbon; no formula here claims by how much.
 */
export function carbonClass(composition: Composition): CarbonClass {
  if (composition.C < 0.7) return 'hypoeutectoid';
  return composition.C <= 0.85 ? 'near-eutectoid' : 'hypereutectoid';
}

/** What slow cooling leaves of plain carbon steel, mass fractions that sum to one. */
export interface SlowCooled {
  readonly pearlite: number;
  readonly proeutectoidFerrite: number;
  readonly proeutectoidCementite: number;
}

/**
 * Lever rule at the eutectoid (0.022 / 0.76 / 6.70 % C). Plain carbon steel only.
 *
 * @param carbonPercent 0.022 to 2.14 mass %
 * @throws PhysicsError `out-of-range`
 */
export function slowCooledFractions(carbonPercent: number): SlowCooled {
  requireRange('Carbon', carbonPercent, FERRITE_CARBON_PERCENT, CHORD_END_CARBON_PERCENT, '%');
  if (carbonPercent <= CHORD_CARBON_PERCENT) {
    const pearlite =
      (carbonPercent - FERRITE_CARBON_PERCENT) / (CHORD_CARBON_PERCENT - FERRITE_CARBON_PERCENT);
    return { pearlite, proeutectoidFerrite: 1 - pearlite, proeutectoidCementite: 0 };
  }
  const cementite =
    (carbonPercent - CHORD_CARBON_PERCENT) / (CEMENTITE_CARBON_PERCENT - CHORD_CARBON_PERCENT);
  return { pearlite: 1 - cementite, proeutectoidFerrite: 0, proeutectoidCementite: cementite };
}

const CHORD: Provenance = {
  standing: 'derived-here',
  source: 'chord between the invariant points 0.76 % 727 °C and 2.14 % 1147 °C of the Fe-Fe3C diagram',
};

/** Published diagrams lie 0 to 25 °C above the chord (convex line), never far below it. */
const BELOW_CHORD_CELSIUS = 20;
const ABOVE_CHORD_CELSIUS = 30;
/** Carbide formers lift Acm: 52100 is normalised at 885 °C, 85 °C above the plain-carbon chord. */
const ALLOYED_EXTRA_CELSIUS = 100;
const CARBIDE_FORMERS_PERCENT = 0.3;

/**
 * Acm, where the last carbide dissolves on heating, °C.
 *
 * @returns no estimate (`not-hypereutectoid`) at or below 0.77 % C. With more
 *   than 0.3 % of Cr + Mo + V + W the band reaches 100 °C higher and the flag
 *   `alloy-raises-acm` says that the value is a plain-carbon one.
 *   Valid to 2.14 % C.
 */
export function acm(composition: Composition): Answer {
  if (composition.C <= EUTECTOID_CARBON_PERCENT) {
    return noEstimate(
      'celsius',
      'not-hypereutectoid',
      'No Acm: the steel has no carbide left above Ac1 or Ac3',
    );
  }
  const slope = (CHORD_END_CELSIUS - EUTECTOID_CELSIUS) / (CHORD_END_CARBON_PERCENT - CHORD_CARBON_PERCENT);
  const carbon = requireRange('Carbon', composition.C, 0, MAX_CARBON_PERCENT, '%');
  const value = EUTECTOID_CELSIUS + slope * (carbon - CHORD_CARBON_PERCENT);
  const flags = acmFlags(composition);
  const extra = flags.length > 0 ? ALLOYED_EXTRA_CELSIUS : ABOVE_CHORD_CELSIUS;
  return estimate({
    value,
    low: value - BELOW_CHORD_CELSIUS,
    high: value + extra,
    unit: 'celsius',
    formula: 'Fe-Fe3C chord',
    from: CHORD,
    flags,
  });
}

function acmFlags(composition: Composition): Flag[] {
  const formers = (['Cr', 'Mo', 'V', 'W'] as const).reduce((sum, el) => sum + percentOf(composition, el), 0);
  if (formers <= CARBIDE_FORMERS_PERCENT) return [];
  return [
    flag(
      'alloy-raises-acm',
      'Carbide formers lift Acm above the plain-carbon line; the band is open upwards by 100 °C',
    ),
  ];
}
