import { describe, expect, it } from 'vitest';
import { batchShop } from './recorded-batch.ts';

describe('the reference of a schedule', () => {
  it('is a finished firing of it, chosen and dropped', async () => {
    const shop = await batchShop();
    const url = `/api/v1/schedules/${shop.scheduleId}/reference`;
    const firingId = await shop.record();
    expect((await shop.call('GET', url)).body).toBeNull();
    const chosen = { scheduleId: shop.scheduleId, firingId, chosenAt: shop.clock.now() };
    expect(await shop.call('PUT', url, { firingId })).toMatchObject({ status: 200, body: chosen });
    expect((await shop.call('GET', url)).body).toEqual(chosen);
    expect((await shop.call('DELETE', url)).status).toBe(204);
    expect((await shop.call('GET', url)).body).toBeNull();
  });

  it('is taken into a comparison that names none', async () => {
    const shop = await batchShop();
    const [good, other] = [await shop.record(), await shop.record({ off: 5 })];
    await shop.call('PUT', `/api/v1/schedules/${shop.scheduleId}/reference`, { firingId: good });
    const { body } = await shop.call('GET', `/api/v1/firings/compare?ids=${other}`);
    expect(body.referenceId).toBe(good);
    expect(body.firings.map(({ firing }: { firing: { id: string } }) => firing.id)).toEqual([good, other]);
    expect(body.firings[1].segments[1].figuresToReference.peakCelsius).toBeCloseTo(5, 6);
  });

  it('goes when its firing is deleted, and the schedule is as it was', async () => {
    const shop = await batchShop();
    const firingId = await shop.record();
    const url = `/api/v1/schedules/${shop.scheduleId}/reference`;
    await shop.call('PUT', url, { firingId });
    await shop.call('DELETE', `/api/v1/firings/${firingId}`);
    expect(await shop.call('GET', url)).toMatchObject({ status: 200, body: null });
  });

  it('is no firing of another schedule, none that runs, none that is not there', async () => {
    const shop = await batchShop();
    const other = shop.schedule({
      name: 'Other',
      segments: [{ kind: 'soak', targetCelsius: 800, durationSeconds: 60 }],
    });
    const firingId = await shop.record({ scheduleId: other.id });
    const url = `/api/v1/schedules/${shop.scheduleId}/reference`;
    expect((await shop.call('PUT', url, { firingId })).body.code).toBe('conflict');
    expect((await shop.call('PUT', url, { firingId: 'nope' })).body.code).toBe('not-found');
    const running = shop.start(shop.oven, { id: shop.scheduleId });
    expect((await shop.call('PUT', url, { firingId: running.id })).body.code).toBe('conflict');
    expect((await shop.call('PUT', '/api/v1/schedules/nope/reference', { firingId })).status).toBe(404);
  });
});

describe('what was changed in the shop', () => {
  const KIND_K = { type: 'K' };

  it('is noted when a channel gets another probe or another furnace, and not for a new label', async () => {
    const shop = await batchShop();
    const forge = shop.furnace('Forge');
    const channel = `/api/v1/channels/${shop.chamber.id}`;
    await shop.call('PATCH', channel, { label: 'Back wall' });
    await shop.call('PATCH', channel, { probe: KIND_K });
    await shop.call('PATCH', channel, { probe: KIND_K });
    await shop.call('PATCH', channel, { furnaceId: forge.id });
    const { body } = await shop.call('GET', '/api/v1/shop-changes');
    const told = body.map(({ kind, furnaceId }: { kind: string; furnaceId: string }) => [kind, furnaceId]);
    expect(told).toEqual([
      ['probe', shop.oven.id],
      ['probe-moved', shop.oven.id],
      ['probe-moved', forge.id],
    ]);
    expect(body[0]).toMatchObject({ channelId: shop.chamber.id, text: 'Back wall', by: '' });
  });

  it('can be said by a person, for one furnace or the shop, and not of the future', async () => {
    const shop = await batchShop();
    const draft = { kind: 'cylinder', text: 'propane, 13 kg', by: 'Ada' };
    const made = await shop.call('POST', '/api/v1/shop-changes', draft);
    expect(made).toMatchObject({ status: 201, body: { ...draft, furnaceId: null, at: shop.clock.now() } });
    const late = await shop.call('POST', '/api/v1/shop-changes', { ...draft, at: shop.clock.now() + 1 });
    expect(late.body).toMatchObject({ code: 'invalid-request', errors: [{ path: '/at' }] });
    const nowhere = await shop.call('POST', '/api/v1/shop-changes', { ...draft, furnaceId: 'nope' });
    expect(nowhere.body.code).toBe('not-found');
    expect((await shop.call('GET', '/api/v1/shop-changes')).body).toEqual([made.body]);
  });

  it('is marked in the chart of that furnace, with the shift it brought', async () => {
    const shop = await batchShop();
    for (const off of [0, 1, -1]) await shop.record({ off });
    const { body: list } = await shop.call('GET', '/api/v1/firings');
    const at = list[0].endedAt;
    for (const off of [5, 6, 4]) await shop.record({ off });
    const forge = shop.furnace('Forge');
    await shop.call('POST', '/api/v1/shop-changes', {
      kind: 'probe',
      at,
      furnaceId: shop.oven.id,
      text: 'type N',
    });
    await shop.call('POST', '/api/v1/shop-changes', { kind: 'other', at, furnaceId: forge.id });
    const { body } = await shop.call('GET', `/api/v1/statistics?schedule=${shop.scheduleId}&measure=peak`);
    expect(body.changes).toMatchObject([{ kind: 'probe', text: 'type N', index: 3, shift: { sure: true } }]);
    expect(body.changes[0].shift.value).toBeCloseTo(5, 6);
  });
});
