import type { RouteHeat } from '../contract/route-template.ts';
import type { CoolSegment } from '../contract/schedule.ts';
import { ms } from '../physics/steel/martensite.ts';
import type { ProposalQuestion } from './propose.ts';
import { type CoolMedium, HABIT, type Reason } from './types.ts';
import { windowFor } from './windows.ts';

/** How a firing shall cool, and why so. */

export interface Cooling {
  readonly segment: CoolSegment;
  readonly reasons: readonly Reason[];
}

/** Where the piece may be handled with bare tongs and the next heat begin, °C. */
const HANDLED = 60;
const BLACK = 300;

/** The medium that a step asks for where the smith has not said. */
function usualMedium(step: RouteHeat, kind: ProposalQuestion['furnace']['kind']): CoolMedium {
  switch (step) {
    case 'harden':
    case 'austenitise':
      return 'quench';
    case 'full-anneal':
    case 'spheroidise':
      return kind === 'electric-oven' ? 'furnace' : 'vermiculite';
    case 'stress-relief':
      return kind === 'electric-oven' ? 'furnace' : 'still-air';
    case 'normalise':
    case 'sub-critical-anneal':
    case 'temper':
    case 'forge':
      return 'still-air';
    default:
      throw step satisfies never;
  }
}

const CODES = {
  furnace: 'cool-furnace',
  ash: 'cool-bury',
  vermiculite: 'cool-bury',
  'still-air': 'cool-air',
  quench: 'cool-quench',
} as const satisfies Record<CoolMedium, string>;

export function coolingOf(question: ProposalQuestion, fromCelsius: number): Cooling {
  const { step, pieces, furnace } = question;
  const medium = question.coolIn ?? usualMedium(step, furnace.kind);
  const rule = slowestRule(question);
  const end = Math.min(endOf(step, medium, rule?.toCelsius ?? null), fromCelsius - 20);
  const segment: CoolSegment = {
    kind: 'cool',
    targetCelsius: Math.round(end),
    medium,
    maximumRateCelsiusPerHour: rule?.mostCelsiusPerHour ?? null,
    minimumRateCelsiusPerHour: null,
  };
  const reasons: Reason[] = [
    { path: '/segments/2/medium', code: CODES[medium], params: quenchParams(medium, pieces), from: HABIT },
  ];
  if (rule !== null) {
    reasons.push({
      path: '/segments/2/maximumRateCelsiusPerHour',
      code: 'cool-rule',
      params: { limitCelsiusPerHour: rule.mostCelsiusPerHour, toCelsius: rule.toCelsius },
      from: rule.from,
    });
  }
  return { segment, reasons };
}

/** The gentlest of the rules that the pieces have for this step. */
function slowestRule({ pieces, step }: ProposalQuestion) {
  const rules = pieces.flatMap(({ steel }) => {
    const window = windowFor(steel, step);
    if (window?.maxCoolingCelsiusPerHour === undefined) return [];
    const { maxCoolingCelsiusPerHour: mostCelsiusPerHour, coolToCelsius: toCelsius = 540, from } = window;
    return [{ mostCelsiusPerHour, toCelsius, from }];
  });
  return rules.reduce<(typeof rules)[number] | null>(
    (a, b) => (a === null || b.mostCelsiusPerHour < a.mostCelsiusPerHour ? b : a),
    null,
  );
}

function endOf(step: RouteHeat, medium: CoolMedium, ruleTo: number | null): number {
  if (ruleTo !== null && medium === 'furnace') return ruleTo;
  if (step === 'normalise') return BLACK;
  return step === 'full-anneal' || step === 'spheroidise' ? Math.min(ruleTo ?? 540, 540) : HANDLED;
}

/** The fluids that the steel maker names, and where martensite starts: what a quench must be below. */
function quenchParams(medium: CoolMedium, pieces: ProposalQuestion['pieces']): Reason['params'] {
  const first = pieces[0];
  if (medium !== 'quench' || first === undefined) return { medium };
  const start = ms(first.steel.composition);
  const { quench } = first.steel;
  return {
    medium,
    fluids: quench === null ? '' : quench.fluids.join(', '),
    oilBelowMm: quench?.oilBelowMm ?? null,
    msCelsius: start.value,
  };
}
