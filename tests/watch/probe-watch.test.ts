import { describe, expect, it } from 'vitest';
import { Probe } from '../../hub/contract/probe.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { makeShop, type TestShop } from '../harness/shop.ts';
import { live } from '../probes/kit.ts';

const SCHEDULE = {
  name: 'Anneal',
  segments: [{ kind: 'ramp' as const, targetCelsius: 860, toleranceCelsius: 10 }],
};

interface Scene extends TestShop {
  readonly chamber: Channel;
  readonly load: Channel;
  readonly firingId: string;
}

/** A forge in a firing, with a probe on the piece that rises by half a degree a second. */
function firingScene(): Scene {
  const shop = makeShop();
  const forge = shop.furnace();
  const chamber = shop.channel({ name: 'chamber', furnace: forge });
  const load = shop.channel({ name: 'load', furnace: forge, role: 'load' });
  shop.say(shop.channel({ name: 'co', quantity: 'carbon-monoxide' }), 3);
  const { id } = shop.start(forge, shop.schedule(SCHEDULE));
  return { ...shop, chamber, load, firingId: id };
}

const rising = live((second) => 20 + second * 0.5) as (second: number) => number;
const faults = (scene: Scene) =>
  scene.watch.alarms
    .open()
    .filter(({ kind, active }) => kind === 'probe-fault' && active)
    .map(({ params }) => params.fault);

/** The chamber rises like the load and then keeps `celsius`. */
const keeping = (scene: Scene, celsius: number) => (second: number) =>
  [
    [scene.chamber, Math.min(rising(second), celsius)],
    [scene.load, rising(second)],
  ] as const;

describe('the watch over probes', () => {
  it('tells a probe at fault for as long as its firing runs', () => {
    const scene = firingScene();
    scene.run(400, keeping(scene, 80));
    expect(faults(scene)).toEqual(['stuck']);
    expect(scene.watch.alarms.open().find(({ kind }) => kind === 'probe-fault')?.firingId).toBe(
      scene.firingId,
    );
    scene.watch.finishFiring(scene.firingId, undefined, false);
    expect(faults(scene)).toEqual([]);
  });

  it('goes on telling it of a hot chamber after the firing', () => {
    const scene = firingScene();
    scene.run(700, keeping(scene, 200));
    scene.watch.finishFiring(scene.firingId, undefined, false);
    expect(faults(scene)).toEqual(['stuck']);
  });

  it('lets the sensor at the terminals of the node speak for its probes', () => {
    const scene = firingScene();
    scene.channel({ name: 'terminals', role: 'cold-junction' });
    const terminals = scene.archive.channels().find(({ name }) => name === 'terminals');
    if (terminals === undefined) throw new Error('the channel is there');
    scene.archive.saveChannel({
      ...scene.chamber,
      probe: Probe.parse({ type: 'K', digitiserStepCelsius: 0.25 }),
    });
    scene.watch.setupChanged();
    // A short would follow its terminals; this one keeps 22 °C while they warm away from it.
    scene.run(400, (second) => [
      [terminals, 22 + second / 40],
      [scene.chamber, 22],
      [scene.load, rising(second)],
    ]);
    expect(faults(scene)).toEqual(['stuck']);
  });

  it('takes up what comes late: the fault is over once the readings show it', () => {
    const scene = firingScene();
    scene.run(400, keeping(scene, 80));
    expect(faults(scene)).toEqual(['stuck']);
    const from = scene.clock.now();
    for (let ago = 1; ago <= 390; ago += 3) scene.say(scene.chamber, 80 + (ago % 7), from - ago * 1000 + 500);
    scene.run(70, (second) => [
      [scene.chamber, 85 + (second % 5)],
      [scene.load, rising(400 + second)],
    ]);
    expect(faults(scene)).toEqual([]);
    expect(scene.faults).toEqual([]);
  });
});
