import type { AlarmKind, Finding } from '../contract/alarm.ts';

/** What a firing is said to do when the number that it is judged by stands still. */
const STALLS: readonly AlarmKind[] = ['ramp-stalled', 'soak-stalled'];

/**
 * One trouble, one alarm, across judges that do not know of each other: a stall that is told of the very channel
 * whose probe is at fault has that probe for its cause, and the furnace may be doing well. Nothing louder than a
 * stall gives way: an overshoot is told whoever measured it.
 */
export function oneTroubleEach(findings: readonly Finding[]): readonly Finding[] {
  const atFault = new Set(
    findings.filter(({ kind }) => kind === 'probe-fault').map(({ subject }) => subject),
  );
  if (atFault.size === 0) return findings;
  return findings.filter(
    ({ kind, params }) => !(STALLS.includes(kind) && atFault.has(String(params.channel))),
  );
}
