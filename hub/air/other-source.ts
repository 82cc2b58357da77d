import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import type { Finding } from '../contract/alarm.ts';
import { type ConditionState, QUIET, stepCondition } from '../judging/condition.ts';
import type { AirCell } from './cell.ts';
import type { DayConfig } from './day-types.ts';
import type { FireState } from './fire.ts';

/**
 * Carbon monoxide that rises while every furnace is known to be cold comes from somewhere else, and putting the
 * furnace out will not stop it. A furnace that nobody sees is not cold: then blindness speaks, not this.
 */

/** Common practice, no source: well above noise and the drift of a cell, well below the first limits. */
const RISE_PPM = 10;
/** The rise that is left when the alarm may end. */
const OVER_PPM = 5;
/** What a furnace leaves behind falls; it is given this long to. */
const SETTLED_MS = 300_000;

interface SourceTrack {
  /** Lowest level since every furnace is cold, ppm; null: not yet. */
  readonly low: number | null;
  readonly ppm: number;
  readonly condition: ConditionState;
}

/** By channel id. */
export type SourceState = Readonly<Record<string, SourceTrack>>;

/** The next state. Pure. */
export function stepSource(
  config: DayConfig,
  state: SourceState,
  fire: FireState,
  cell: AirCell,
): SourceState {
  const next: Record<string, SourceTrack> = {};
  for (const { id, gas } of config.channels) {
    if (gas !== 'carbon-monoxide') continue;
    const old = state[id] ?? { low: null, ppm: 0, condition: QUIET };
    next[id] = stepTrack(old, fire, cell.values[id]?.mean ?? null, cell.to);
  }
  return next;
}

function stepTrack(old: SourceTrack, fire: FireState, ppm: number | null, at: number): SourceTrack {
  const { raised } = old.condition;
  const settled = fire.coldSince !== null && at - fire.coldSince >= SETTLED_MS;
  const low = lowAfter(old, settled, ppm);
  const rise = ppm === null || low === null ? null : ppm - low;
  const active = raised ? rise === null || rise >= OVER_PPM : settled && rise !== null && rise >= RISE_PPM;
  const condition = stepCondition(old.condition, { active, at }, ALARM_DEFINITIONS['air-other-source']);
  return { low, ppm: ppm ?? old.ppm, condition };
}

/** What was lowest before the rise stays the measure until the rise is over. */
function lowAfter(old: SourceTrack, settled: boolean, ppm: number | null): number | null {
  if (ppm === null) return old.low;
  if (!settled) return old.condition.raised ? old.low : null;
  return Math.min(old.low ?? ppm, ppm);
}

export function sourceFindings(config: DayConfig, state: SourceState, at: number): Finding[] {
  const told = config.channels.flatMap(({ id, label }) => {
    const track = state[id];
    if (track?.condition.raised !== true) return [];
    const params = { ppm: track.ppm, risePpm: track.ppm - (track.low ?? 0), channel: id, label };
    const since = track.condition.since ?? at;
    return [{ kind: 'air-other-source' as const, subject: 'shop', since, params }];
  });
  const [worst] = told.sort((a, b) => b.params.ppm - a.params.ppm);
  return worst === undefined ? [] : [worst];
}
