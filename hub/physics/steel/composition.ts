/** What a steel is made of, in mass percent. */
import { PhysicsError } from '../errors.ts';

/** The elements that some formula in this folder speaks about. */
export const ELEMENTS = [
  'C',
  'Mn',
  'Si',
  'Cr',
  'Ni',
  'Mo',
  'V',
  'W',
  'Cu',
  'Co',
  'Al',
  'Ti',
  'Nb',
  'Zr',
  'P',
  'S',
  'N',
  'As',
  'B',
] as const;

export type Element = (typeof ELEMENTS)[number];

/** Mass percent by element; carbon is always named, what is absent counts as zero. */
export type Composition = Readonly<Partial<Record<Element, number>> & { C: number }>;

/** Lowest and highest mass percent, both included. */
export type ElementRanges = Readonly<Partial<Record<Element, readonly [number, number]>>>;

/** Above this carbon content it is cast iron: austenite holds no more at 1148 °C (Fe-Fe3C diagram). */
export const MAX_CARBON_PERCENT = 2.14;

/** Above this the metal is not a steel that any formula here was fitted to. */
const MAX_ALLOY_PERCENT = 50;

const KNOWN: ReadonlySet<string> = new Set(ELEMENTS);

function isElement(name: string): name is Element {
  return KNOWN.has(name);
}

/** Mass percent of an element, zero when the composition does not name it. */
export function percentOf(composition: Composition, element: Element): number {
  return composition[element] ?? 0;
}

/**
 * Checks a composition that comes from outside and returns it typed.
 *
 * @param record mass percent by element symbol; must name `C`
 * @throws PhysicsError `bad-input` for an unknown symbol, a negative or
 *   non-finite amount, or missing carbon; `out-of-range` for carbon outside
 *   0 to 2.14 % or more than 50 % of everything else
 */
export function requireComposition(record: Readonly<Record<string, number | undefined>>): Composition {
  const amounts: Partial<Record<Element, number>> = {};
  for (const [name, percent] of Object.entries(record)) {
    if (percent === undefined) continue;
    amounts[requireElement(name)] = requireAmount(name, percent);
  }
  const carbon = amounts.C;
  if (carbon === undefined) {
    throw new PhysicsError('bad-input', 'The composition names no carbon: give C in mass percent', {
      record,
    });
  }
  if (carbon > MAX_CARBON_PERCENT) {
    throw new PhysicsError(
      'out-of-range',
      `Carbon is ${carbon} %: above ${MAX_CARBON_PERCENT} % it is cast iron`,
      {
        carbon,
      },
    );
  }
  const alloy = Object.values(amounts).reduce((sum, percent) => sum + percent, 0) - carbon;
  if (alloy > MAX_ALLOY_PERCENT) {
    throw new PhysicsError('out-of-range', `Alloying elements sum to ${alloy} %: not a steel`, { alloy });
  }
  return { ...amounts, C: carbon };
}

function requireElement(name: string): Element {
  if (isElement(name)) return name;
  const likely = ELEMENTS.find((element) => element.toLowerCase() === name.toLowerCase());
  const hint = likely === undefined ? `known are ${ELEMENTS.join(', ')}` : `did you mean ${likely}?`;
  throw new PhysicsError('bad-input', `Unknown element "${name}": ${hint}`, { element: name });
}

function requireAmount(name: string, percent: number): number {
  if (Number.isFinite(percent) && percent >= 0) return percent;
  throw new PhysicsError('bad-input', `${name} is ${percent}: give mass percent, zero or more`, {
    element: name,
    percent,
  });
}

/** One element outside a range. */
export interface Outside {
  readonly element: Element;
  readonly percent: number;
  readonly low: number;
  readonly high: number;
}

/** The elements that lie outside the ranges, in the order of the ranges. */
export function outsideOf(composition: Composition, ranges: ElementRanges): readonly Outside[] {
  const found: Outside[] = [];
  for (const element of ELEMENTS) {
    const range = ranges[element];
    if (range === undefined) continue;
    const percent = percentOf(composition, element);
    if (percent < range[0] || percent > range[1]) {
      found.push({ element, percent, low: range[0], high: range[1] });
    }
  }
  return found;
}
