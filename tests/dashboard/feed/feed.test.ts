import { describe, expect, it } from 'vitest';
import { type Feed, type FeedWorld, type SocketLike, startFeed } from '../../../dashboard/feed/feed.ts';
import type { LiveMessage } from '../../../hub/contract/live.ts';
import { good, NOW, snapshot } from '../mock-shop.ts';

interface FakeSocket extends SocketLike {
  readonly address: string;
  closed: boolean;
}

/** A world with a clock that the test moves and sockets that the test speaks through. */
class World implements FeedWorld {
  readonly sockets: FakeSocket[] = [];
  at = 0;
  #ticks: (() => void)[] = [];
  readonly open = (address: string): SocketLike => {
    const socket: FakeSocket = {
      address,
      closed: false,
      onmessage: null,
      onclose: null,
      close() {
        this.closed = true;
      },
    };
    this.sockets.push(socket);
    return socket;
  };
  readonly steadyMs = () => this.at;
  readonly epochMs = () => 1_000_000 + this.at;
  readonly chance = () => 0;
  readonly every = (_ms: number, run: () => void) => {
    this.#ticks.push(run);
    return () => {
      this.#ticks = [];
    };
  };
  pass(ms: number): void {
    for (let passed = 0; passed < ms; passed += 500) {
      this.at += 500;
      for (const run of this.#ticks) run();
    }
  }
  say(message: LiveMessage | string): void {
    const data = typeof message === 'string' ? message : JSON.stringify(message);
    this.sockets.at(-1)?.onmessage?.({ data });
  }
}

function started(): { world: World; feed: Feed } {
  const world = new World();
  return { world, feed: startFeed('ws://hub/live', world) };
}

const beat = (seq: number, judging = true): LiveMessage => ({ type: 'heartbeat', seq, now: NOW, judging });

describe('the live feed', () => {
  it('keeps the hub’s time, and lets it run on without the hub', () => {
    const { world, feed } = started();
    world.say(snapshot());
    expect(feed.now.value).toBe(NOW);
    expect(feed.heardAt.value).toBe(NOW);
    world.pass(3000);
    expect(feed.now.value).toBe(NOW + 3000);
    expect(feed.heardAt.value).toBe(NOW);
  });

  it('knows a flood of alarms from the heartbeat, and its end; a hub that says nothing of it tells of none', () => {
    const { world, feed } = started();
    world.say(snapshot());
    expect(feed.floodSince.value).toBeNull();
    world.say({ type: 'heartbeat', seq: 100, now: NOW, judging: true, alarmFloodSince: NOW - 60_000 });
    expect(feed.floodSince.value).toBe(NOW - 60_000);
    world.say(beat(100));
    expect(feed.floodSince.value).toBeNull();
  });

  it('goes blind within five seconds of silence and resumes where it was', () => {
    const { world, feed } = started();
    world.say(snapshot());
    world.pass(4500);
    expect(feed.blind.value).toBe(false);
    world.pass(500);
    expect(feed.blind.value).toBe(true);
    expect(world.sockets[0]?.closed).toBe(true);
    world.pass(500);
    expect(world.sockets[1]?.address).toBe('ws://hub/live?after=100&epoch=epoch-1');
    world.say({ type: 'reading', seq: 101, channel: 'forge-chamber', reading: good(NOW, 803) });
    world.say(beat(101));
    expect(feed.blind.value).toBe(false);
    expect(feed.state.value?.channels.get('forge-chamber')?.latest?.value).toBe(803);
  });

  it('asks for a whole snapshot when a change is missing', () => {
    const { world, feed } = started();
    world.say(snapshot());
    world.say(beat(105));
    expect(feed.blind.value).toBe(true);
    world.pass(500);
    expect(world.sockets[1]?.address).toBe('ws://hub/live');
    world.say(snapshot({ seq: 105 }));
    expect(feed.blind.value).toBe(false);
    expect(feed.state.value?.seq).toBe(105);
  });

  it('would rather be blind than look at what it cannot read', () => {
    const { world, feed } = started();
    world.say(snapshot());
    for (let second = 0; second < 6; second += 1) {
      world.pass(1000);
      world.say('{"type":"poem"}');
    }
    expect(feed.notUnderstood.value).toBe(true);
    expect(feed.blind.value).toBe(true);
  });

  it('tells every reading to who listens, also those that are not the newest', () => {
    const { world, feed } = started();
    const heard: number[] = [];
    const stop = feed.onReading((_channel, reading) => heard.push(reading.value));
    world.say(snapshot());
    world.say({ type: 'reading', seq: 101, channel: 'forge-chamber', reading: good(NOW - 90_000, 700) });
    world.say({ type: 'reading', seq: 102, channel: 'forge-chamber', reading: good(NOW, 800) });
    stop();
    world.say({ type: 'reading', seq: 103, channel: 'forge-chamber', reading: good(NOW + 1, 801) });
    expect(heard).toEqual([700, 800]);
  });

  it('passes on that nothing is being judged', () => {
    const { world, feed } = started();
    world.say(snapshot());
    world.say(beat(100, false));
    expect(feed.judging.value).toBe(false);
    expect(feed.blind.value).toBe(false);
  });

  it('does not speak through a socket that it has dropped', () => {
    const { world, feed } = started();
    world.say(snapshot());
    const [first] = world.sockets;
    world.pass(5500);
    first?.onmessage?.({ data: JSON.stringify(beat(100)) });
    expect(feed.blind.value).toBe(true);
    feed.stop();
    expect(world.sockets.at(-1)?.closed).toBe(true);
  });
});
