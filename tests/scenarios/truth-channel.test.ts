import { expect, it } from 'vitest';
import { createCommitter } from '../../hub/intake/committer.ts';
import { createIntake } from '../../hub/intake/intake.ts';
import { LABEL_TOPIC, TRUTH_TOPIC } from '../../sensors-sim/truth/truth.ts';
import { TruthFeed } from '../../sensors-sim/truth/truth-feed.ts';
import { MORNING, makeShop } from '../harness/shop.ts';
import { prepare } from '../sensors-sim/fire.ts';
import { MemoryLink } from '../sensors-sim/memory-link.ts';

function hub() {
  const shop = makeShop(MORNING);
  const { archive, clock } = shop;
  const committer = createCommitter({ archive, clock, windowMs: 0, nextTurn: (run) => run() });
  const intake = createIntake({ archive, committer, clock });
  const hear = (topic: string, text: string) =>
    intake.accept({
      topic,
      payload: Buffer.from(text),
      qos: 0,
      fromRetained: false,
      clientId: null,
      receivedAt: clock.now(),
    });
  return { shop, intake, hear };
}

it('the truth is nothing to the hub: not asked for, not kept, not counted as refused', async () => {
  const { shop, intake, hear } = hub();
  const simulation = prepare({ plan: null, minutes: 1, behaviours: [{ name: 'frozen-sensor' }] });
  const readings = [...simulation];
  expect(readings.length).toBeGreaterThan(0);
  for (const each of simulation.truth) await hear(TRUTH_TOPIC, JSON.stringify(each));
  for (const each of simulation.labels) await hear(LABEL_TOPIC, JSON.stringify(each));
  expect(simulation.truth.length + simulation.labels.length).toBeGreaterThan(10);
  expect(shop.archive.nodes()).toEqual([]);
  expect(shop.archive.refusals({ limit: 10 })).toEqual([]);
  for (const filter of intake.subscriptions()) expect(filter.startsWith('truth')).toBe(false);
});

it('the truth goes out once a moment, each label once, and nothing while the line is down', () => {
  const link = new MemoryLink();
  const feed = new TruthFeed(link);
  const simulation = prepare({ plan: null, minutes: 1, behaviours: [{ name: 'frozen-sensor' }] });
  for (const _ of simulation);
  const last = simulation.truth.at(-1);
  if (last === undefined) throw new Error('no truth');
  const source = { nowMs: last.atMs, labels: simulation.labels, truth: () => last };
  feed.start();
  feed.tell(source);
  expect(link.sent).toHaveLength(0);
  link.connect();
  feed.tell(source);
  feed.tell(source);
  expect(link.sent.map((each) => each.topic)).toEqual([TRUTH_TOPIC, LABEL_TOPIC]);
});
