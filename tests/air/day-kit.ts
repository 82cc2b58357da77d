import { type AirCell, CELL_MS } from '../../hub/air/cell.ts';
import { dayFindings, startDay, stepDay } from '../../hub/air/day.ts';
import type { DayChannel, DayConfig, DayState } from '../../hub/air/day-types.ts';
import type { Finding } from '../../hub/contract/alarm.ts';
import { cohbConstants } from '../../hub/physics/carbon-monoxide/carboxyhaemoglobin-constants.ts';
import { limitProfile } from '../../hub/physics/carbon-monoxide/limits.ts';

/** A day in the air of an invented shop, told minute by minute. */

export const START = Date.UTC(2026, 2, 2, 8);
export const MINUTE = 60_000;

export function sensor(id: string, more: Partial<DayChannel> = {}): DayChannel {
  const about = { label: `At ${id}`, gas: 'carbon-monoxide', staleAfterSeconds: 30 } as const;
  return { id, ...about, calibrationDueAt: null, endOfLifeAt: null, ...more };
}

export const FORGE: DayConfig['furnaces'][number] = {
  id: 'forge-1',
  name: 'Forge',
  kind: 'gas-forge',
  chambers: [{ id: 'chamber', staleAfterSeconds: 30 }],
  pressures: [{ id: 'pressure', staleAfterSeconds: 30 }],
};

export function dayConfig(more: Partial<DayConfig> = {}): DayConfig {
  return {
    channels: [sensor('door')],
    furnaces: [FORGE],
    hotAboveCelsius: 100,
    profile: limitProfile('strictest'),
    blood: {
      chosen: cohbConstants('heavy'),
      light: cohbConstants('light'),
      heavy: cohbConstants('heavy'),
    },
    ...more,
  };
}

/** Levels by channel at a minute since the start; a channel left out says nothing. */
export type Levels = (minute: number) => Readonly<Record<string, number>>;

export const COLD = { chamber: 20, pressure: 0 } as const;
export const LIT = { chamber: 900, pressure: 40_000 } as const;

export interface DayRun {
  readonly config: DayConfig;
  state: DayState;
  /** Kinds in the order in which they were first told, with the minute. */
  readonly told: Map<string, number>;
  readonly findings: () => readonly Finding[];
  /** Goes on for some minutes. */
  readonly on: (minutes: number, levels: Levels, tags?: readonly string[] | null) => DayRun;
}

export function runDay(config = dayConfig()): DayRun {
  const run: DayRun = {
    config,
    state: startDay(config, START),
    told: new Map(),
    findings: () => dayFindings(config, run.state),
    on(minutes, levels, tags = null) {
      const end = run.state.at + minutes * MINUTE;
      while (run.state.at < end) step(run, levels, tags);
      return run;
    },
  };
  return run;
}

function step(run: DayRun, levels: Levels, tags: readonly string[] | null): void {
  const from = run.state.at;
  const said = levels((from - START) / MINUTE);
  const values = Object.fromEntries(
    Object.entries(said).map(([id, value]) => [id, { mean: value, low: value, high: value, count: 1 }]),
  );
  const cell: AirCell = { from, to: from + CELL_MS, values, tags };
  run.state = stepDay(run.config, run.state, cell);
  for (const { kind } of run.findings()) {
    if (!run.told.has(kind)) run.told.set(kind, (run.state.at - START) / MINUTE);
  }
}
