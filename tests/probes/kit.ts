import type { Finding } from '../../hub/contract/alarm.ts';
import { Probe } from '../../hub/contract/probe.ts';
import type { ChannelReading } from '../../hub/contract/reading.ts';
import { probeFindings } from '../../hub/probes/findings.ts';
import { startProbes, stepProbes } from '../../hub/probes/judge.ts';
import type { ProbeChannel, ProbesConfig, ProbesFiring, ProbesState } from '../../hub/probes/types.ts';

export const T0 = Date.UTC(2026, 2, 2, 8);

export function probeOf(more: object = {}): Probe {
  return Probe.parse({ type: 'K', ...more });
}

export function channel(id: string, more: Partial<ProbeChannel> = {}): ProbeChannel {
  const role = id.startsWith('load') ? 'load' : 'chamber';
  return {
    id,
    label: id,
    node: 'n',
    role,
    furnaceId: 'f',
    staleAfterSeconds: 20,
    probe: null,
    junction: null,
    ...more,
  };
}

export function config(channels: readonly ProbeChannel[], junctions: readonly string[] = []): ProbesConfig {
  return {
    channels,
    junctions: junctions.map((id) => ({ id, staleAfterSeconds: 20 })),
    furnaces: [{ id: 'f', name: 'Big forge', kind: 'gas-forge' }],
    hotAboveCelsius: 100,
  };
}

export const FIRING: ProbesFiring = { firingId: 'firing', furnaceId: 'f', watched: ['chamber', 'load'] };

/** What one channel says at a second: a good value, a reading of its own making, or nothing. */
export type Said = number | Partial<ChannelReading> | null;
export type Curve = (second: number) => Said;

/** A wander that repeats from run to run, about ±0.35: the fractional part of a large multiple. */
export function wander(second: number, seed = 1): number {
  const x = Math.sin(second * 12.9898 + seed * 78.233) * 43758.5453;
  return (x - Math.floor(x) - 0.5) * 0.7;
}

/** A live reading in quarter degrees. */
export const live =
  (celsius: (second: number) => number): Curve =>
  (second) =>
    Math.round((celsius(second) + wander(second)) / 0.25) * 0.25;

export interface Run {
  readonly state: ProbesState;
  /** Faults that were told of each channel in the course of it, as `channel: fault`, each once. */
  readonly told: string[];
  readonly findings: Finding[];
}

/** Runs the judge over curves, one reading of each channel every two seconds, a tick after them. */
export function run(
  cfg: ProbesConfig,
  curves: Readonly<Record<string, Curve>>,
  seconds: number,
  running: readonly ProbesFiring[] = [FIRING],
): Run {
  let state = startProbes(T0);
  const told = new Set<string>();
  for (let second = 2; second <= seconds; second += 2) {
    const at = T0 + second * 1000;
    for (const [id, curve] of Object.entries(curves)) {
      const said = curve(second);
      if (said === null) continue;
      const more = typeof said === 'number' ? { value: said } : said;
      const reading = { channel: id, at, value: 0, quality: 'good' as const, ...more };
      state = stepProbes(cfg, state, { kind: 'reading', reading });
    }
    state = stepProbes(cfg, state, { kind: 'tick', at });
    for (const { subject, params } of probeFindings(cfg, state, running))
      told.add(`${subject}: ${params.fault}`);
  }
  return { state, told: [...told], findings: probeFindings(cfg, state, running) };
}
