import { QUANTITY_FACTS } from '../contract/quantity.ts';
import { defaultProbeFaultRules, type ProbeFaultRules } from '../physics/probe-fault-rules.ts';
import { functionRange } from '../physics/thermocouple.ts';
import type { ProbeChannel } from './types.ts';

const POSSIBLE = QUANTITY_FACTS.temperature.possible;

/** Nobody has said the type: K is what most shops have, and only the rails depend on it here. */
const USUAL_TYPE = 'K';
/** Until a reading has changed, the coarsest step that is common: then repeats prove the least. Common practice. */
const COARSEST_STEP_CELSIUS = 1;
/** A device that averages shows no step of its own; below this the step is dust. Common practice, no source. */
const FINEST_STEP_CELSIUS = 0.01;

/**
 * The figures by which this channel's readings are called faulty.
 *
 * The rails: above, the end of the type's reference function (unknown type: of what any sensor can mean), moved by
 * the correction that intake has added. Below, its lower end too, but never above what a furnace in a cold shop can
 * read: type B ends at 0 °C.
 */
export function rulesOf(channel: ProbeChannel, finestChangeCelsius: number | null): ProbeFaultRules {
  const { probe } = channel;
  const type = probe?.type ?? USUAL_TYPE;
  const rules = defaultProbeFaultRules(type);
  const offset = probe?.correction?.offsetCelsius ?? 0;
  const { lowCelsius, highCelsius } = functionRange(type);
  const seen = finestChangeCelsius ?? COARSEST_STEP_CELSIUS;
  const stepCelsius = probe?.digitiserStepCelsius ?? Math.max(FINEST_STEP_CELSIUS, seen);
  return {
    ...rules,
    rails: {
      lowCelsius: Math.min(lowCelsius, POSSIBLE.low),
      highCelsius: probe === null ? POSSIBLE.high : highCelsius + offset,
    },
    stuck: { ...rules.stuck, stepCelsius },
  };
}

/** True for a value that no furnace has: what it tells is electrical, that a pair is open or reversed. */
export function isElectrical({ rails }: ProbeFaultRules, celsius: number): boolean {
  return celsius < POSSIBLE.low || celsius >= rails.highCelsius;
}
