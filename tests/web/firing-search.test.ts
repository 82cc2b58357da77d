import { describe, expect, it } from 'vitest';
import { type BatchShop, batchShop } from './recorded-batch.ts';

async function found(shop: BatchShop, query: string): Promise<string[]> {
  const { body } = await shop.call('GET', `/api/v1/firings?${query}`);
  return body.map(({ id }: { id: string }) => id);
}

async function piece(shop: BatchShop, mark: string): Promise<{ pieceId: string }> {
  const section = { shape: 'plate', thicknessMm: 6 };
  const { body } = await shop.call('POST', '/api/v1/pieces', { mark, steel: { grade: '1095' }, section });
  return { pieceId: body.id };
}

describe('a search over firings', () => {
  it('looks in title, note, schedule, furnace and the marks of the load, in any case', async () => {
    const shop = await batchShop();
    const id = await shop.record({ title: 'Zwei Meißel ÄRMEL', pieces: [await piece(shop, 'Kx-77')] });
    await shop.record({ title: 'Drawknife' });
    await shop.call('PATCH', `/api/v1/firings/${id}`, { note: 'warped at the tip' });
    for (const q of ['meißel', 'ärmel', 'WARPED', 'kx-7', 'oven warped', 'harden kx-77']) {
      expect([q, await found(shop, `q=${encodeURIComponent(q)}`)]).toEqual([q, [id]]);
    }
    expect(await found(shop, 'q=oven')).toHaveLength(2);
    expect(await found(shop, 'q=meißel%20drawknife')).toEqual([]);
    expect(await found(shop, 'q=%25')).toEqual([]);
  });

  it('follows a furnace that is renamed', async () => {
    const shop = await batchShop();
    const id = await shop.record();
    await shop.call('PATCH', `/api/v1/furnaces/${shop.oven.id}`, { name: 'Kiln' });
    expect(await found(shop, 'q=kiln')).toEqual([id]);
    expect(await found(shop, 'q=oven')).toEqual([]);
  });

  it('follows a load that is changed while the firing runs', async () => {
    const shop = await batchShop();
    const { id } = shop.start(shop.oven, { id: shop.scheduleId });
    const { pieceId } = await piece(shop, 'LATE-1');
    await shop.call('PUT', `/api/v1/firings/${id}/pieces`, { pieces: [{ pieceId }] });
    expect(await found(shop, 'q=late-1')).toEqual([id]);
  });

  it('keeps to schedule, verdict, dates and simulation', async () => {
    const shop = await batchShop();
    const good = await shop.record();
    const bad = await shop.record({ off: 40 });
    const { body } = await shop.call('GET', `/api/v1/firings/${bad}`);
    expect(await found(shop, 'verdict=not-met')).toEqual([bad]);
    expect(await found(shop, `scheduleId=${shop.scheduleId}&verdict=not-met`)).toEqual([bad]);
    expect(await found(shop, `from=${body.startedAt}`)).toEqual([bad]);
    expect(await found(shop, `before=${body.startedAt}`)).toEqual([good]);
    expect(await found(shop, 'simulated=yes')).toEqual([]);
    expect(await found(shop, 'simulated=no&q=harden')).toEqual([bad, good]);
    expect(await found(shop, 'scheduleId=nope')).toEqual([]);
    expect((await shop.call('GET', '/api/v1/firings?verdict=fine')).body.code).toBe('invalid-request');
  });

  it('gives page after page, each firing once, though several began at the same instant', async () => {
    const shop = await batchShop();
    const ids = [];
    for (let n = 0; n < 5; n += 1) ids.push(await shop.record());
    const [first] = ids;
    const held = shop.archive.firing(first ?? '');
    if (!held) throw new Error('it is there');
    // Two that began together: a page that ends between them must not lose the second.
    const { judgement: _, confirmations: __, id: ___, ...twin } = held;
    ids.unshift(shop.archive.createFiring(twin).id);
    const seen: string[] = [];
    for (let after = ''; ; ) {
      const page = await found(shop, `limit=2${after && `&after=${after}`}`);
      if (page.length === 0) break;
      seen.push(...page);
      after = page.at(-1) ?? '';
    }
    expect(new Set(seen)).toEqual(new Set(ids));
    expect(seen).toHaveLength(ids.length);
  });
});
