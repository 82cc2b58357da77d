import type { RouteHeat } from '../contract/route-template.ts';
import type { Provenance } from '../physics/steel/estimate.ts';
import type { StepWindow } from '../physics/steel/grade.ts';

/** How long a piece stays at heat once its middle is there. */

export interface Hold {
  readonly seconds: number;
  readonly from: Provenance;
}

const MINUTE = 60;
const HOUR = 3600;
const INCH_MM = 25.4;

const TECHNICAL_ORDER: Provenance = {
  standing: 'published-primary',
  source:
    'USAF T.O. 1-1A-9, table 7-5 notes: normalising 15 min (small) to 1 h (large), annealing 1 h (light) to 4 h (heavy), after the piece is uniformly hot',
};
const SUPPLIERS: Provenance = {
  standing: 'published-secondary',
  source:
    'two supplier sheets: hardening 20 to 30 min an inch at heat, tool steel; temper 1 to 2 h an inch, 2 h at least',
};
const THIN_BLADES: Provenance = {
  standing: 'published-secondary',
  source: 'practitioner pages: 5 min at heat for thin plain carbon steel',
};
const ONE_HOUR_AN_INCH: Provenance = {
  standing: 'published-secondary',
  source: '1 h an inch as common practice',
};

/** Cr, Mo, V and W together above this: carbides that take time to dissolve, mass percent. Ours. */
const CARBIDE_PERCENT = 0.6;

/**
 * The hold at heat of a step, s.
 *
 * @param thicknessMm thickest section of the load
 * @param carbideFormers Cr + Mo + V + W, mass percent
 */
export function holdOf(
  step: RouteHeat,
  thicknessMm: number,
  carbideFormers: number,
  window: StepWindow | null,
): Hold {
  const asked = window?.holdHours;
  if (asked !== undefined && window !== null) return { seconds: asked[0] * HOUR, from: window.from };
  const inches = thicknessMm / INCH_MM;
  switch (step) {
    case 'normalise':
      return { seconds: rounded(clamp(inches * HOUR, 15 * MINUTE, HOUR)), from: TECHNICAL_ORDER };
    case 'full-anneal':
      return { seconds: rounded(clamp(inches * HOUR, HOUR, 4 * HOUR)), from: TECHNICAL_ORDER };
    case 'harden':
    case 'austenitise':
      return hardeningHold(inches, carbideFormers);
    case 'temper':
      return { seconds: rounded(Math.max(2 * HOUR, inches * 1.5 * HOUR)), from: SUPPLIERS };
    case 'sub-critical-anneal':
    case 'stress-relief':
      return { seconds: rounded(Math.max(HOUR, inches * HOUR)), from: ONE_HOUR_AN_INCH };
    case 'spheroidise':
      return { seconds: 8 * HOUR, from: ONE_HOUR_AN_INCH };
    case 'forge':
      return { seconds: 0, from: ONE_HOUR_AN_INCH };
    default:
      throw step satisfies never;
  }
}

function hardeningHold(inches: number, carbideFormers: number): Hold {
  if (carbideFormers < CARBIDE_PERCENT) {
    return { seconds: rounded(clamp(inches * 20 * MINUTE, 5 * MINUTE, HOUR)), from: THIN_BLADES };
  }
  return { seconds: rounded(clamp(inches * 25 * MINUTE, 20 * MINUTE, 2 * HOUR)), from: SUPPLIERS };
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Up to the next five minutes: nobody sets a clock to 17 minutes and 43 seconds. */
export function rounded(seconds: number): number {
  return Math.ceil(seconds / (5 * MINUTE)) * 5 * MINUTE;
}
