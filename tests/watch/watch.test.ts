import { describe, expect, it } from 'vitest';
import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { makeShop, type TestShop } from '../harness/shop.ts';

const SOAK = {
  name: 'Short soak',
  segments: [
    { kind: 'ramp' as const, targetCelsius: 800, toleranceCelsius: 10 },
    { kind: 'soak' as const, targetCelsius: 800, toleranceCelsius: 10, durationSeconds: 120 },
  ],
};

interface Scene extends TestShop {
  readonly chamber: Channel;
  readonly air: Channel;
  readonly firing: FiringDetail;
}

function firingScene(): Scene {
  const shop = makeShop();
  const forge = shop.furnace();
  const chamber = shop.channel({ name: 'chamber', furnace: forge });
  const air = shop.channel({ name: 'co', quantity: 'carbon-monoxide' });
  shop.say(chamber, 700);
  shop.say(air, 3);
  const firing = shop.start(forge, shop.schedule(SOAK));
  return { ...shop, chamber, air, firing };
}

/** Nears 800 °C as a well-tended furnace does, slowing down: inside ±10 °C after 46 s. */
const approach = (second: number): number => 800 - 100 * Math.exp(-second / 20);

const heating = (scene: Scene) => (second: number) =>
  [
    [scene.chamber, approach(second)],
    [scene.air, 3],
  ] as const;

describe('the watch over a firing', () => {
  it('runs the soak clock live and raises nothing in a good firing', () => {
    const scene = firingScene();
    scene.run(120, heating(scene));
    const { judgement } = scene.watch.firings.detail(scene.firing.id);
    expect(judgement.segmentIndex).toBe(1);
    expect(judgement.soakSeconds).toBeGreaterThan(60);
    expect(scene.archive.alarms({ limit: 10 })).toEqual([]);
    expect(scene.faults).toEqual([]);
  });

  it('carries on after a restart with the soak clock intact and the gap shown as a gap', () => {
    const scene = firingScene();
    scene.run(100, heating(scene));
    const before = scene.watch.firings.detail(scene.firing.id).judgement.soakSeconds ?? 0;
    scene.watch.stop();
    scene.clock.advance(300_000);
    const again = scene.restart();
    const { judgement, id } = again.firings.detail(scene.firing.id);
    expect(id).toBe(scene.firing.id);
    // Twenty seconds of the last value still count as fresh; then nobody was watching.
    expect(judgement.soakSeconds).toBeGreaterThanOrEqual(before);
    expect(judgement.soakSeconds).toBeLessThanOrEqual(before + 21);
    expect(judgement.gaps).toHaveLength(1);
    expect(judgement.blindSince).not.toBeNull();
  });

  it('gives nodes a moment to come back after a restart before it calls the shop blind', () => {
    const scene = firingScene();
    scene.run(60, heating(scene));
    scene.watch.stop();
    scene.clock.advance(60_000);
    const again = scene.restart();
    scene.clock.advance(10_000);
    expect(again.alarms.open()).toEqual([]);
    scene.clock.advance(10_000);
    expect(again.alarms.open().map((alarm) => alarm.kind)).toEqual([
      'not-watching-channel',
      'not-watching-air',
    ]);
  });

  it('judges the same live as replayed after it is over, late readings included', () => {
    const scene = firingScene();
    const { chamber, air } = scene;
    for (let second = 0; second < 260; second++) {
      const value = approach(second);
      // Every other reading comes twelve seconds late, as from a node that buffers.
      if (second % 2 === 0) scene.say(chamber, value);
      if (second >= 12 && second % 2 === 0) scene.say(chamber, value, scene.clock.now() - 12_500);
      scene.say(air, 3);
      scene.clock.advance(1000);
    }
    scene.watch.tick();
    const live = scene.watch.firings.detail(scene.firing.id).judgement;
    const replayed = scene.restart().firings.detail(scene.firing.id).judgement;
    expect(replayed).toEqual(live);
    expect(live.segments[1]?.state).toBe('done');
  });

  it('judges a finished firing again when its missing readings come in', () => {
    const scene = firingScene();
    scene.run(50, heating(scene));
    const from = scene.clock.now();
    scene.run(130, () => [[scene.air, 3]]);
    const blind = scene.watch.finishFiring(scene.firing.id, undefined, false);
    expect(blind.judgement.verdict).toBe('not-met');
    for (let at = from; at < from + 130_000; at += 1000) scene.say(scene.chamber, 800, at);
    scene.run(3, () => [[scene.air, 3]]);
    const seen = scene.watch.firings.detail(scene.firing.id);
    expect(seen.judgement.segments[1]?.soakSeconds).toBe(120);
    expect(seen.judgement.verdict).not.toBe('not-met');
  });

  it('raises one alarm when the probe goes silent, and it returns when the probe speaks', () => {
    const scene = firingScene();
    scene.run(60, heating(scene));
    scene.run(60, () => [[scene.air, 3]]);
    const open = scene.watch.alarms.open();
    expect(open.map((alarm) => alarm.kind)).toEqual(['not-watching-channel']);
    scene.run(10, () => [
      [scene.chamber, 800],
      [scene.air, 3],
    ]);
    expect(scene.watch.alarms.open().map((alarm) => alarm.state)).toEqual(['returned-unacknowledged']);
    const [alarm] = scene.watch.alarms.open();
    scene.watch.alarms.acknowledge(alarm?.id ?? '', 'Kim', scene.clock.now());
    expect(scene.watch.alarms.open()).toEqual([]);
  });

  it('raises the air alarms at both limits and keeps them over a restart', () => {
    const scene = firingScene();
    scene.run(10, () => [
      [scene.chamber, 750],
      [scene.air, 25],
    ]);
    expect(scene.watch.alarms.open().map((alarm) => alarm.kind)).toEqual(['unsafe-air-first']);
    scene.run(10, () => [
      [scene.chamber, 750],
      [scene.air, 75],
    ]);
    const before = scene.watch.alarms.open();
    expect(before.map((alarm) => alarm.kind).sort()).toEqual(['unsafe-air-first', 'unsafe-air-second']);
    expect(scene.restart().alarms.open()).toEqual(before);
  });

  it('refuses a furnace that is busy and a schedule beyond its rating, by code', () => {
    const scene = firingScene();
    const forge = scene.archive.furnace(scene.firing.furnaceId);
    if (!forge) throw new Error('the forge is there');
    const hot = scene.schedule({ name: 'Weld', segments: [{ kind: 'ramp', targetCelsius: 1350 }] });
    expect(() => scene.start(forge, { id: scene.firing.schedule.id })).toThrow(
      expect.objectContaining({ code: 'furnace-busy' }),
    );
    expect(() => scene.start(forge, hot)).toThrow(expect.objectContaining({ code: 'beyond-rating' }));
  });
});
