import type { Params } from '../alarm.ts';
import { PROBE_FAULTS, type ProbeFaultCode } from '../probe.ts';
import type { DisplayUnit } from '../schedule.ts';
import { difference, elapsed, numberOf, temperature, textOf } from './format.ts';

/**
 * A probe at fault, in words. What the readings show is certain, the cause is the likeliest one: the words say the
 * first as a fact and the second as something to look at.
 */

/** The fault that the params name; null when they name none that is known. */
export function probeFaultOf(params: Params): ProbeFaultCode | null {
  return PROBE_FAULTS.find((fault) => fault === params.fault) ?? null;
}

interface FaultWords {
  readonly title: string;
  /** What was measured, to stand after the furnace's name. */
  message(params: Params, unit: DisplayUnit): string;
  /** The cause in a few words, beside "no reading". */
  readonly cause: string;
  readonly check: readonly string[];
}

const LOOK_ELSEWHERE = 'Do not steer by this probe: use a second one, or the colour of the steel.';
const WRITE_DOWN = 'What this probe measured since then is in doubt: say so in the notes.';

function reads(params: Params, unit: DisplayUnit): string {
  return temperature(numberOf(params, 'measuredCelsius'), unit);
}

/** A change of another probe meanwhile, as the end of a sentence. */
function othersMoved(params: Params, verb: string, unit: DisplayUnit): string {
  const moved = numberOf(params, 'othersMovedCelsius');
  return moved === null ? '' : ` while another probe ${verb} ${difference(moved, unit)}`;
}

const FAULTS: Readonly<Record<ProbeFaultCode, FaultWords>> = {
  open: {
    title: 'Probe open',
    message: (params, unit) => `reads ${reads(params, unit)}, the end of its scale, as an open input does`,
    cause: 'the input reads open',
    check: ['Check the probe and its plug: broken, burnt or loose.'],
  },
  reversed: {
    title: 'Probe reversed',
    message: (params, unit) =>
      `reads ${reads(params, unit)} and falls${othersMoved(params, 'rises by', unit) || ' while the furnace heats'}`,
    cause: 'the probe reads backwards',
    check: ['Check the polarity at every joint: plus and minus are swapped at one of them.'],
  },
  shorted: {
    title: 'Probe shorted, or outside',
    message: (params, unit) =>
      `reads ${reads(params, unit)}, as its terminals do,${othersMoved(params, 'rose by', unit) || ' while the furnace heats'}`,
    cause: 'the probe reads its terminals',
    check: [
      'Is the probe in the furnace at all? Lying outside, it reads just so.',
      'Check the cable and the plug for wires that touch each other.',
    ],
  },
  stuck: {
    title: 'Probe stuck',
    message: (params, unit) =>
      `reads ${reads(params, unit)} without any change for ${elapsed(numberOf(params, 'faultSeconds'))}${othersMoved(params, 'moved by', unit)}`,
    cause: 'the reading stands still',
    check: ['Restart the node: it repeats an old value.', 'Check its digitiser and the cable to it.'],
  },
  step: {
    title: 'Probe jumped',
    message: (params, unit) =>
      `from ${temperature(numberOf(params, 'fromCelsius'), unit)} to ${temperature(numberOf(params, 'toCelsius'), unit)} between two readings, faster than any probe`,
    cause: 'the reading jumps',
    check: [
      'Was the probe moved or plugged just then? Then it is that.',
      'Check for a loose plug, and for the igniter or a welder beside the cable.',
    ],
  },
  rate: {
    title: 'Probe changes too fast',
    message: (params, unit) => `reads ${reads(params, unit)} and changes faster than a probe can follow`,
    cause: 'the reading changes too fast',
    check: [
      'Was the probe moved just then? Then it is that.',
      'Check the plug, the wires and the digitiser.',
    ],
  },
};

export function probeTitle(params: Params): string {
  const fault = probeFaultOf(params);
  const label = textOf(params, 'label', textOf(params, 'channel', 'a probe'));
  return `${fault === null ? 'Probe at fault' : FAULTS[fault].title}: ${label}`;
}

export function probeMessage(params: Params, unit: DisplayUnit): string {
  const fault = probeFaultOf(params);
  const furnace = textOf(params, 'furnaceName', 'Furnace');
  if (fault === null) return `${furnace}: its readings cannot be those of the furnace`;
  return `${furnace}: ${FAULTS[fault].message(params, unit)}`;
}

export function probeGuidance(params: Params): readonly string[] {
  const fault = probeFaultOf(params);
  const check = fault === null ? ['Check the probe, its plug and its cable.'] : FAULTS[fault].check;
  return [LOOK_ELSEWHERE, ...check, WRITE_DOWN];
}

/** What the readings of a channel that is not watched looked like, to stand behind "no reading"; else empty. */
export function probeCause(params: Params): string {
  const fault = probeFaultOf(params);
  return fault === null ? '' : `; ${FAULTS[fault].cause}`;
}
