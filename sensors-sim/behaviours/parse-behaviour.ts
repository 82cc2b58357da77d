/** Behaviours as written on a command line: `name[:parameter=value,...]@startMinute`. */
import { SimError } from '../errors.ts';
import { type Behaviour, checkBehaviour } from './behaviour.ts';

const SHAPE = /^(?<name>[a-z-]+)(?::(?<parameters>[^@]*))?(?:@(?<minute>\d+(?:\.\d+)?))?$/;

/**
 * Reads one behaviour; without `@` it starts at once.
 *
 * @throws SimError `bad-behaviour`
 */
export function parseBehaviour(text: string): Behaviour {
  const groups = SHAPE.exec(text)?.groups;
  if (groups === undefined) {
    const message = `'${text}' is not of the form name[:parameter=value,...]@startMinute`;
    throw new SimError('bad-behaviour', message);
  }
  const { name, parameters, minute } = groups;
  return checkBehaviour({
    ...parseParameters(text, parameters ?? ''),
    name,
    startSeconds: Number(minute ?? 0) * 60,
  });
}

function parseParameters(whole: string, text: string): Record<string, string | number> {
  const read: Record<string, string | number> = {};
  for (const pair of text.split(',').filter((part) => part !== '')) {
    const at = pair.indexOf('=');
    if (at < 1) throw new SimError('bad-behaviour', `'${pair}' in '${whole}' is not parameter=value`);
    const value = pair.slice(at + 1);
    read[pair.slice(0, at)] = value !== '' && Number.isFinite(Number(value)) ? Number(value) : value;
  }
  return read;
}
