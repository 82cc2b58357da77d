import type { Archive } from '../archive/types.ts';
import type { BlindnessInput } from '../blindness/types.ts';
import type { Finding } from '../contract/alarm.ts';
import type { ChannelReading } from '../contract/reading.ts';
import type { Channel } from '../contract/shop.ts';
import { blindCauses, probeFindings } from '../probes/findings.ts';
import { startProbes, stepProbes } from '../probes/judge.ts';
import type { ProbeChannel, ProbesConfig, ProbesFiring, ProbesInput, ProbesState } from '../probes/types.ts';
import { adoptedChannels, merge, readingsOf } from './shop-inputs.ts';
import { Timeline } from './timeline.ts';

/**
 * How far back the judge looks when it starts: a fault is told from what came before, and one that stood before a
 * restart must be found again. As long as a hot furnace stays one. Common practice, no source.
 */
const LOOK_BACK_MS = 4 * 3_600_000;

/** Carries the judge of probes, for the firings that run now. */
export class ProbeWatch {
  readonly #config: ProbesConfig;
  readonly #timeline: Timeline<ProbesState, ProbesInput>;
  readonly #heard: ReadonlySet<string>;
  #running: readonly ProbesFiring[];

  constructor(archive: Archive, now: number) {
    this.#config = configOf(archive);
    const { channels, junctions } = this.#config;
    const heard = [...channels, ...junctions];
    this.#heard = new Set(heard.map(({ id }) => id));
    this.#running = archive
      .runningFirings()
      .map(({ id, furnaceId, watchedChannels }) => ({ firingId: id, furnaceId, watched: watchedChannels }));
    const startAt = now - LOOK_BACK_MS;
    const start = startProbes(startAt);
    this.#timeline = new Timeline<ProbesState, ProbesInput>(
      {
        start: () => start,
        step: (state, input) => stepProbes(this.#config, state, input),
        inputs: (after, upTo) => merge(readingsOf(archive, heard, after, upTo), [], after, upTo),
      },
      startAt,
    );
  }

  /** A firing began or is over. Anything else is no business of probes. */
  event(event: Exclude<BlindnessInput, { kind: 'reading' } | { kind: 'tick' }>): void {
    if (event.kind === 'node-status') return;
    const others = this.#running.filter(({ firingId }) => firingId !== event.firingId);
    if (event.kind === 'firing-over') this.#running = others;
    else {
      const { firingId, furnaceId, watched } = event;
      this.#running = [...others, { firingId, furnaceId, watched }];
    }
  }

  learned(reading: ChannelReading): void {
    if (!this.#heard.has(reading.channel) || reading.at < this.#timeline.at - LOOK_BACK_MS) return;
    this.#timeline.rewindBefore(reading.at);
  }

  findings(now: number): readonly Finding[] {
    return probeFindings(this.#config, this.#advance(now), this.#running);
  }

  /** Blindness with its cause, where the readings show one: one trouble, one alarm. */
  withCauses(findings: readonly Finding[], now: number): readonly Finding[] {
    const causes = blindCauses(this.#config, this.#advance(now));
    return findings.map((finding) => {
      const fault = finding.kind === 'not-watching-channel' ? causes.get(finding.subject) : undefined;
      return fault === undefined ? finding : { ...finding, params: { ...finding.params, fault } };
    });
  }

  #advance(now: number): ProbesState {
    this.#timeline.forgetBefore(now - LOOK_BACK_MS);
    return this.#timeline.advance(now);
  }
}

function configOf(archive: Archive): ProbesConfig {
  const temperatures = adoptedChannels(archive, ({ quantity }) => quantity === 'temperature');
  const channels = temperatures.flatMap((channel) => probeChannel(channel, temperatures) ?? []);
  const used = new Set(channels.map(({ junction }) => junction));
  return {
    channels,
    junctions: temperatures.filter(({ id }) => used.has(id)),
    furnaces: archive.furnaces().filter(({ archived }) => !archived),
    hotAboveCelsius: archive.shop().settings.hotAboveCelsius,
  };
}

function probeChannel(channel: Channel, temperatures: readonly Channel[]): ProbeChannel | null {
  const { id, label, name, node, role, furnaceId, staleAfterSeconds, probe } = channel;
  if (furnaceId === null || (role !== 'chamber' && role !== 'load')) return null;
  const junction = junctionOf(channel, temperatures);
  return { id, label: label || name, node, role, furnaceId, staleAfterSeconds, probe, junction };
}

/** The channel that the probe names; where it names none, the node's only one with that role. */
function junctionOf({ node, probe }: Channel, temperatures: readonly Channel[]): string | null {
  const ofNode = temperatures.filter((channel) => channel.node === node);
  const source = probe?.source ?? { kind: 'celsius' };
  if (source.kind !== 'celsius') {
    return ofNode.find(({ name }) => name === source.coldJunctionChannel)?.id ?? null;
  }
  const [only, ...more] = ofNode.filter(({ role }) => role === 'cold-junction');
  return only !== undefined && more.length === 0 ? only.id : null;
}
