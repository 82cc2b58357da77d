import type { Critical } from '../../../dashboard/steel/scale-rows.ts';
import type { Answer } from '../../../hub/contract/compute/estimate.ts';
import type { StepWindow } from '../../../hub/contract/compute/steels.ts';

/** Answers as the hub gives them, made up for the tests of the page. */

export function known(
  value: number,
  low = value - 20,
  high = value + 20,
  unit: Answer['unit'] = 'celsius',
): Answer {
  const formula = 'Formula 1';
  return {
    value,
    low,
    high,
    unit,
    formula,
    standing: 'published-secondary',
    source: 'a book',
    flags: [],
    shown: `${value}`,
  };
}

export function unknown(message: string, unit: Answer['unit'] = 'celsius'): Answer {
  const reason = { code: 'outside-validity', message };
  const nothing = {
    value: null,
    low: null,
    high: null,
    formula: null,
    standing: null,
    source: null,
    shown: null,
  };
  return { ...nothing, unit, reason, flags: [reason] };
}

/** A plain medium-carbon steel. */
export function critical(change: Partial<Critical> = {}): Critical {
  return {
    steel: { id: '1045', title: '1045', composition: { C: 0.45 }, flags: [] },
    carbonClass: 'hypoeutectoid',
    ac1: known(722),
    ac3: known(762),
    acm: unknown('below the eutectoid'),
    ms: known(328),
    m90: known(120),
    mf: known(-91),
    ar1: known(680),
    ar3: known(718),
    coolingCelsiusPerHour: 28,
    opinions: { ac1: [], ac3: [], ms: [] },
    magnet: {
      lost: known(762, 713, 775),
      cause: 'end-of-transformation',
      proves: 'above-ac1',
      plus: known(862, 793, 895),
      meaning: [{ code: 'fully-transformed', message: 'Above Ac3 by about 100 °C' }],
    },
    ...change,
  };
}

export function stepWindow(change: Partial<StepWindow> = {}): StepWindow {
  return {
    step: 'austenitise',
    lowCelsius: 820,
    highCelsius: 860,
    uncertaintyCelsius: 10,
    from: { standing: 'published-secondary', source: 'a book' },
    shown: '820 to 860 °C',
    ...change,
  };
}
