import type { ProbeFaultState, ProbeFinding } from '../physics/probe-faults.ts';
import type { ProbeChannel } from './types.ts';

/**
 * Which recognised faults are told. hub/physics looks at readings alone; here it is known what ordinary work does
 * to a probe: it is put into a hot furnace, and a piece with a probe on it is quenched. Common practice, no source.
 */

/** A probe that is put in has reached what it will within this. */
const PUT_IN_MS = 60_000;
/** A reversed pair reads below its terminals; where they are not known, below this. */
const TERMINALS_LOWEST_CELSIUS = 10;

export interface Circumstances {
  /** When it last read no more than a shop can be warm, epoch ms. */
  readonly coolAt: number | null;
  /** The newest reading is a good one. */
  readonly usable: boolean;
  /** Undefined: nobody knows. */
  readonly terminalsCelsius: number | undefined;
}

export function isTold(channel: ProbeChannel, state: ProbeFaultState, around: Circumstances): boolean {
  const { finding } = state;
  // Without a usable reading it is blindness, which tells it louder and names the fault as its cause.
  if (finding === null || !around.usable) return false;
  switch (finding.fault) {
    case 'reversed':
      return isBelowTerminals(state, around);
    case 'step':
    case 'rate':
      return !isBeingHandled(channel, state, finding, around);
    case 'open':
    case 'shorted':
    case 'stuck':
      return true;
    default:
      throw finding.fault satisfies never;
  }
}

function isBelowTerminals({ previous }: ProbeFaultState, { terminalsCelsius }: Circumstances): boolean {
  return previous !== undefined && previous.celsius < (terminalsCelsius ?? TERMINALS_LOWEST_CELSIUS);
}

/** Put in, taken out or quenched: the probe did just what it was made to do. */
function isBeingHandled(
  channel: ProbeChannel,
  state: ProbeFaultState,
  finding: ProbeFinding,
  { coolAt }: Circumstances,
): boolean {
  if (direction(state, finding) < 0) return channel.role === 'load';
  return coolAt !== null && finding.sinceMs - coolAt <= PUT_IN_MS;
}

/** Above 0: it rose. */
function direction({ fast }: ProbeFaultState, { fault, evidence }: ProbeFinding): number {
  if (fault === 'rate') return fast?.direction ?? 1;
  return Number(evidence.toCelsius) - Number(evidence.fromCelsius);
}
