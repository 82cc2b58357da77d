import type { Archive } from '../../archive/types.ts';
import type { Probe } from '../../contract/probe.ts';
import { QUANTITY_FACTS } from '../../contract/quantity.ts';
import type { Channel } from '../../contract/shop.ts';
import type { Quantity } from '../../contract/units.ts';
import { toleranceRows } from '../../physics/thermocouple-tolerance-table.ts';
import { WatchError } from '../../watch/errors.ts';

/** The channel that a probe is to be set up for. */
type Bearer = Pick<Channel, 'node' | 'name' | 'quantity'>;

/**
 * Refuses a probe that does not fit its channel or the node's other channels. A channel that the node has not yet
 * spoken of may be named: it will be taken by what it turns out to be.
 *
 * @throws WatchError `invalid-request`
 */
export function checkProbe(archive: Pick<Archive, 'channels'>, bearer: Bearer, probe: Probe | null): void {
  if (probe === null) return;
  const { source } = probe;
  if (bearer.quantity !== 'temperature') {
    throw refusal(
      `a probe belongs to a temperature channel, ${bearer.name} is one of ${nameOf(bearer.quantity)}`,
    );
  }
  checkClass(probe);
  const neighbours = archive.channels().filter(({ node, archived }) => node === bearer.node && !archived);
  const leaning = neighbours.find((channel) => junctionOf(channel.probe) === bearer.name);
  if (leaning) {
    throw refusal(
      `${leaning.name} takes ${bearer.name} for its terminals: ${bearer.name} cannot have a probe of its own`,
    );
  }
  if (source.kind === 'celsius') return;
  checkNeighbour(bearer, neighbours, source.coldJunctionChannel, 'temperature');
  if (source.kind === 'emf') checkNeighbour(bearer, neighbours, source.emfChannel, 'emf');
  if (neighbours.some(({ name, probe: own }) => name === source.coldJunctionChannel && own !== null)) {
    throw refusal(
      `${source.coldJunctionChannel} has a probe of its own: the terminals need a sensor that has none`,
    );
  }
}

function checkClass({ type, tolerance }: Probe): void {
  if (tolerance === null) return;
  const known = toleranceRows.filter(({ types }) => types.includes(type)).map((row) => row.class);
  if (known.includes(tolerance)) return;
  const choices = [...new Set(known)].join(', ');
  throw refusal(
    `there is no tolerance class ${tolerance} for type ${type}: choose one of ${choices}, or none`,
  );
}

function checkNeighbour(
  bearer: Bearer,
  neighbours: readonly Channel[],
  name: string,
  wanted: Quantity,
): void {
  if (name === bearer.name) {
    throw refusal(`${name} is computed from another channel: it cannot be computed from itself`);
  }
  const found = neighbours.find((channel) => channel.name === name);
  if (found === undefined || found.quantity === wanted) return;
  throw refusal(
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

function refusal(message: string): WatchError {
  return new WatchError('invalid-request', message);
}
