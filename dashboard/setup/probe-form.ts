import type { Probe } from '../../hub/contract/probe.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { Channel, ShopNode } from '../../hub/contract/shop.ts';
import type { Quantity } from '../../hub/contract/units.ts';
import { readIn, writeIn } from '../schedules/entry.ts';
import { unitNamed } from '../words/format.ts';
import { reasonWords } from '../words/setup.ts';
import { probeWords } from '../words/setup-probe.ts';
import type { Reader } from './read-texts.ts';

/** What is typed of a channel's probe. Degrees in the shop's unit, always differences; empty: not known. */
export interface ProbeTexts {
  readonly type: Probe['type'] | '';
  readonly tolerance: NonNullable<Probe['tolerance']> | '';
  readonly construction: NonNullable<Probe['construction']> | '';
  readonly millimetres: string;
  readonly step: string;
  readonly offset: string;
  readonly uncertainty: string;
  readonly source: Probe['source']['kind'];
  readonly emfChannel: string;
  readonly junctionChannel: string;
  /** mV/°C, whatever the shop's unit: that is how sheets write it. */
  readonly slope: string;
}

export const NO_PROBE: ProbeTexts = {
  type: '',
  tolerance: '',
  construction: '',
  millimetres: '',
  step: '',
  offset: '',
  uncertainty: '',
  source: 'celsius',
  emfChannel: '',
  junctionChannel: '',
  slope: '',
};

export function probeTexts(probe: Probe | null, unit: DisplayUnit): ProbeTexts {
  if (probe === null) return NO_PROBE;
  const { source, correction } = probe;
  const difference = (value: number | null) => writeIn(value, unit, 'difference');
  return {
    type: probe.type,
    tolerance: probe.tolerance ?? '',
    construction: probe.construction ?? '',
    millimetres: probe.millimetres === null ? '' : String(probe.millimetres),
    step: difference(probe.digitiserStepCelsius),
    offset: difference(correction?.offsetCelsius ?? null),
    uncertainty: difference(correction?.standardUncertaintyCelsius ?? null),
    source: source.kind,
    emfChannel: source.kind === 'emf' ? source.emfChannel : '',
    junctionChannel: source.kind === 'celsius' ? '' : source.coldJunctionChannel,
    slope: source.kind === 'straight-line' ? String(source.slopeMillivoltsPerCelsius) : '',
  };
}

/** What goes to the contract's schema, its paths under "probe"; what cannot be read is noted in `reader`. */
export function probeOf(texts: ProbeTexts, reader: Reader, unit: DisplayUnit): object | null {
  if (texts.type === '') return null;
  const difference = (path: string, text: string) =>
    reader.take(`probe.${path}`, text, readIn(text, unit, 'difference', true)) ?? null;
  return {
    type: texts.type,
    tolerance: texts.tolerance || null,
    construction: texts.construction || null,
    millimetres: reader.number('probe.millimetres', texts.millimetres) ?? null,
    digitiserStepCelsius: difference('digitiserStepCelsius', texts.step),
    correction: correctionOf(
      difference('correction.offsetCelsius', texts.offset),
      difference('correction.standardUncertaintyCelsius', texts.uncertainty),
      reader,
    ),
    source: sourceOf(texts, reader),
  };
}

function correctionOf(offset: number | null, uncertainty: number | null, reader: Reader): object | null {
  if (offset === null && uncertainty === null) return null;
  const faults = reader.faults;
  if (uncertainty === null)
    faults['probe.correction.standardUncertaintyCelsius'] ??= probeWords.uncertaintyNeeded;
  if (offset === null) faults['probe.correction.offsetCelsius'] ??= probeWords.offsetNeeded;
  return { offsetCelsius: offset ?? 0, standardUncertaintyCelsius: uncertainty ?? 0 };
}

function sourceOf(texts: ProbeTexts, reader: Reader): object {
  const coldJunctionChannel = texts.junctionChannel.trim();
  switch (texts.source) {
    case 'celsius':
      return { kind: 'celsius' };
    case 'emf':
      return { kind: 'emf', emfChannel: texts.emfChannel.trim(), coldJunctionChannel };
    case 'straight-line': {
      const slope = reader.number('probe.source.slopeMillivoltsPerCelsius', texts.slope);
      return { kind: 'straight-line', slopeMillivoltsPerCelsius: slope, coldJunctionChannel };
    }
    default:
      return texts.source satisfies never;
  }
}

/** A limit of the contract as a person reads it, by the path of its field. */
export function probeLimit(path: string, limit: number, unit: DisplayUnit): string {
  if (path.endsWith('illimetres')) return `${limit} ${probeWords.millimetres}`;
  if (!path.endsWith('Celsius') || path.includes('slope')) return String(limit);
  return `${writeIn(limit, unit, 'difference')} ${unitNamed(unit).label}`;
}

/** Names of the node's other channels of a quantity; terminals have no thermocouple of their own. */
export function channelsToName(
  channels: Iterable<Channel>,
  of: { readonly node: string; readonly name: string; readonly quantity: Quantity },
): string[] {
  return [...channels]
    .filter(({ node, name, archived }) => node === of.node && name !== of.name && !archived)
    .filter(({ quantity, probe }) => quantity === of.quantity && probe === null)
    .map(({ name }) => name)
    .sort((a, b) => a.localeCompare(b));
}

/** Reasons of refusal that a wrong source shows by. */
const SOURCE_REASONS = ['no-cold-junction', 'outside-table', 'computed-here'] as const;

/** What the node's payloads were refused for that has to do with its probes; null when for nothing. */
export function sourceRefusals(node: Pick<ShopNode, 'refused'> | undefined): string | null {
  const counted = SOURCE_REASONS.flatMap((reason) => {
    const count = node?.refused[reason] ?? 0;
    return count > 0 ? [probeWords.count(count, reasonWords(reason))] : [];
  });
  return counted.length === 0 ? null : probeWords.refusedSoFar(counted.join(', '));
}
