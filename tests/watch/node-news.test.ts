import { describe, expect, it } from 'vitest';
import { makeShop } from '../harness/shop.ts';

describe('what the feed is told of a node', () => {
  it('is that it spoke, now and then, and every change of its status at once', () => {
    const shop = makeShop();
    const chamber = shop.channel({ name: 'chamber', furnace: shop.furnace() });
    shop.run(60, () => [[chamber, 20]]);
    const spoken = shop.changes.filter((change) => change.type === 'node').length;
    expect(spoken).toBeGreaterThan(5);
    expect(spoken).toBeLessThan(15);
    const write = { node: 'bench-node', receivedAt: shop.clock.now(), readings: [], refusals: [] };
    shop.watch.committed(shop.archive.commitIntake([{ ...write, status: 'offline' }]));
    const last = shop.changes.findLast((change) => change.type === 'node');
    expect(last).toMatchObject({ node: { status: 'offline' } });
  });
});
