import { describe, expect, it } from 'vitest';
import { AirWatch } from '../../hub/watch/air-watch.ts';
import { makeShop } from '../harness/shop.ts';

const MINUTE = 60_000;

/** A sensor that says its level every five seconds through a quarter of an hour of bad air. */
function badAir() {
  const shop = makeShop();
  const co = shop.channel({ name: 'co', quantity: 'carbon-monoxide' });
  const readings = Array.from({ length: 300 }, (_, i) => ({
    at: shop.clock.now() + i * 5000,
    value: 62 + (i % 7),
  }));
  return { shop, co, readings };
}

/** The judge of the instant looks ten minutes back and knows no `since` before that. */
const overHours = (air: AirWatch, now: number) =>
  air.findings(now).filter(({ kind }) => kind !== 'unsafe-air-first' && kind !== 'unsafe-air-second');
const doses = (air: AirWatch, now: number) => air.view(now).state.doses;

describe('the air over hours', () => {
  it('comes to the same live, out of the archive, and with the readings late and in disorder', () => {
    const { shop, co, readings } = badAir();
    const live = new AirWatch(shop.archive, shop.clock.now());
    for (const { at, value } of readings) {
      shop.clock.advance(at - shop.clock.now());
      shop.say(co, value, at);
      live.learned({ channel: co.id, at, value, quality: 'good' });
      live.findings(at);
    }
    const now = shop.clock.now() + MINUTE;
    const again = new AirWatch(shop.archive, now);
    const late = lateAir();
    expect(doses(again, now)[co.id]?.exposure.shift).toEqual(doses(live, now)[co.id]?.exposure.shift);
    expect(overHours(again, now)).toEqual(overHours(live, now));
    expect(overHours(late, now)).toEqual(overHours(live, now));
    expect(overHours(live, now).map(({ kind }) => kind)).toEqual(['unsafe-air-short-mean']);
  });

  /** The same readings from a node that buffered them: the second half comes first. */
  function lateAir(): AirWatch {
    const { shop, co, readings } = badAir();
    const air = new AirWatch(shop.archive, shop.clock.now());
    const end = readings.at(-1)?.at ?? 0;
    shop.clock.advance(end - shop.clock.now());
    air.findings(end);
    for (const { at, value } of [...readings.slice(150), ...readings.slice(0, 150)]) {
      shop.say(co, value, at);
      air.learned({ channel: co.id, at, value, quality: 'good' });
    }
    return air;
  }

  it('is not begun anew by a change that has nothing to do with the air', () => {
    const { shop } = badAir();
    const air = new AirWatch(shop.archive, shop.clock.now());
    shop.archive.saveSettings({ ...shop.archive.shop().settings, name: 'Another' }, shop.clock.now());
    expect(air.renewed(shop.clock.now())).toBe(air);
    shop.archive.saveSettings({ ...shop.archive.shop().settings, airProfile: 'osha' }, shop.clock.now());
    expect(air.renewed(shop.clock.now())).not.toBe(air);
  });

  it('tells a reading within its cell, some seconds later, without waiting for the next', () => {
    const { shop, co } = badAir();
    const air = new AirWatch(shop.archive, shop.clock.now());
    shop.clock.advance(1000);
    shop.say(co, 500);
    shop.clock.advance(12_000);
    expect(air.view(shop.clock.now()).state.doses[co.id]?.exposure.peak?.ppm).toBe(500);
  });
});
