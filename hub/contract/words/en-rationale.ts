import type { AlarmKind } from '../alarm.ts';
import { AIR_RATIONALE } from './en-air-rationale.ts';
import { GAS_RATIONALE } from './en-gas-rationale.ts';
import type { RationaleWords } from './types.ts';

/** Why each alarm exists, in words: cause, consequence, and what to do first. */
const RATIONALE: Readonly<Record<AlarmKind, RationaleWords>> = {
  'not-watching-channel': {
    name: 'Not watching a channel',
    cause: 'Probe, plug or cable broken or loose; node stuck; readings that cannot be true.',
    consequence: 'The heat goes where nobody sees it; blind time does not count as soak.',
    action: 'Read the temperature another way, then see to the probe.',
  },
  'not-watching-node': {
    name: 'Not watching a node',
    cause: 'Power, plug or network of a node has gone.',
    consequence: 'Everything that the node measures is unknown.',
    action: 'Check its power and its network.',
  },
  'not-watching-air': {
    name: 'Not watching the air',
    cause: 'A furnace is at work and no carbon monoxide reading is fresh.',
    consequence: 'Carbon monoxide can rise to a deadly level without anyone noticing.',
    action: 'Heed the certified CO alarm; no reading back soon: shut down and go out.',
  },
  ...AIR_RATIONALE,
  ...GAS_RATIONALE,
  'probe-fault': {
    name: 'Probe at fault',
    cause: 'Reversed, shorted, stuck, open or jumping input, or a probe outside the furnace.',
    consequence: 'The firing is steered by a number that is not the heat of the furnace.',
    action: 'Do not steer by this probe: use a second one, or the colour of the steel.',
  },
  overshoot: {
    name: 'Overshoot',
    cause: 'More heat than the schedule allows: gas or set point too high.',
    consequence: 'Grain grows, edges burn; the piece may be lost.',
    action: 'Turn the gas or the set point down.',
  },
  'overshoot-ahead': {
    name: 'Overshoot ahead',
    cause: 'The temperature rises too fast to be caught at the upper limit.',
    consequence: 'Overshoot.',
    action: 'Ease the gas or the set point off now.',
  },
  'soak-stalled': {
    name: 'Soak stalled',
    cause: 'Too little heat: gas short, burner out of balance, door open, too much cold steel.',
    consequence: 'The soak clock does not count; time and gas are spent for nothing.',
    action: 'Look at the gas pressure and the burner, or at the set point and the elements.',
  },
  'ramp-stalled': {
    name: 'Ramp stalled',
    cause: 'Too little heat for the target, or a flame that has gone out.',
    consequence: 'The target is not reached; gas may run without a flame.',
    action: 'Look at the burner: flame out, shut the gas at once.',
  },
  'notify-failed': {
    name: 'Nobody is told',
    cause: 'Address, network, password or the service of a way of reaching people fails.',
    consequence: 'Whoever is away from the wall is not called when something is wrong.',
    action: 'Stay at the wall; mend the way under Setup and test it.',
  },
};

export function rationaleWords(kind: AlarmKind): RationaleWords {
  return RATIONALE[kind];
}
