import { isIP } from 'node:net';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { z } from 'zod';

/** One table of what can be set from outside: it checks, it documents, and `--help` is made from it. */
const Port = z.coerce.number().int().min(0).max(65_535);
const FLAGS = {
  data: {
    env: 'SOAKWATCH_DATA',
    schema: z.string().min(1),
    fallback: 'data',
    hint: 'DIR',
    help: 'folder for the archive',
  },
  'http-port': {
    env: 'SOAKWATCH_HTTP_PORT',
    schema: Port,
    fallback: '7625',
    hint: 'N',
    help: 'port of the wall and the API (0: any free one)',
  },
  'mqtt-port': {
    env: 'SOAKWATCH_MQTT_PORT',
    schema: Port,
    fallback: '1883',
    hint: 'N',
    help: 'port where nodes publish (0: any free one)',
  },
  bind: {
    env: 'SOAKWATCH_BIND',
    schema: z.string().min(1),
    fallback: '127.0.0.1',
    hint: 'ADDR',
    help: 'address to listen on',
  },
  broker: {
    env: 'SOAKWATCH_BROKER',
    schema: z.string().regex(/^mqtts?:\/\//, 'an mqtt:// or mqtts:// URL'),
    fallback: null,
    hint: 'URL',
    help: 'use this MQTT broker instead of the built-in one',
  },
  'host-name': {
    env: 'SOAKWATCH_HOST_NAME',
    schema: z.string().min(1),
    fallback: null,
    hint: 'NAME',
    help: 'a further host name that the wall is opened by',
  },
} as const;

const SWITCHES = {
  'open-to-network': {
    env: 'SOAKWATCH_OPEN_TO_NETWORK',
    help: 'listen beyond this machine although nobody has to sign in yet',
  },
  simulated: { env: 'SOAKWATCH_SIMULATED', help: 'mark everything as a simulated shop' },
  help: { env: null, help: 'show this' },
} as const;

export interface HubSettings {
  readonly dataDir: string;
  readonly httpPort: number;
  readonly mqttPort: number;
  readonly bind: string;
  readonly brokerUrl: string | null;
  readonly hostNames: readonly string[];
  readonly simulated: boolean;
}

export class SettingsError extends Error {
  readonly code: 'bad-settings' | 'help';
  constructor(code: SettingsError['code'], message: string) {
    super(message);
    this.name = 'SettingsError';
    this.code = code;
  }
}

/**
 * Reads command line and environment; the command line wins. All faults are told at once.
 * Errors: SettingsError 'bad-settings', or 'help' with the help text.
 */
export function readSettings(
  argv: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): HubSettings {
  const given = parseFlags(argv);
  if (given.help === true) throw new SettingsError('help', helpText());
  const faults: string[] = [];
  const value = <K extends keyof typeof FLAGS>(name: K): z.infer<(typeof FLAGS)[K]['schema']> | null => {
    const flag = FLAGS[name];
    const fromLine = given[name];
    const text = typeof fromLine === 'string' ? fromLine : (env[flag.env] ?? flag.fallback);
    if (text === null) return null;
    const parsed = flag.schema.safeParse(text);
    if (parsed.success) return parsed.data as z.infer<(typeof FLAGS)[K]['schema']>;
    const where = typeof fromLine === 'string' ? `--${name}` : flag.env;
    faults.push(`${where}: ${parsed.error.issues[0]?.message ?? 'not understood'} (given: ${text})`);
    return null;
  };
  const on = (name: 'open-to-network' | 'simulated'): boolean =>
    given[name] === true || ['1', 'true', 'yes'].includes(env[SWITCHES[name].env] ?? '');

  const settings = {
    dataDir: resolve(value('data') ?? 'data'),
    httpPort: value('http-port') ?? 0,
    mqttPort: value('mqtt-port') ?? 0,
    bind: value('bind') ?? '127.0.0.1',
    brokerUrl: value('broker'),
    hostNames: [value('host-name')].flatMap((name) => name?.toLowerCase() ?? []),
    simulated: on('simulated'),
  };
  if (!isLoopback(settings.bind) && !on('open-to-network')) {
    faults.push(
      `--bind ${settings.bind}: nobody has to sign in to this hub yet, so anybody who reaches it could start, end and change firings. It listens on this machine only, unless you add --open-to-network`,
    );
  }
  if (faults.length > 0) throw new SettingsError('bad-settings', faults.join('\n'));
  return settings;
}

function parseFlags(argv: readonly string[]): Record<string, string | boolean | undefined> {
  const options: Record<string, { type: 'string' | 'boolean' }> = {};
  for (const name of Object.keys(FLAGS)) options[name] = { type: 'string' };
  for (const name of Object.keys(SWITCHES)) options[name] = { type: 'boolean' };
  try {
    const { values } = parseArgs({ args: [...argv], options, strict: true });
    return values as Record<string, string | boolean | undefined>;
  } catch (fault) {
    const said = fault instanceof Error ? fault.message : String(fault);
    throw new SettingsError('bad-settings', `${said}\n\n${helpText()}`);
  }
}

export function isLoopback(address: string): boolean {
  if (address === 'localhost' || address === '::1') return true;
  return isIP(address) === 4 && address.startsWith('127.');
}

export function helpText(): string {
  const flags = Object.entries(FLAGS).map(([name, flag]) => {
    const fallback = flag.fallback === null ? '' : ` (default ${flag.fallback})`;
    return `  --${`${name} ${flag.hint}`.padEnd(20)} ${flag.help}${fallback} [${flag.env}]`;
  });
  const switches = Object.entries(SWITCHES).map(([name, entry]) => `  --${name.padEnd(20)} ${entry.help}`);
  return ['Soakwatch hub', '', ...flags, ...switches].join('\n');
}
