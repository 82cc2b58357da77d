import { planCurve } from '../../dashboard/charts/plan-curve.ts';
import type { Alarm } from '../../hub/contract/alarm.ts';
import type { FiringJudgement } from '../../hub/contract/firing.ts';
import type { LiveFiring, LiveSnapshot } from '../../hub/contract/live.ts';
import type { Reading } from '../../hub/contract/reading.ts';
import { Schedule } from '../../hub/contract/schedule.ts';
import { Channel, Furnace, Shop, ShopNode, ShopSettings } from '../../hub/contract/shop.ts';
import { words } from '../../hub/contract/words/words.ts';

/** A shop for looking at screens and for tests of the dashboard: built through the contract's own schemas. */

export const NOW = Date.UTC(2026, 2, 14, 14, 3, 0);
const MINUTE = 60_000;

export const HARDEN = Schedule.parse({
  id: 'harden',
  version: 1,
  name: 'Harden O1, 12 mm',
  createdAt: 0,
  archived: false,
  segments: [
    { kind: 'ramp', targetCelsius: 650, rateCelsiusPerHour: 1500, toleranceCelsius: 15 },
    { kind: 'soak', targetCelsius: 650, durationSeconds: 300, toleranceCelsius: 15 },
    { kind: 'ramp', targetCelsius: 800, rateCelsiusPerHour: 900, toleranceCelsius: 10 },
    { kind: 'soak', targetCelsius: 800, durationSeconds: 1200, toleranceCelsius: 10 },
    { kind: 'cool', targetCelsius: 65, medium: 'quench' },
  ],
});
export const TEMPER = Schedule.parse({
  id: 'temper',
  version: 3,
  name: 'Temper 205 °C, twice',
  createdAt: 0,
  archived: false,
  segments: [
    { kind: 'ramp', targetCelsius: 205, rateCelsiusPerHour: 300, toleranceCelsius: 8 },
    { kind: 'soak', targetCelsius: 205, durationSeconds: 7200, toleranceCelsius: 8 },
    { kind: 'cool', targetCelsius: 40, medium: 'still-air' },
  ],
});

export function settings(change: Partial<ShopSettings> = {}): ShopSettings {
  return { ...ShopSettings.parse({ name: 'North yard forge' }), ...change };
}

export function furnace(id: string, name: string, kind: Furnace['kind'], createdAt = 0): Furnace {
  return Furnace.parse({ id, name, kind, ratedCelsius: 1200, archived: false, createdAt });
}

export function channel(change: Partial<Channel> & Pick<Channel, 'id' | 'quantity'>): Channel {
  return Channel.parse({
    node: 'node-1',
    name: change.id,
    baseUnit: 'Cel',
    role: 'other',
    staleAfterSeconds: 20,
    adopted: true,
    archived: false,
    createdAt: 0,
    latest: null,
    ...change,
  });
}

export function good(at: number, value: number): Reading {
  return { at, value, quality: 'good' };
}

export function alarm(kind: Alarm['kind'], change: Partial<Alarm> = {}): Alarm {
  const params = change.params ?? {};
  return {
    id: `alarm-${kind}`,
    kind,
    priority: 'danger',
    subject: 'shop',
    firingId: null,
    furnaceId: null,
    params,
    state: 'unacknowledged',
    active: true,
    raisedAt: NOW - 40_000,
    clearedAt: null,
    acknowledgedAt: null,
    acknowledgedBy: null,
    activeSince: NOW - 40_000,
    shelf: null,
    suppression: null,
    outOfService: null,
    dangerToLife: false,
    ...words('en').alarm(kind, params, 'Cel'),
    ...change,
  };
}

interface FiringFacts {
  readonly id: string;
  readonly furnaceId: string;
  readonly schedule: Schedule;
  readonly startedAt: number;
  readonly watched: readonly string[];
  readonly judgement: Partial<FiringJudgement>;
  readonly move: Omit<FiringJudgement['nextMove'], 'text'>;
}

export function liveFiring(facts: FiringFacts): LiveFiring {
  const plan = planCurve(facts.schedule.segments, { at: facts.startedAt, celsius: 20 });
  return {
    firing: {
      id: facts.id,
      furnaceId: facts.furnaceId,
      title: '',
      note: '',
      status: 'running',
      simulated: true,
      startedAt: facts.startedAt,
      endedAt: null,
      schedule: facts.schedule,
      watchedChannels: [...facts.watched],
      pieces: [],
      createdAt: facts.startedAt,
    },
    arrests: [],
    judgement: {
      judgedTo: NOW,
      judgeVersion: '1',
      segmentIndex: 0,
      segments: [],
      soakSeconds: null,
      soakClockOn: 'coldest-thermocouple',
      soakClockText: '',
      pieces: [],
      forecast: null,
      measuredCelsius: null,
      hottestCelsius: null,
      targetCelsius: null,
      lowCelsius: null,
      highCelsius: null,
      plannedCelsius: null,
      rateCelsiusPerHour: null,
      insideTolerance: true,
      blindSince: null,
      arrivalAt: null,
      endsAt: null,
      firingEndsAt: plan.at(-1)?.at ?? null,
      waitsForConfirmation: false,
      verdict: 'pending',
      plan,
      gaps: [],
      ...facts.judgement,
      nextMove: { ...facts.move, text: words('en').nextMove(facts.move.code, facts.move.params, 'Cel') },
    },
  };
}

export function node(name: string): ShopNode {
  return ShopNode.parse({
    id: name,
    name,
    adopted: true,
    status: 'online',
    statusAt: NOW - 60 * MINUTE,
    lastHeardAt: NOW,
    refused: {},
    createdAt: 0,
  });
}

export const FORGE = furnace('forge', 'Forge', 'gas-forge', 1);
export const OVEN = furnace('oven', 'Oven', 'electric-oven', 2);
export const FORGE_START = NOW - 42 * MINUTE;

export const HARDENING = liveFiring({
  id: 'firing-1',
  furnaceId: 'forge',
  schedule: HARDEN,
  startedAt: FORGE_START,
  watched: ['forge-chamber'],
  judgement: {
    segmentIndex: 3,
    soakSeconds: 540,
    measuredCelsius: 798.25,
    hottestCelsius: 798.25,
    targetCelsius: 800,
    lowCelsius: 790,
    highCelsius: 810,
    endsAt: NOW + 11 * MINUTE,
  },
  move: { code: 'hold', params: { secondsLeft: 660 } },
});

export const TEMPERING = liveFiring({
  id: 'firing-2',
  furnaceId: 'oven',
  schedule: TEMPER,
  startedAt: NOW - 35 * MINUTE,
  watched: ['oven-chamber'],
  judgement: { segmentIndex: 0, measuredCelsius: 171, targetCelsius: 205, lowCelsius: 197, highCelsius: 213 },
  move: { code: 'heat-up', params: { targetCelsius: 205, secondsLeft: 480 } },
});

export function channels(): Channel[] {
  return [
    channel({
      id: 'forge-chamber',
      quantity: 'temperature',
      label: 'Chamber',
      role: 'chamber',
      furnaceId: 'forge',
      latest: good(NOW - 600, 798.25),
    }),
    channel({
      id: 'oven-chamber',
      quantity: 'temperature',
      label: 'Chamber',
      role: 'chamber',
      furnaceId: 'oven',
      latest: good(NOW - 900, 171),
    }),
    channel({
      id: 'co-bench',
      quantity: 'carbon-monoxide',
      label: 'Bench',
      role: 'room-air',
      staleAfterSeconds: 30,
      latest: good(NOW - 1500, 7),
    }),
    channel({
      id: 'forge-gas',
      quantity: 'pressure',
      role: 'supply-pressure',
      furnaceId: 'forge',
      staleAfterSeconds: 30,
      latest: good(NOW - 900, 148_000),
    }),
    channel({
      id: 'cylinder',
      quantity: 'mass',
      role: 'cylinder-mass',
      staleAfterSeconds: 120,
      latest: good(NOW - 5000, 17.4),
    }),
  ];
}

export function snapshot(change: Partial<LiveSnapshot> = {}): LiveSnapshot {
  return {
    type: 'snapshot',
    seq: 100,
    epoch: 'epoch-1',
    now: NOW,
    shop: Shop.parse({ id: 'shop', simulated: true, settings: settings() }),
    furnaces: [FORGE, OVEN],
    nodes: [node('node-1')],
    channels: channels(),
    firings: [HARDENING, TEMPERING],
    alarms: [],
    ...change,
  };
}
