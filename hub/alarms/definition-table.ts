import { ALARM_KINDS, type AlarmKind } from '../contract/alarm.ts';
import type { AlarmDefinitionEntry } from '../contract/alarm-definition.ts';
import { ALARM_CAUSES } from '../contract/alarm-relations.ts';
import type { ShopSettings } from '../contract/shop.ts';
import type { RationaleWords } from '../contract/words/types.ts';
import { ALARM_DEFINITIONS, type Setpoint } from './definitions.ts';

/**
 * Every alarm with its whole rationalisation, loudest first. `settings` give the setpoints that hold now, `rationale`
 * the words. Seconds and percent, as people read them.
 */
export function definitionTable(
  settings: ShopSettings,
  rationale: (kind: AlarmKind) => RationaleWords,
): AlarmDefinitionEntry[] {
  return ALARM_KINDS.map((kind) => entryOf(kind, settings, rationale(kind))).sort((a, b) => a.rank - b.rank);
}

function entryOf(kind: AlarmKind, settings: ShopSettings, words: RationaleWords): AlarmDefinitionEntry {
  const definition = ALARM_DEFINITIONS[kind];
  const { priority, rank, dangerToLife, secondsToAct, latching, acknowledgeReturn } = definition;
  const most = definition.deadbandMostOfTolerance;
  return {
    kind,
    ...words,
    priority,
    rank,
    dangerToLife,
    secondsToAct,
    latching,
    acknowledgeReturn,
    setpoint: { ...definition.setpoint, value: presentValue(definition.setpoint, settings) },
    deadbandPercent: definition.deadbandShare * 100,
    deadbandMostPercentOfTolerance: most === null ? null : most * 100,
    onDelaySeconds: definition.onDelayMs / 1000,
    offDelaySeconds: definition.offDelayMs / 1000,
    suppressedBy: [...definition.suppressedBy],
    followsFrom: [...(ALARM_CAUSES[kind] ?? [])],
    source: definition.source,
    timeSource: definition.timeSource,
  };
}

function presentValue(setpoint: Setpoint, settings: ShopSettings): number | null {
  return setpoint.from === 'setting' ? settings[setpoint.name] : null;
}
