/**
 * How the temperature of a furnace moves, as far as nobody knows what the smith will do next.
 *
 * State: what the probe shows (before its noise), the temperature around it, its slope (°C/s) and the bend of the
 * slope (°C/s²). The probe follows with a first-order lag. Slope and bend die away with time constants: a first-order
 * approach is a slope that dies away. Chance moves temperature, slope and bend.
 *
 * How strongly, differs from minute to minute, so there are several manners, held side by side and weighed by how
 * well each foretold the newest readings (interacting multiple models).
 *
 * Sources: the bend as in R. A. Singer, IEEE Trans. Aerospace and Electronic Systems 6, 1970; the manners as in H. A.
 * P. Blom and Y. Bar-Shalom, IEEE Trans. Automatic Control 33(8), 1988. The figures were fitted here to simulated
 * firings (tests/bench/forecast-report); no real furnace was measured.
 */
import { requireRange } from '../errors.ts';
import type { Motion } from './kalman.ts';
import { matrixOf } from './matrix.ts';
import { motionOver, type Process } from './motion.ts';

/** What is known of a probe and of the place it sits in. */
export interface ProbeTraits {
  /** Time constant of the probe, seconds: 0.5 to 120. */
  readonly lagSeconds: number;
  /** Standard deviation of a single reading, °C, resolution included: 0.01 to 20. */
  readonly noiseCelsius: number;
  /**
   * Standard deviation of what flickers faster than the probe can follow, °C, 0 to 20: gas and air around a probe do,
   * a lump of steel hardly does. The band of the temperature is never narrower.
   */
  readonly flickerCelsius: number;
}

/** A sheathed thermocouple in the chamber, read in quarter degrees. Figures invented: a shop should measure its own. */
export const CHAMBER_PROBE: ProbeTraits = { lagSeconds: 8, noiseCelsius: 0.41, flickerCelsius: 0.35 };
/** A thermocouple in or on the steel, likewise. */
export const LOAD_PROBE: ProbeTraits = { lagSeconds: 5, noiseCelsius: 0.31, flickerCelsius: 0.1 };

/** Places in the state. */
export const PROBE = 0;
export const BODY = 1;
export const SLOPE = 2;
export const STATES = 4;

/** One manner of moving. */
export interface Manner {
  /** Share of the time spent in it, when nothing is known. */
  readonly share: number;
  /** Time constants with which slope and bend die away, s. */
  readonly slopeSeconds: number;
  readonly bendSeconds: number;
  /** White noise on the temperature, °C²/s, on the slope, (°C/s)²/s, and on the bend, (°C/s²)²/s. */
  readonly bodyNoise: number;
  readonly slopeNoise: number;
  readonly bendNoise: number;
}

/** How long a manner lasts, s, before it is forgotten. */
export const MANNER_SECONDS = 295;

/** Worked at, as by a hand at a regulator; well held; sudden: gas turned, relay stuck, door opened, probe moved. */
export const MANNERS: readonly Manner[] = [
  {
    share: 0.2,
    slopeSeconds: 524,
    bendSeconds: 2160,
    bodyNoise: 3.2e-6,
    slopeNoise: 7.5e-12,
    bendNoise: 1.2e-17,
  },
  {
    share: 0.779,
    slopeSeconds: 725,
    bendSeconds: 2.1,
    bodyNoise: 5.7e-6,
    slopeNoise: 1e-15,
    bendNoise: 8.1e-14,
  },
  {
    share: 0.021,
    slopeSeconds: 113,
    bendSeconds: 271,
    bodyNoise: 1.1e-5,
    slopeNoise: 8.3e-4,
    bendNoise: 2.5e-8,
  },
];

/**
 * Refuses traits that cannot be.
 *
 * @throws PhysicsError `out-of-range`
 */
export function requireTraits(traits: ProbeTraits): ProbeTraits {
  requireRange('lag of the probe', traits.lagSeconds, 0.5, 120, 's');
  requireRange('noise of the probe', traits.noiseCelsius, 0.01, 20, '°C');
  requireRange('flicker', traits.flickerCelsius, 0, 20, '°C');
  return traits;
}

/** A manner as a process in continuous time. */
export function processOf(manner: Manner, lagSeconds: number): Process {
  const drift = [
    [-1 / lagSeconds, 1 / lagSeconds, 0, 0],
    [0, 0, 1, 0],
    [0, 0, -1 / manner.slopeSeconds, 1],
    [0, 0, 0, -1 / manner.bendSeconds],
  ];
  const noise = [0, manner.bodyNoise, manner.slopeNoise, manner.bendNoise];
  return { drift, diffusion: matrixOf(STATES, STATES, (i, j) => (i === j ? (noise[i] ?? 0) : 0)) };
}

/** Steps that come again and again (readings every second, a forecast's grid) are worked out once. */
const remembered = new Map<string, readonly Motion[]>();
const MOST_REMEMBERED = 256;

/** The motion of every manner over some seconds. */
export function motionsOver(lagSeconds: number, seconds: number): readonly Motion[] {
  const key = `${lagSeconds}/${seconds}`;
  const found = remembered.get(key);
  if (found !== undefined) return found;
  const made = MANNERS.map((manner) => motionOver(processOf(manner, lagSeconds), seconds));
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(key, made);
  return made;
}
