import type { AlarmKind } from '../../hub/contract/alarm.ts';
import type { AlarmDefinitionEntry } from '../../hub/contract/alarm-definition.ts';
import { definitionWords, SETPOINT_WORDS } from '../words/alarm-definitions.ts';
import { number } from '../words/format.ts';
import { duration } from '../words/time.ts';

/** The numbers of a definition in words. Pure. */

export type Fact = readonly [name: string, value: string];
export type Names = ReadonlyMap<AlarmKind, string>;

export function numbersOf(entry: AlarmDefinitionEntry, names: Names): Fact[] {
  const { secondsToAct, onDelaySeconds, offDelaySeconds, suppressedBy, followsFrom } = entry;
  const named = (kinds: readonly AlarmKind[]) =>
    [...new Set(kinds.map((kind) => names.get(kind) ?? kind))].join(', ');
  const facts: Fact[] = [
    [definitionWords.time, secondsToAct === 0 ? definitionWords.atOnce : duration(secondsToAct)],
    [definitionWords.setpoint, setpointOf(entry)],
    [definitionWords.deadband, deadbandOf(entry)],
    [definitionWords.delays, definitionWords.delay(`${onDelaySeconds} s`, `${offDelaySeconds} s`)],
    [definitionWords.after, afterOf(entry)],
    [definitionWords.heldBackBy, named(suppressedBy.map(({ by }) => by))],
    [definitionWords.followsFrom, named(followsFrom.map(({ kind }) => kind))],
    [definitionWords.source, entry.source],
    [definitionWords.timeSource, entry.timeSource],
  ];
  return facts.filter(([, value]) => value !== '');
}

function setpointOf({ setpoint: { from, name, value, unit } }: AlarmDefinitionEntry): string {
  const words = spaced(name);
  if (value === null) return from === 'rule' ? withUnit(words, unit) : `${words}, ${SETPOINT_WORDS[from]}`;
  return `${number(value, Number.isInteger(value) ? 0 : 1)} ${unit} (${words})`.replace('  ', ' ');
}

const withUnit = (words: string, unit: string): string => (unit === '' ? words : `${words}, ${unit}`);

/** A name out of the settings as words: "carbonMonoxideSecondPpm" is "carbon monoxide second ppm". */
function spaced(name: string): string {
  return name.replace(/[a-z][A-Z]/g, (pair) => `${pair.charAt(0)} ${pair.charAt(1).toLowerCase()}`);
}

function deadbandOf({ deadbandPercent, deadbandMostPercentOfTolerance: most }: AlarmDefinitionEntry): string {
  if (deadbandPercent === 0) return definitionWords.noDeadband;
  const rest = most === null ? '' : definitionWords.mostOfTolerance(number(most));
  return `${definitionWords.ofLimit(number(deadbandPercent))}${rest}`;
}

function afterOf({ latching, acknowledgeReturn }: AlarmDefinitionEntry): string {
  if (latching) return definitionWords.latching;
  return acknowledgeReturn ? definitionWords.mustBeSeen : definitionWords.goesByItself;
}

/** Those in whose name, cause, consequence or action every word of `sought` stands. */
export function foundIn(
  entries: readonly AlarmDefinitionEntry[],
  sought: string,
): readonly AlarmDefinitionEntry[] {
  const parts = sought.toLowerCase().split(/\s+/).filter(Boolean);
  return entries.filter(({ name, cause, consequence, action }) => {
    const text = `${name} ${cause} ${consequence} ${action}`.toLowerCase();
    return parts.every((part) => text.includes(part));
  });
}
