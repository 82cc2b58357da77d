import type { AlarmKind, Params } from '../alarm.ts';
import { AIR_GUIDANCE, DEFER } from './en-air-guidance.ts';
import { GAS_GUIDANCE } from './en-gas-guidance.ts';
import { notifyFailedWords } from './en-notify.ts';
import { probeGuidance } from './en-probe.ts';

/**
 * What to check and do, in order. The air alarms keep to the common cautious core of what agencies advise:
 * leave first, call, stay out. They defer to the certified alarm, the local code and a licensed fitter.
 */

const AIR_BLIND = [
  'Nobody knows what the air is: do not work on as if it were good.',
  'Is the certified CO alarm in the shop alive? Heed it, whatever this screen shows.',
  'Check the CO sensor: power, plug, node, network.',
  'No CO reading back soon: shut the furnace down by its own instructions and go out.',
  DEFER,
];

const CHANNEL_BLIND = [
  'Read the temperature another way: a second probe, or the colour of the steel.',
  'Check the probe and its plug: broken, burnt or loose.',
  'Check the node: power and network.',
  'No reading back soon: take the heat down. Blind time does not count as soak.',
];

const NODE_BLIND = [
  'Everything this node measures is unknown now.',
  'Check its power and its network.',
  'No reading back soon: take the heat down. Blind time does not count as soak.',
];

function isGas(params: Params): boolean {
  return params.furnaceKind === 'gas-forge';
}

function overshoot(params: Params): string[] {
  return [
    isGas(params) ? 'Turn the gas down.' : "Turn the oven's set point down.",
    'Check where the probe sits: touching an element, in the flame, or out of the hot zone.',
    'Write the peak down: grain grows with heat and time.',
  ];
}

function overshootAhead(params: Params): string[] {
  return [
    isGas(params) ? 'Ease the gas off now, a little at a time.' : 'Check the set point and ease it off.',
    'Watch that the rise slows down before the upper limit.',
  ];
}

function stalled(params: Params): string[] {
  return isGas(params)
    ? [
        'Look at the gas pressure: is the cylinder nearly empty or iced up?',
        'Look at the burner: steady, and air and gas in balance.',
        'Check for an open door, or too much cold steel at once.',
        'Flame out: shut the gas at once and follow the burner maker and a licensed fitter.',
      ]
    : [
        'Check the set point and that the elements are on.',
        'Check for an open door, or too much cold steel at once.',
        'Check where the probe sits.',
      ];
}

const GUIDANCE: Readonly<Record<AlarmKind, (params: Params) => readonly string[]>> = {
  ...AIR_GUIDANCE,
  ...GAS_GUIDANCE,
  'not-watching-air': () => AIR_BLIND,
  'not-watching-channel': () => CHANNEL_BLIND,
  'not-watching-node': () => NODE_BLIND,
  'probe-fault': probeGuidance,
  overshoot,
  'overshoot-ahead': overshootAhead,
  'soak-stalled': stalled,
  'ramp-stalled': stalled,
  'notify-failed': () => notifyFailedWords.guidance,
};

/** The steps for an alarm, in order. */
export function guidanceFor(kind: AlarmKind, params: Params): string[] {
  return [...GUIDANCE[kind](params)];
}
