import { type AirInput, type AirState, airFindings, startAir, stepAir } from '../air/judge.ts';
import type { Archive } from '../archive/types.ts';
import { blindnessFindings } from '../blindness/findings.ts';
import { startBlindness, stepBlindness } from '../blindness/judge.ts';
import type { BlindnessInput, BlindnessState } from '../blindness/types.ts';
import type { Finding } from '../contract/alarm.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { Channel } from '../contract/shop.ts';
import { TICK_MS } from './firing-track.ts';
import { Timeline } from './timeline.ts';

/** How far back the shop's judges look when they start: their delays are seconds, so this is ample. */
const LOOK_BACK_MS = 600_000;

/** What happened beside the readings: a node's status, a firing's start or end. */
type ShopEvent = Exclude<BlindnessInput, { kind: 'reading' } | { kind: 'tick' }>;

/** Carries the judges that watch the whole shop: the air, and what nobody can see. */
export class ShopWatch {
  readonly #archive: Archive;
  #events: ShopEvent[] = [];
  #air: Timeline<AirState, AirInput>;
  #blindness: Timeline<BlindnessState, BlindnessInput>;
  #airState: () => readonly Finding[];
  #blindnessState: () => readonly Finding[];
  #watched: ReadonlySet<string> = new Set();

  constructor(archive: Archive, now: number) {
    this.#archive = archive;
    [this.#air, this.#airState] = this.#makeAir(now);
    [this.#blindness, this.#blindnessState] = this.#makeBlindness(now);
  }

  /** Limits, furnaces or channels changed: start afresh from what the archive knows. */
  restart(now: number): void {
    [this.#air, this.#airState] = this.#makeAir(now);
    [this.#blindness, this.#blindnessState] = this.#makeBlindness(now);
  }

  event(event: ShopEvent): void {
    this.#events.push(event);
    this.#blindness.rewindBefore(event.at);
    const oldest = event.at - LOOK_BACK_MS;
    if (this.#events.length > 500) this.#events = this.#events.filter((kept) => kept.at >= oldest);
  }

  /** A reading that came after its instant had been judged; older than the look-back changes nothing now. */
  learned(reading: ChannelReading): void {
    if (!this.#watched.has(reading.channel)) return;
    if (reading.at < this.#blindness.at - LOOK_BACK_MS) return;
    this.#air.rewindBefore(reading.at);
    this.#blindness.rewindBefore(reading.at);
  }

  findings(now: number): readonly Finding[] {
    this.#air.advance(now);
    this.#blindness.advance(now);
    return [...this.#blindnessState(), ...this.#airState()];
  }

  #makeAir(now: number): [Timeline<AirState, AirInput>, () => readonly Finding[]] {
    const { settings } = this.#archive.shop();
    const channels = this.#adopted(
      (channel) => channel.role === 'room-air' && channel.quantity === 'carbon-monoxide',
    );
    const config = {
      channels: channels.map(({ id, label, name, staleAfterSeconds }) => ({
        id,
        label: label || name,
        staleAfterSeconds,
      })),
      firstPpm: settings.carbonMonoxideFirstPpm,
      secondPpm: settings.carbonMonoxideSecondPpm,
    };
    const timeline = new Timeline<AirState, AirInput>(
      {
        start: () => startAir(config),
        step: (state, input) => stepAir(config, state, input),
        inputs: (after, upTo) => merge(this.#readings(channels, after, upTo), [], after, upTo),
      },
      now - LOOK_BACK_MS,
    );
    return [timeline, () => airFindings(config, timeline.state)];
  }

  #makeBlindness(now: number): [Timeline<BlindnessState, BlindnessInput>, () => readonly Finding[]] {
    const { settings } = this.#archive.shop();
    const channels = this.#adopted(() => true);
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
            this.#readings(channels, after, upTo),
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

  #adopted(wanted: (channel: Channel) => boolean): readonly Channel[] {
    return this.#archive.channels().filter((c) => c.adopted && !c.archived && wanted(c));
  }

  #readings(channels: readonly Channel[], after: number, upTo: number): ChannelReading[] {
    const found = channels.flatMap((channel) =>
      this.#archive.readings.range(channel.id, after + 1, upTo).map((r) => ({ ...r, channel: channel.id })),
    );
    return found.sort((a, b) => a.at - b.at || (a.channel < b.channel ? -1 : 1));
  }
}

function lastBefore<R extends { at: number }>(reading: R | null, at: number): R | null {
  return reading !== null && reading.at < at ? reading : null;
}

function inputAt(input: BlindnessInput): number {
  return input.kind === 'reading' ? input.reading.at : input.at;
}

type ShopInput = Extract<BlindnessInput, { kind: 'reading' } | { kind: 'tick' }>;

/** Readings and events in time order with a tick on every whole second; a tick comes last at its instant. */
function* merge<E extends { readonly at: number }>(
  readings: readonly ChannelReading[],
  events: readonly E[],
  after: number,
  upTo: number,
): Generator<ShopInput | E> {
  const happened = [
    ...readings.map((reading) => ({ at: reading.at, input: { kind: 'reading', reading } as const })),
    ...events.map((event) => ({ at: event.at, input: event })),
  ].sort((a, b) => a.at - b.at);
  let next = 0;
  const firstTick = Math.floor(after / TICK_MS) * TICK_MS + TICK_MS;
  for (let tick = firstTick; tick <= upTo; tick += TICK_MS) {
    for (let item = happened[next]; item && item.at <= tick; item = happened[++next]) yield item.input;
    yield { kind: 'tick', at: tick };
  }
  for (let item = happened[next]; item; item = happened[++next]) yield item.input;
}
