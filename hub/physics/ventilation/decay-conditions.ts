/**
 * When a falling curve of gas tells how much air a room changes, after the
 * conditions of ASTM E741 (decay in one well-mixed zone; scope published, the
 * figures from memory or derived here as said beside each).
 *
 * A condition that nobody told or measured is unknown, not kept.
 */

/** What must hold for the figure to mean what it says. */
export const DECAY_CONDITIONS = [
  'source-off',
  'openings-unchanged',
  'background-steady',
  'above-background',
  'enough-samples',
  'enough-fall',
  'one-slope',
  'mixed',
] as const;
export type DecayConditionCode = (typeof DECAY_CONDITIONS)[number];

export interface DecayCondition {
  readonly code: DecayConditionCode;
  /** null: not told and not measured. */
  readonly held: boolean | null;
  /** What was found and what is wanted, in the unit of the condition; null where it is a matter of being told. */
  readonly found: number | null;
  readonly wanted: number | null;
  readonly reason: string;
}

/** Regression needs more than the three that give it an error at all. From memory: ASTM E741 asks for several. */
export const LEAST_SAMPLES = 5;
/** A t of about 1: the tracer falls to about a third. From memory: ASTM E741 table of durations. */
export const LEAST_FALL = 0.9;
/** The background may move by this share of the last excess. Derived here: it moves A by about a tenth. */
export const MOST_BACKGROUND_SHARE = 0.1;
/** The slope may change by this share over the window. Derived here. */
export const MOST_BEND = 0.25;
/** Air changes seen at another point may differ by this share. Derived here. */
export const MOST_SPREAD = 0.15;
/** The smallest excess that counts, in steps of the sensor. Derived here: a step is then a fifth of it at most. */
export const LEAST_EXCESS_STEPS = 5;

/** What the fit and the caller know. */
export interface DecayFacts {
  readonly sourceOff: boolean | null;
  readonly openingsUnchanged: boolean | null;
  readonly backgroundMovedPpm: number | null;
  readonly lastExcessPpm: number;
  /** Samples above the background again after the fall had reached it. */
  readonly roseAgain: number;
  readonly count: number;
  /** Natural logarithm of first excess over last, by the fit. */
  readonly fall: number;
  /** Change of the slope over the window as a share of it; null where too few samples can tell. */
  readonly bend: number | null;
  /** Largest difference of another point's air changes, as a share; null where there is no other point. */
  readonly spread: number | null;
}

/** Every condition with what was found. */
export function decayConditions(facts: DecayFacts): DecayCondition[] {
  const { count, fall, roseAgain } = facts;
  const moved =
    facts.backgroundMovedPpm === null ? null : Math.abs(facts.backgroundMovedPpm) / facts.lastExcessPpm;
  return [
    told('source-off', facts.sourceOff, 'nothing in the room gives off this gas, people included for CO2'),
    told('openings-unchanged', facts.openingsUnchanged, 'doors, windows and fans stay as they are'),
    atMost('background-steady', moved, MOST_BACKGROUND_SHARE, 'background moved, share of the last excess'),
    atMost('above-background', roseAgain, 0, 'samples that rose again after reaching the background'),
    atLeast('enough-samples', count, LEAST_SAMPLES, 'samples used'),
    atLeast('enough-fall', fall, LEAST_FALL, 'natural logarithm of the fall'),
    atMost('one-slope', facts.bend, MOST_BEND, 'change of slope over the window, share'),
    atMost('mixed', facts.spread, MOST_SPREAD, 'difference of another point, share'),
  ];
}

/** false when any condition is broken, null when one is unknown, true when all are kept. */
export function allHeld(conditions: readonly DecayCondition[]): boolean | null {
  if (conditions.some((condition) => condition.held === false)) return false;
  return conditions.some((condition) => condition.held === null) ? null : true;
}

function told(code: DecayConditionCode, held: boolean | null, what: string): DecayCondition {
  const reason = held === null ? `not told whether ${what}` : `told that ${held ? '' : 'not true: '}${what}`;
  return { code, held, found: null, wanted: null, reason };
}

function atLeast(code: DecayConditionCode, found: number, wanted: number, what: string): DecayCondition {
  const held = found >= wanted;
  return { code, held, found, wanted, reason: `${what}: ${shown(found)}, wanted at least ${wanted}` };
}

function atMost(
  code: DecayConditionCode,
  found: number | null,
  wanted: number,
  what: string,
): DecayCondition {
  if (found === null) return { code, held: null, found, wanted, reason: `${what}: not measured` };
  const held = found <= wanted;
  return { code, held, found, wanted, reason: `${what}: ${shown(found)}, wanted at most ${wanted}` };
}

const shown = (value: number): string => String(Number(value.toPrecision(3)));
