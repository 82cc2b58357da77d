/** SenML packs (RFC 8428, JSON) as the nodes write them. */
import { SimError } from '../errors.ts';
import type { NodeName } from '../node-names.ts';

/** One channel's value; NaN stands for a node that prints `NaN`. */
export interface ChannelValue {
  readonly name: string;
  readonly unit: string;
  readonly value: number;
}

/** Everything that a node read at one instant of its own clock. */
export interface NodeSample {
  readonly node: NodeName;
  readonly atMs: number;
  readonly values: readonly ChannelValue[];
}

/** RFC 9100: ppm is a secondary unit, and only a pack of version 26 (10 + 2^4) may use those. */
const SECONDARY_UNITS_VERSION = 26;
const SECONDARY_UNITS: ReadonlySet<string> = new Set(['ppm']);

export function readingsTopic(node: NodeName): string {
  return `soakwatch/${node}/readings`;
}

export function statusTopic(node: NodeName): string {
  return `soakwatch/${node}/status`;
}

/**
 * Writes one or more samples of one node as one pack: a base time in seconds,
 * later samples by their offset from it.
 *
 * A NaN is written as the bare word, which is not JSON: that is what simple
 * firmware really sends, and the hub has to live through it.
 *
 * @throws SimError `bad-option` for no sample at all
 */
export function formatPack(samples: readonly NodeSample[]): string {
  const first = samples[0];
  if (first === undefined) throw new SimError('bad-option', 'A pack needs at least one sample');
  const secondary = first.values.some((each) => SECONDARY_UNITS.has(each.unit));
  const base = secondary
    ? { bver: SECONDARY_UNITS_VERSION, bt: first.atMs / 1000 }
    : { bt: first.atMs / 1000 };
  const records = samples.flatMap((sample) =>
    sample.values.map((each) => {
      const offset = (sample.atMs - first.atMs) / 1000;
      return { ...(offset === 0 ? {} : { t: offset }), n: each.name, u: each.unit, v: each.value };
    }),
  );
  const written = records.map((record, index) => {
    const text = JSON.stringify(index === 0 ? { ...base, ...record, v: 0 } : { ...record, v: 0 });
    return `${text.slice(0, -2)}${formatNumber(record.v)}}`;
  });
  return `[${written.join(',')}]`;
}

/** Rounds off the dust of binary fractions (0.1 x 33); a millionth is finer than any sensor here. */
function formatNumber(value: number): string {
  return Number.isFinite(value) ? String(Math.round(value * 1e6) / 1e6) : 'NaN';
}
