import { z } from 'zod';
import { PhysicsError } from '../../hub/physics/errors.ts';
import { emfMillivolts } from '../../hub/physics/thermocouple.ts';
import { hotJunctionCelsius } from '../../hub/physics/thermocouple-junction.ts';

/** What a fault of a chamber probe makes of a node's payloads, on top of what the simulated node sends. */

/** What the device would show instead of `celsius`, `seconds` after the first payload. */
export type Fault = (celsius: number, seconds: number) => number;

const Pack = z.array(
  z.looseObject({ bt: z.number().optional(), t: z.number().optional(), n: z.string(), v: z.number() }),
);

/** Payloads of the node with every chamber value as the fault shows it. */
export function tampering(
  fault: Fault,
  node: 'forge-node' | 'oven-node' = 'forge-node',
): (topic: string, payload: string) => string {
  let startSeconds: number | null = null;
  return (topic, payload) => {
    if (topic !== `soakwatch/${node}/readings`) return payload;
    let base = 0;
    const records = Pack.parse(JSON.parse(payload)).map((record) => {
      base = record.bt ?? base;
      const at = base + (record.t ?? 0);
      startSeconds ??= at;
      return record.n === 'chamber' ? { ...record, v: fault(record.v, at - startSeconds) } : record;
    });
    return JSON.stringify(records);
  };
}

const TERMINALS_CELSIUS = 22;
/** The lower end of a common digitiser chip (Maxim 19-5793), where it stops when the emf goes below its range. */
const CHIP_LOWEST_CELSIUS = -250;
const toStep = (celsius: number) => Math.round(celsius / 0.25) * 0.25;

/** The legs of a type K pair swapped: the emf has the other sign. */
export const reversed: Fault = (celsius) => {
  const millivolts = emfMillivolts('K', TERMINALS_CELSIUS) - emfMillivolts('K', celsius);
  try {
    return toStep(hotJunctionCelsius({ type: 'K', millivolts, coldJunctionCelsius: TERMINALS_CELSIUS }));
  } catch (fault) {
    if (fault instanceof PhysicsError) return CHIP_LOWEST_CELSIUS;
    throw fault;
  }
};

/** The pair touches itself at the terminals: it reads them, and they tremble as it does. */
export const shorted: Fault = (celsius) => TERMINALS_CELSIUS + (celsius - Math.floor(celsius)) * 0.5;

/** A jump at a moment, for good. */
export const jumping =
  (atSeconds: number, byCelsius: number): Fault =>
  (celsius, seconds) =>
    seconds < atSeconds ? celsius : celsius + byCelsius;

/** From a moment on the value runs away, 120 °C in each payload of two seconds, until the chip's end or `top`. */
export const runningAway =
  (atSeconds: number, top: number): Fault =>
  (celsius, seconds) =>
    seconds < atSeconds ? celsius : Math.min(top, celsius + 60 * (seconds - atSeconds + 2));
