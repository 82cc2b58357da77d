import type { Archive } from '../archive/types.ts';
import { blindnessFindings } from '../blindness/findings.ts';
import { startBlindness, stepBlindness } from '../blindness/judge.ts';
import type { BlindnessInput, BlindnessState } from '../blindness/types.ts';
import type { Finding } from '../contract/alarm.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { Channel } from '../contract/shop.ts';
import { AirWatch } from './air-watch.ts';
import type { JudgementOf } from './gas-firings.ts';
import { GasWatch } from './gas-watch.ts';
import { ProbeWatch } from './probe-watch.ts';
import { adoptedChannels, merge, readingsOf } from './shop-inputs.ts';
import { Timeline } from './timeline.ts';

/** How far back the shop's judges look when they start: their delays are seconds, so this is ample. */
const LOOK_BACK_MS = 600_000;

/** What happened beside the readings: a node's status, a firing's start or end. */
type ShopEvent = Exclude<BlindnessInput, { kind: 'reading' } | { kind: 'tick' }>;

/** Carries the judges that watch the whole shop: the air, the gas, what nobody can see, and probes at fault. */
export class ShopWatch {
  readonly #archive: Archive;
  #events: ShopEvent[] = [];
  #air: AirWatch;
  #gas: GasWatch;
  #blindness: Timeline<BlindnessState, BlindnessInput>;
  #blindnessState: () => readonly Finding[];
  #watched: ReadonlySet<string> = new Set();
  #probes: ProbeWatch;

  constructor(archive: Archive, now: number, judgementOf: JudgementOf = (row) => row.judgement) {
    this.#archive = archive;
    this.#air = new AirWatch(this.#archive, now);
    this.#gas = new GasWatch(this.#archive, now, judgementOf);
    [this.#blindness, this.#blindnessState] = this.#makeBlindness(now);
    this.#probes = new ProbeWatch(this.#archive, now);
  }

  /** Limits, furnaces or channels changed: start afresh from what the archive knows. */
  restart(now: number): void {
    this.#air = this.#air.renewed(now);
    this.#gas = this.#gas.renewed(now);
    [this.#blindness, this.#blindnessState] = this.#makeBlindness(now);
    this.#probes = new ProbeWatch(this.#archive, now);
  }

  event(event: ShopEvent): void {
    this.#events.push(event);
    this.#blindness.rewindBefore(event.at);
    this.#probes.event(event);
    const oldest = event.at - LOOK_BACK_MS;
    if (this.#events.length > 500) this.#events = this.#events.filter((kept) => kept.at >= oldest);
  }

  /** A reading that came after its instant had been judged; older than the look-back changes nothing now. */
  learned(reading: ChannelReading): void {
    this.#probes.learned(reading);
    this.#air.learned(reading);
    this.#gas.learned(reading);
    if (!this.#watched.has(reading.channel)) return;
    if (reading.at < this.#blindness.at - LOOK_BACK_MS) return;
    this.#blindness.rewindBefore(reading.at);
  }

  findings(now: number): readonly Finding[] {
    this.#blindness.forgetBefore(now - LOOK_BACK_MS);
    this.#blindness.advance(now);
    const blind = this.#probes.withCauses(this.#blindnessState(), now);
    return [...blind, ...this.#air.findings(now), ...this.#gas.findings(now), ...this.#probes.findings(now)];
  }

  /** The air as it stands, for the page about it. */
  air(now: number): ReturnType<AirWatch['view']> {
    return this.#air.view(now);
  }

  /** The gas as it stands, for the page about it and for the check before a start. */
  gas(now: number): ReturnType<GasWatch['view']> {
    return this.#gas.view(now);
  }

  /** A fill was noted or taken back, for that instant. */
  gasChanged(at: number): void {
    this.#gas.changed(at);
  }

  #makeBlindness(now: number): [Timeline<BlindnessState, BlindnessInput>, () => readonly Finding[]] {
    const { settings } = this.#archive.shop();
    const channels = adoptedChannels(this.#archive, () => true);
    this.#watched = new Set(channels.map((channel) => channel.id));
    const config = {
      channels: channels.map(({ id, label, name, node, role, quantity, furnaceId, staleAfterSeconds }) => ({
        id,
        label: label || name,
        node,
        role,
        quantity,
        furnaceId,
        staleAfterSeconds,
      })),
      furnaces: this.#archive.furnaces().filter((furnace) => !furnace.archived),
      hotAboveCelsius: settings.hotAboveCelsius,
      watchCarbonMonoxideFor: settings.watchCarbonMonoxideFor,
    };
    const startAt = now - LOOK_BACK_MS;
    const seeds = this.#seeds(channels, startAt);
    const timeline = new Timeline<BlindnessState, BlindnessInput>(
      {
        start: () =>
          seeds.reduce(
            (state, input) => stepBlindness(config, state, input),
            startBlindness(config, seeds[0] ? Math.min(startAt, inputAt(seeds[0])) : startAt),
          ),
        step: (state, input) => stepBlindness(config, state, input),
        inputs: (after, upTo) =>
          merge(
            readingsOf(this.#archive, channels, after, upTo),
            this.#events.filter((event) => event.at > after && event.at <= upTo),
            after,
            upTo,
          ),
      },
      startAt,
    );
    return [timeline, () => blindnessFindings(config, timeline.state)];
  }

  /** What was known before the look-back: each channel's last word, each node's status, each running firing. */
  #seeds(channels: readonly Channel[], startAt: number): BlindnessInput[] {
    const seeds: BlindnessInput[] = [];
    for (const channel of channels) {
      const before = lastBefore(this.#archive.readings.latest(channel.id), startAt);
      if (before) seeds.push({ kind: 'reading', reading: { ...before, channel: channel.id } });
    }
    seeds.sort((a, b) => inputAt(a) - inputAt(b));
    for (const node of this.#archive.nodes()) {
      seeds.push({ kind: 'node-status', at: startAt, node: node.name, status: node.status });
    }
    for (const firing of this.#archive.runningFirings()) {
      const { id: firingId, furnaceId, watchedChannels: watched } = firing;
      seeds.push({ kind: 'firing-running', at: startAt, firingId, furnaceId, watched });
    }
    return seeds;
  }
}

function lastBefore<R extends { at: number }>(reading: R | null, at: number): R | null {
  return reading !== null && reading.at < at ? reading : null;
}

function inputAt(input: BlindnessInput): number {
  return input.kind === 'reading' ? input.reading.at : input.at;
}
