/** Behaviours that can be switched on, singly and together. A behaviour is data: a name, a start, parameters. */
import { z } from 'zod';
import { SimError } from '../errors.ts';
import { channelsOf, FITTINGS, type Fitting, fittingOf, unitOf } from '../node-names.ts';
import { AIR_BEHAVIOURS } from './air-behaviours.ts';
import { FURNACE_BEHAVIOURS } from './furnace-behaviours.ts';
import { GAS_BEHAVIOURS } from './gas-behaviours.ts';
import { LINK_BEHAVIOURS, SENSOR_BEHAVIOURS } from './sensor-behaviours.ts';

const BehaviourSchema = z.discriminatedUnion('name', [
  ...FURNACE_BEHAVIOURS,
  ...GAS_BEHAVIOURS,
  ...AIR_BEHAVIOURS,
  ...SENSOR_BEHAVIOURS,
  ...LINK_BEHAVIOURS,
]);

/** One behaviour with every parameter filled in. */
export type Behaviour = z.infer<typeof BehaviourSchema>;
/** One behaviour as a person writes it: only what differs from the defaults. */
export type BehaviourInput = z.input<typeof BehaviourSchema>;
export type BehaviourName = Behaviour['name'];

export const BEHAVIOUR_NAMES: readonly BehaviourName[] = BehaviourSchema.options.map(
  (option) => option.shape.name.value,
);

const LIST_FILLS_IN = ['startSeconds', 'durationSeconds', 'name'];

/** Every behaviour with its parameters and their defaults, for a person to choose from: one line each. */
export function listBehaviours(): string {
  return BehaviourSchema.options
    .map(({ shape, description }) => {
      const parameters = Object.entries(shape).filter(([key]) => !LIST_FILLS_IN.includes(key));
      const filled: Readonly<Record<string, unknown>> = checkBehaviour({ name: shape.name.value });
      const written = parameters.map(([key]) => `${key}=${String(filled[key])}`).join(',');
      const head = written === '' ? shape.name.value : `${shape.name.value}:${written}`;
      return `${head}\n    ${description ?? ''}`;
    })
    .join('\n');
}

/**
 * Refuses sensors that the shop does not have: a fault of theirs would be seen by nobody.
 *
 * @throws SimError `bad-behaviour`
 */
export function requireFitted(list: readonly Behaviour[], fittings: readonly Fitting[]): void {
  for (const each of list) {
    if (!('channel' in each)) continue;
    const needed = fittingOf(each.node, each.channel);
    if (needed === null || fittings.includes(needed)) continue;
    const message = `${each.name}: '${each.channel}' of ${each.node} is there only in a shop fitted with ${needed}`;
    throw new SimError('bad-behaviour', message);
  }
}

/**
 * Fills in what was left out and refuses what cannot be.
 *
 * @throws SimError `bad-behaviour` naming the behaviour, the parameter and the rule
 */
export function behaviour(input: BehaviourInput): Behaviour {
  return checkBehaviour(input);
}

/** The same for something read from outside. */
export function checkBehaviour(input: unknown): Behaviour {
  const parsed = BehaviourSchema.safeParse(input);
  if (!parsed.success) {
    const faults = parsed.error.issues.map(
      (issue) => `${issue.path.join('.') || 'behaviour'}: ${issue.message}`,
    );
    const about = nameOf(input);
    const known = `Behaviours: ${BEHAVIOUR_NAMES.join(', ')}`;
    throw new SimError('bad-behaviour', `${about}: ${faults.join('; ')}. ${known}`);
  }
  checkChannel(parsed.data);
  return parsed.data;
}

function nameOf(input: unknown): string {
  const named = z.object({ name: z.string() }).safeParse(input);
  return named.success ? named.data.name : 'unnamed behaviour';
}

function checkChannel(wanted: Behaviour): void {
  if (!('channel' in wanted)) return;
  const unit = unitOf(wanted.node, wanted.channel);
  const known = channelsOf(wanted.node, FITTINGS).join(', ');
  if (unit === null) {
    const message = `${wanted.name}: ${wanted.node} has no channel '${wanted.channel}'; it has ${known}`;
    throw new SimError('bad-behaviour', message);
  }
  if (wanted.name === 'thermocouple-break' && unit !== 'Cel') {
    const message = `thermocouple-break: '${wanted.channel}' of ${wanted.node} is not a thermocouple`;
    throw new SimError('bad-behaviour', message);
  }
}

/** True while a behaviour is on, `elapsedSeconds` after the start of the simulation. */
export function isActive(wanted: Behaviour, elapsedSeconds: number): boolean {
  const since = elapsedSeconds - wanted.startSeconds;
  return since >= 0 && (wanted.durationSeconds === null || since < wanted.durationSeconds);
}

/** Narrows a list to the behaviours of one name. */
export function named<N extends BehaviourName>(
  list: readonly Behaviour[],
  name: N,
): Extract<Behaviour, { name: N }>[] {
  return list.filter((each): each is Extract<Behaviour, { name: N }> => each.name === name);
}
