import type { Probe } from '../contract/probe.ts';
import { PhysicsError } from '../physics/errors.ts';
import { functionRange } from '../physics/thermocouple.ts';
import { hotJunctionCelsius, undoStraightLine } from '../physics/thermocouple-junction.ts';
import { type Outcome, refused, understood } from './outcome.ts';

/** The temperature of the terminals at the instant, °C; undefined when nobody knows it. */
export type JunctionCelsius = number | undefined;

/**
 * The temperature that a probe measured, with its correction added as the last step.
 *
 * @param value what the device sent, in the base unit: volts of an `emf` source, else °C
 * @returns °C. Refusals: `no-cold-junction`, `outside-table` (the reference function says nothing there)
 */
export function probeCelsius(probe: Probe, value: number, junction: JunctionCelsius): Outcome<number> {
  const measured = beforeCorrection(probe, value, junction);
  if (!measured.ok) return measured;
  return understood(measured.value + (probe.correction?.offsetCelsius ?? 0));
}

/**
 * True when a temperature as sent is at or beyond the upper end of the type's reference function. Nothing that
 * is measured lies there: it is where a digitiser stops when the wire is broken.
 */
export function isAtUpperEnd(probe: Probe, sentCelsius: number): boolean {
  return sentCelsius >= functionRange(probe.type).highCelsius;
}

function beforeCorrection(probe: Probe, value: number, junction: JunctionCelsius): Outcome<number> {
  const { type, source } = probe;
  if (source.kind === 'celsius') return understood(value);
  if (junction === undefined) {
    return refused(
      'no-cold-junction',
      `there is no good reading of ${source.coldJunctionChannel} in this payload or in the 60 s before: no temperature is computed without it`,
    );
  }
  switch (source.kind) {
    case 'emf':
      // Emf is kept in volts, the tables speak millivolts.
      return insideTable(() =>
        hotJunctionCelsius({ type, millivolts: value * 1000, coldJunctionCelsius: junction }),
      );
    case 'straight-line':
      return insideTable(() =>
        undoStraightLine({
          type,
          reportedCelsius: value,
          coldJunctionCelsius: junction,
          slopeMillivoltsPerCelsius: source.slopeMillivoltsPerCelsius,
        }),
      );
    default:
      return source satisfies never;
  }
}

function insideTable(compute: () => number): Outcome<number> {
  try {
    return understood(compute());
  } catch (fault) {
    if (fault instanceof PhysicsError) return refused('outside-table', fault.message);
    throw fault;
  }
}
