/** The command line of the simulated shop. */
import { parseArgs } from 'node:util';
import { BEHAVIOUR_NAMES, type Behaviour, requireFitted } from './behaviours/behaviour.ts';
import { parseBehaviour } from './behaviours/parse-behaviour.ts';
import { SimError } from './errors.ts';
import { FITTINGS, type Fitting } from './node-names.ts';
import { type FurnaceName, PLANS, type Plan } from './plans.ts';

/** What the command line asks for. */
export interface SimSettings {
  readonly mqttUrl: string;
  readonly speed: number;
  readonly seed: number;
  readonly historyHours: number;
  readonly historyEverySeconds: number;
  readonly behaviours: readonly Behaviour[];
  /** undefined: the usual plan; null: none. */
  readonly forgePlan: Plan | null | undefined;
  readonly ovenPlan: Plan | null | undefined;
  /** When the shop goes live, epoch ms; undefined: now. */
  readonly liveMs: number | undefined;
  readonly bufferLimit: number;
  readonly printPlan: boolean;
  readonly fittings: readonly Fitting[];
  /** Publish the truth on its own topics. */
  readonly truth: boolean;
  readonly listBehaviours: boolean;
  readonly help: boolean;
}

const PLAN_NAMES = PLANS.map((plan) => plan.name).join(', ');

export const HELP = `A simulated shop that publishes over MQTT. Nothing in it is real.
Prints 'history-plan {...}' at the start and 'event {...}' when a firing starts, moves on or ends.

  --mqtt URL                 broker, mqtt:// or mqtts:// (mqtt://127.0.0.1:1883)
  --speed N                  seconds that the shop lives through in one second, 0.1 to 3600 (1);
                             above 1 its readings run ahead of the hub's clock
  --seed N                   whole number; the same seed gives the same shop (7)
  --history-hours N          length of the past that is sent first, 0 to 48 (10)
  --history-every-seconds N  spacing of the readings of the past, 1 to 60 (5)
  --behaviour B              name[:parameter=value,...]@startMinute, may be repeated
                             ${BEHAVIOUR_NAMES.join(', ')}
  --list-behaviours          print each with its parameters and what it does, and stop
  --fit F,...                channels beyond the usual ones: ${FITTINGS.join(', ')}
  --truth                    publish what no sensor knows under truth/, which no hub reads
  --forge-plan NAME          what the forge is doing at the start, or 'none' (forge-anneal)
  --oven-plan NAME           what the oven is doing at the start, or 'none' (oven-temper)
                             ${PLAN_NAMES}
  --now-ms N                 instant at which the shop goes live, epoch ms (now); less than ten
                             minutes ago is caught up with, any other is a clock of its own
  --buffer N                 packs a node holds while the hub is away, 100 to 1000000 (20000)
  --print-plan               print the plan of the past as JSON and stop
  --help                     print this and stop
`;

/**
 * Reads the command line.
 *
 * @param args without the program's own name
 * @throws SimError `bad-flag` or `bad-behaviour`, saying which flag and what would do
 */
export function readSettings(args: readonly string[]): SimSettings {
  const flags = parse(args);
  const behaviours = flags.behaviour.map(parseBehaviour);
  const fittings = fittingsOf(flags.fit);
  requireFitted(behaviours, fittings);
  return {
    mqttUrl: mqttUrl(flags.mqtt),
    speed: number('--speed', flags.speed, 0.1, 3600),
    seed: wholeNumber('--seed', flags.seed, 0, 4_294_967_295),
    historyHours: number('--history-hours', flags['history-hours'], 0, 48),
    historyEverySeconds: wholeNumber('--history-every-seconds', flags['history-every-seconds'], 1, 60),
    behaviours,
    forgePlan: planOf('--forge-plan', flags['forge-plan'], 'forge'),
    ovenPlan: planOf('--oven-plan', flags['oven-plan'], 'oven'),
    liveMs: flags['now-ms'] === undefined ? undefined : instant(flags['now-ms']),
    bufferLimit: wholeNumber('--buffer', flags.buffer, 100, 1_000_000),
    printPlan: flags['print-plan'],
    fittings,
    truth: flags.truth,
    listBehaviours: flags['list-behaviours'],
    help: flags.help,
  };
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      strict: true,
      allowPositionals: false,
      options: {
        mqtt: { type: 'string', default: 'mqtt://127.0.0.1:1883' },
        speed: { type: 'string', default: '1' },
        seed: { type: 'string', default: '7' },
        'history-hours': { type: 'string', default: '10' },
        'history-every-seconds': { type: 'string', default: '5' },
        behaviour: { type: 'string', multiple: true, default: [] },
        'forge-plan': { type: 'string' },
        'oven-plan': { type: 'string' },
        'now-ms': { type: 'string' },
        buffer: { type: 'string', default: '20000' },
        'print-plan': { type: 'boolean', default: false },
        'list-behaviours': { type: 'boolean', default: false },
        fit: { type: 'string', multiple: true, default: [] },
        truth: { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    }).values;
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new SimError('bad-flag', `${reason} (--help lists the flags)`);
  }
}

function number(flag: string, text: string, low: number, high: number): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (value >= low && value <= high) return value;
  throw new SimError('bad-flag', `${flag} takes a number from ${low} to ${high}, not '${text}'`);
}

function wholeNumber(flag: string, text: string, low: number, high: number): number {
  const value = number(flag, text, low, high);
  if (Number.isInteger(value)) return value;
  throw new SimError('bad-flag', `${flag} takes a whole number from ${low} to ${high}, not '${text}'`);
}

/** Whole seconds: the nodes read on the second. */
function instant(text: string): number {
  const value = wholeNumber('--now-ms', text, 0, 8_640_000_000_000);
  return Math.floor(value / 1000) * 1000;
}

function mqttUrl(text: string): string {
  const protocol = URL.canParse(text) ? new URL(text).protocol : '';
  if (['mqtt:', 'mqtts:', 'ws:', 'wss:'].includes(protocol)) return text;
  throw new SimError('bad-flag', `--mqtt takes a URL such as mqtt://127.0.0.1:1883, not '${text}'`);
}

function fittingsOf(texts: readonly string[]): readonly Fitting[] {
  return texts
    .flatMap((text) => text.split(','))
    .map((text) => {
      const found = FITTINGS.find((each) => each === text.trim());
      if (found !== undefined) return found;
      throw new SimError('bad-flag', `--fit takes ${FITTINGS.join(', ')}, not '${text}'`);
    });
}

function planOf(flag: string, text: string | undefined, furnace: FurnaceName): Plan | null | undefined {
  if (text === undefined) return undefined;
  if (text === 'none') return null;
  const plan = PLANS.find((each) => each.name === text && each.furnace === furnace);
  if (plan !== undefined) return plan;
  const known = PLANS.filter((each) => each.furnace === furnace).map((each) => each.name);
  throw new SimError('bad-flag', `${flag} takes ${known.join(', ')} or none, not '${text}'`);
}
