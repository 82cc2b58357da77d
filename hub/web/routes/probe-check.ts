import type { Archive } from '../../archive/types.ts';
import type { Probe } from '../../contract/probe.ts';
import { QUANTITY_FACTS } from '../../contract/quantity.ts';
import type { Channel } from '../../contract/shop.ts';
import type { Quantity } from '../../contract/units.ts';
import { toleranceRows } from '../../physics/thermocouple-tolerance-table.ts';
import { FieldError } from '../../watch/errors.ts';

/** The channel that a probe is to be set up for. */
type Bearer = Pick<Channel, 'node' | 'name' | 'quantity'>;

/**
 * Refuses a probe that does not fit its channel or the node's other channels. A channel that the node has not yet
 * spoken of may be named: it will be taken by what it turns out to be.
 *
 * @throws FieldError `invalid-request` with the place of the field at fault
 */
export function checkProbe(archive: Pick<Archive, 'channels'>, bearer: Bearer, probe: Probe | null): void {
  if (probe === null) return;
  const { source } = probe;
  if (bearer.quantity !== 'temperature') {
    throw new FieldError(
      '/probe',
      `a probe belongs to a temperature channel, ${bearer.name} is one of ${nameOf(bearer.quantity)}`,
    );
  }
  checkClass(probe);
  const neighbours = archive.channels().filter(({ node, archived }) => node === bearer.node && !archived);
  const leaning = neighbours.find((channel) => junctionOf(channel.probe) === bearer.name);
  if (leaning) {
    throw new FieldError(
      '/probe',
      `${leaning.name} takes ${bearer.name} for its terminals: ${bearer.name} cannot have a probe of its own`,
    );
  }
  if (source.kind === 'celsius') return;
  checkNeighbour(bearer, neighbours, source, 'coldJunctionChannel');
  if (source.kind === 'emf') checkNeighbour(bearer, neighbours, source, 'emfChannel');
  if (neighbours.some(({ name, probe: own }) => name === source.coldJunctionChannel && own !== null)) {
    throw new FieldError(
      '/probe/source/coldJunctionChannel',
      `${source.coldJunctionChannel} has a probe of its own: the terminals need a sensor that has none`,
    );
  }
}

function checkClass({ type, tolerance }: Probe): void {
  if (tolerance === null) return;
  const known = toleranceRows.filter(({ types }) => types.includes(type)).map((row) => row.class);
  if (known.includes(tolerance)) return;
  const choices = [...new Set(known)].join(', ');
  throw new FieldError(
    '/probe/tolerance',
    `there is no tolerance class ${tolerance} for type ${type}: choose one of ${choices}, or none`,
  );
}

/** What each field of a source must name. */
const WANTED = { coldJunctionChannel: 'temperature', emfChannel: 'emf' } as const;

function checkNeighbour<Field extends keyof typeof WANTED>(
  bearer: Bearer,
  neighbours: readonly Channel[],
  source: Readonly<Record<Field, string>>,
  field: Field,
): void {
  const name = source[field];
  const wanted: Quantity = WANTED[field];
  const path = `/probe/source/${field}`;
  if (name === bearer.name) {
    throw new FieldError(path, `${name} is computed from another channel: it cannot be computed from itself`);
  }
  const found = neighbours.find((channel) => channel.name === name);
  if (found === undefined || found.quantity === wanted) return;
  throw new FieldError(
    path,
    `${name} is a channel of ${nameOf(found.quantity)}, one of ${nameOf(wanted)} is needed there`,
  );
}

function junctionOf(probe: Probe | null): string | null {
  if (probe === null || probe.source.kind === 'celsius') return null;
  return probe.source.coldJunctionChannel;
}

function nameOf(quantity: Quantity): string {
  return QUANTITY_FACTS[quantity].label.toLowerCase();
}
