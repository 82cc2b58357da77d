import type { Alarm, AlarmKind } from './alarm.ts';

/**
 * What follows from what, as data: read by the grouping of alarms, by the rules that hold an alarm back, and shown
 * with the definitions. A new kind adds a row here where it is a consequence of another.
 */

/** What two alarms must have in common for the one to come of the other. */
export type Likeness = 'channel' | 'node' | 'furnace' | 'firing' | 'shop';

export interface Cause {
  readonly kind: AlarmKind;
  readonly same: Likeness;
}

export type CauseTable = Readonly<Partial<Record<AlarmKind, readonly Cause[]>>>;

/** Less gas, or none, comes to the burner. */
const GAS_SHORT: readonly Cause[] = [
  { kind: 'gas-empty', same: 'furnace' },
  { kind: 'gas-valve-shut', same: 'furnace' },
  { kind: 'gas-chill', same: 'furnace' },
  { kind: 'gas-restricted', same: 'furnace' },
  { kind: 'gas-droop', same: 'furnace' },
  { kind: 'gas-lost', same: 'furnace' },
];
/** Gas gone, or burning no more: the forge cools, and the soak or the ramp stalls. */
const GAS_GONE: readonly Cause[] = [{ kind: 'gas-flame-out', same: 'furnace' }, ...GAS_SHORT];

/** For a kind: the kinds that it may follow from. */
export const ALARM_CAUSES: CauseTable = {
  // A channel is told first, then its node turns out to be gone: one walk to the node answers both.
  'not-watching-channel': [{ kind: 'not-watching-node', same: 'node' }],
  // What was ahead has come.
  'overshoot-ahead': [{ kind: 'overshoot', same: 'firing' }],
  'soak-stalled': [{ kind: 'probe-fault', same: 'channel' }, ...GAS_GONE],
  'ramp-stalled': [{ kind: 'probe-fault', same: 'channel' }, ...GAS_GONE],
  // Gas that runs short shows as a pressure outside the band first.
  'gas-off-band': GAS_SHORT,
  // What was foretold has come.
  'gas-will-not-last': [{ kind: 'gas-empty', same: 'furnace' }],
};

/** What of an alarm or a finding says what it is about. */
export type About = Pick<Alarm, 'subject' | 'params'>;

function named(about: About, name: string): string {
  const value = about.params[name];
  return typeof value === 'string' ? value : '';
}

function mark({ subject, params }: About, likeness: Exclude<Likeness, 'shop'>): string {
  switch (likeness) {
    case 'channel':
    case 'node':
      // An alarm about a channel or a node itself has it for its subject.
      return named({ subject, params }, likeness) || subject;
    case 'furnace':
    case 'firing':
      return named({ subject, params }, `${likeness}Id`);
    default:
      return likeness satisfies never;
  }
}

/** True when two alarms or findings are about the same channel, node, furnace, firing, or shop. */
export function isAlike(a: About, b: About, likeness: Likeness): boolean {
  if (likeness === 'shop') return true;
  const own = mark(a, likeness);
  return own !== '' && own === mark(b, likeness);
}
