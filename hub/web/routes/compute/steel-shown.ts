import type { z } from 'zod';
import type {
  SteelSummary,
  StepWindow as StepWindowShown,
  TemperSet as TemperSetShown,
} from '../../../contract/compute/steels.ts';
import type { OwnSteel } from '../../../contract/own-steel.ts';
import { showValue } from '../../../contract/significant.ts';
import type { ElementRanges } from '../../../physics/steel/composition.ts';
import { windowsOf } from '../../../physics/steel/derived-windows.ts';
import type { Grade, StepWindow } from '../../../physics/steel/grade.ts';
import { steelOfGrade } from '../../../physics/steel/own-steel.ts';
import { quenchedHardness } from '../../../physics/steel/quenched-hardness.ts';
import { pairsOf, type TemperSet } from '../../../physics/steel/temper-set.ts';
import { steelOfOwn } from '../../../watch/steel-book.ts';
import { orReason } from './answers.ts';
import type { Frozen } from './computation.ts';

/** Steels as the contract tells them. */

export type SummaryShown = Frozen<z.infer<typeof SteelSummary>>;

export function gradeShown(grade: Grade): SummaryShown {
  return {
    id: grade.id,
    title: steelOfGrade(grade).title,
    origin: 'catalogue',
    names: grade.names,
    nominal: { ...grade.nominal },
    limits: limitsOf(grade.limits),
    limitsFrom: grade.limitsFrom,
    windows: windowsOf(grade).map(windowShown),
    notRecommended: grade.notRecommended,
    quench: grade.quench,
    quenched: grade.quenched,
    annealedBrinell: grade.annealedBrinell ?? null,
  };
}

const ENTERED = { standing: 'published-secondary', source: 'as entered in this shop' } as const;

/** An own steel has no limits to be held against, and nobody has said how it is quenched. */
export function ownShown(own: OwnSteel): SummaryShown {
  const steel = steelOfOwn(own);
  const { value: hard } = orReason(
    () => quenchedHardness(steel.composition.C),
    ['out-of-range', 'not-applicable', 'no-solution'],
  );
  const note = own.note === '' ? {} : { note: own.note };
  return {
    id: own.id,
    title: own.name,
    origin: 'own',
    names: [{ system: 'trade', name: own.name, same: true, from: ENTERED }],
    nominal: { ...steel.composition },
    limits: {},
    limitsFrom: { ...ENTERED, ...note },
    windows: steel.windows.map(windowShown),
    notRecommended: [],
    quench: { fluids: [], note: 'Nobody has said how it is quenched', from: ENTERED },
    quenched:
      hard === null
        ? null
        : {
            lowHrc: hard.low,
            highHrc: hard.high,
            from: { standing: 'derived-here', source: `${hard.formula}, from its carbon` },
          },
    annealedBrinell: null,
  };
}

export function windowShown(window: StepWindow): Frozen<z.infer<typeof StepWindowShown>> {
  const { lowCelsius, highCelsius, uncertaintyCelsius: by } = window;
  const high = showValue(highCelsius, by, '°C');
  return {
    ...window,
    shown: lowCelsius < highCelsius ? `${showValue(lowCelsius, by, '')} to ${high}` : high,
  };
}

export function temperSetShown(set: TemperSet): Frozen<z.infer<typeof TemperSetShown>> {
  const { runs: _, ...rest } = set;
  return { ...rest, composition: { ...set.composition }, pairs: pairsOf(set) };
}

function limitsOf(ranges: ElementRanges): Record<string, { low: number; high: number }> {
  return Object.fromEntries(Object.entries(ranges).map(([element, [low, high]]) => [element, { low, high }]));
}
