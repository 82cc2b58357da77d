/** Behaviours that can be switched on, singly and together. A behaviour is data: a name, a start, parameters. */
import { z } from 'zod';
import { SimError } from '../errors.ts';
import { channelsOf, NODE_NAMES, unitOf } from '../node-names.ts';

const timing = {
  startSeconds: z.number().min(0).default(0).describe('Seconds after the simulation (live: the start) began'),
  durationSeconds: z.number().gt(0).nullable().default(null).describe('null: until the end'),
};
const furnace = z.enum(['forge', 'oven']).default('forge');
const node = z.enum(NODE_NAMES);
const share = z.number().min(0).max(1);

const BehaviourSchema = z.discriminatedUnion('name', [
  z.strictObject({ name: z.literal('good-firing'), ...timing, furnace }),
  z.strictObject({
    name: z.literal('overshoot'),
    ...timing,
    furnace,
    excessCelsius: z.number().gt(0).max(90).default(40).describe('Noticed only this far above the target'),
  }),
  z.strictObject({
    name: z.literal('falling-gas'),
    ...timing,
    halvingMinutes: z
      .number()
      .gt(0)
      .max(600)
      .default(2)
      .describe('Ice closes the way: pressure halves in this'),
    floorPascals: z.number().min(0).max(80_000).default(1000),
  }),
  z.strictObject({
    name: z.literal('weak-cylinder'),
    ...timing,
    massKilograms: z.number().min(0).max(12).default(0.4).describe('Contents of the cylinder put on'),
    liquidCelsius: z.number().min(-45).max(40).default(-38),
  }),
  z.strictObject({
    name: z.literal('co-buildup'),
    ...timing,
    equivalenceRatio: z.number().min(0.8).max(1.5).default(1.25),
    escapeShare: share.default(0.03).describe('Share of the CO that does not burn at the mouth'),
    airChangesPerHour: z.number().min(0).max(60).default(0.3),
  }),
  z.strictObject({
    name: z.literal('thermocouple-break'),
    ...timing,
    node: node.default('forge-node'),
    channel: z.string().default('chamber'),
    mode: z.enum(['high', 'nan']).default('high').describe('high: full scale of the chip; nan: prints NaN'),
  }),
  z.strictObject({
    name: z.literal('node-drop'),
    ...timing,
    durationSeconds: z.number().gt(0).nullable().default(120),
    node: node.default('forge-node'),
  }),
  z.strictObject({
    name: z.literal('duplicate-reorder'),
    ...timing,
    node: node.default('forge-node'),
    duplicateShare: share.default(0.2),
    reorderShare: share.default(0.2),
  }),
  z.strictObject({
    name: z.literal('clock-skew'),
    ...timing,
    node: node.default('oven-node'),
    offsetSeconds: z.number().min(-86_400).max(86_400).default(90).describe('Above 0: the node is ahead'),
  }),
  z.strictObject({
    name: z.literal('frozen-sensor'),
    ...timing,
    node: node.default('forge-node'),
    channel: z.string().default('chamber'),
  }),
]);

/** One behaviour with every parameter filled in. */
export type Behaviour = z.infer<typeof BehaviourSchema>;
/** One behaviour as a person writes it: only what differs from the defaults. */
export type BehaviourInput = z.input<typeof BehaviourSchema>;
export type BehaviourName = Behaviour['name'];

export const BEHAVIOUR_NAMES: readonly BehaviourName[] = BehaviourSchema.options.map(
  (option) => option.shape.name.value,
);

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
  if (wanted.name !== 'thermocouple-break' && wanted.name !== 'frozen-sensor') return;
  const unit = unitOf(wanted.node, wanted.channel);
  const known = channelsOf(wanted.node).join(', ');
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
