import { describe, expect, it } from 'vitest';
import type { FiringComparison } from '../../hub/contract/comparison.ts';
import { type BatchShop, batchShop, SOAK_SECONDS, TARGET } from './recorded-batch.ts';

const compared = async (shop: BatchShop, query: string): Promise<FiringComparison> =>
  (await shop.call('GET', `/api/v1/firings/compare?${query}`)).body;

describe('firings compared', () => {
  it('lie over each other segment by segment, though one heated twice as slowly', async () => {
    const shop = await batchShop();
    const ids = [await shop.record(), await shop.record({ rampSeconds: 240, off: 4 })];
    const answer = await compared(shop, `ids=${ids.join()}&reference=${ids[0]}`);
    const soak = answer.segments[1];
    const at = (firing: number) => answer.firings[firing]?.celsius[(soak?.first ?? 0) + 60] ?? 0;
    expect(answer.segments.map(({ kind }) => kind)).toEqual(['ramp', 'soak']);
    expect(at(0)).toBeCloseTo(TARGET, 6);
    expect(at(1)).toBeCloseTo(TARGET + 4, 6);
    expect(answer.envelope).toMatchObject({ size: 2 });
    expect(answer.envelope.highest[(soak?.first ?? 0) + 60]).toBeCloseTo(TARGET + 4, 6);
  });

  it('are held against plan and reference, the reference against itself by nothing', async () => {
    const shop = await batchShop();
    const ids = [await shop.record(), await shop.record({ off: 4 })];
    const answer = await compared(shop, `ids=${ids.join()}&reference=${ids[0]}`);
    const [first, second] = answer.firings.map(({ segments }) => segments.find(({ index }) => index === 1));
    expect(answer.firings.map(({ isReference }) => isReference)).toEqual([true, false]);
    expect(first?.toReference).toMatchObject({ meanCelsius: 0, largestCelsius: 0 });
    expect(second?.toReference?.largestCelsius).toBeCloseTo(4, 6);
    expect(second?.figuresToReference.peakCelsius).toBeCloseTo(4, 6);
    expect(second?.toPlan?.largestCelsius).toBeCloseTo(4, 6);
  });

  it('show a drift that is sure over four firings', async () => {
    const shop = await batchShop();
    const ids = [];
    for (const off of [0, 2, 4, 6]) ids.push(await shop.record({ off }));
    const { drifts } = await compared(shop, `ids=${ids.join()}`);
    const peak = drifts.find(({ segment, figure }) => segment === 1 && figure === 'peakCelsius');
    expect(peak).toMatchObject({ firings: 4, sure: true });
    expect(peak?.perFiring).toBeCloseTo(2, 6);
  });

  it('leave out a firing whose schedule has other segments, and say so', async () => {
    const shop = await batchShop();
    const other = await shop.call('POST', '/api/v1/schedules', {
      name: 'Soak only',
      segments: [{ kind: 'soak', targetCelsius: TARGET, durationSeconds: 60 }],
    });
    const ids = [await shop.record(), await shop.record({ scheduleId: other.body.id })];
    const answer = await compared(shop, `ids=${ids.join()}`);
    expect(answer.firings.map(({ firing }) => firing.id)).toEqual([ids[0]]);
    expect(answer.leftOut).toEqual([{ firingId: ids[1], reason: 'other-segments' }]);
  });

  it.each([
    ['no firing', 'ids=', 400, 'invalid-request'],
    [
      'thirteen firings',
      `ids=${Array.from({ length: 13 }, (_, n) => `f${n}`).join()}`,
      400,
      'invalid-request',
    ],
    ['a firing that is not there', 'ids=nope', 404, 'not-found'],
    ['more points than a screen has', 'ids=a&points=401', 400, 'invalid-request'],
  ])('refuses %s', async (_, query, status, code) => {
    const shop = await batchShop();
    expect(await shop.call('GET', `/api/v1/firings/compare?${query}`)).toMatchObject({
      status,
      body: { code },
    });
  });
});

describe('batch statistics', () => {
  it('chart the soak of each firing, the oldest first, with limits', async () => {
    const shop = await batchShop();
    for (const off of [0, 1, -1, 2]) await shop.record({ off });
    const { body } = await shop.call('GET', `/api/v1/statistics?schedule=${shop.scheduleId}&measure=peak`);
    const values = body.points.map(({ value }: { value: number }) => Math.round(value));
    expect(values).toEqual([800, 801, 799, 802]);
    expect(body).toMatchObject({ unit: 'Cel', segment: 1, tolerance: { lower: null, upper: 810 } });
    // By hand: moving ranges 1, 2, 3, mean 2; the centre 800.5; 3 · 2 / (2/√π) above it.
    expect(body.chart.values.centre).toBeCloseTo(800.5, 6);
    expect(body.chart.values.upper).toBeCloseTo(800.5 + 3 * Math.sqrt(Math.PI), 6);
    expect(body.capability).toEqual({ known: false, reason: 'few-values' });
  });

  it('hold the soak time against the least that the schedule wants', async () => {
    const shop = await batchShop();
    await shop.record();
    await shop.record();
    const { body } = await shop.call(
      'GET',
      `/api/v1/statistics?schedule=${shop.scheduleId}&measure=soak-time`,
    );
    expect(body).toMatchObject({ unit: 's', tolerance: { lower: SOAK_SECONDS, upper: null } });
    expect(body.points).toHaveLength(2);
    expect(body.points[0].value).toBeGreaterThanOrEqual(SOAK_SECONDS);
  });

  it('keep to schedule, furnace and limit, and say when there are older ones', async () => {
    const shop = await batchShop();
    for (const off of [0, 1, 2]) await shop.record({ off });
    const forge = shop.furnace('Forge');
    const base = `/api/v1/statistics?schedule=${shop.scheduleId}`;
    const newest = await shop.call('GET', `${base}&limit=2`);
    expect(newest.body.points).toHaveLength(2);
    expect(newest.body.leftOut.older).toBe(true);
    expect((await shop.call('GET', `${base}&furnace=${forge.id}`)).body.points).toEqual([]);
    expect((await shop.call('GET', `${base}&furnace=nope`)).body.code).toBe('not-found');
    expect((await shop.call('GET', '/api/v1/statistics?schedule=nope')).body.code).toBe('not-found');
    expect((await shop.call('GET', `${base}&segment=0`)).body).toMatchObject({
      code: 'invalid-request',
      errors: [{ path: '/segment' }],
    });
  });

  it('mark where the plan of the soak became another one', async () => {
    const shop = await batchShop();
    for (const off of [0, 1]) await shop.record({ off });
    const { body: schedule } = await shop.call('GET', `/api/v1/schedules/${shop.scheduleId}`);
    const segments = schedule.segments.map((segment: object) => ({ ...segment, toleranceCelsius: 6 }));
    await shop.call('PUT', `/api/v1/schedules/${shop.scheduleId}`, { name: 'Harden', segments });
    for (const off of [2, 1]) await shop.record({ off });
    const { body } = await shop.call('GET', `/api/v1/statistics?schedule=${shop.scheduleId}`);
    expect(body.changes).toMatchObject([{ kind: 'schedule', index: 2, text: '2' }]);
    expect(body.points.map((point: { scheduleVersion: number }) => point.scheduleVersion)).toEqual([
      1, 1, 2, 2,
    ]);
  });
});

describe('hardness', () => {
  const hardness = (value: number, scale = 'HRC') => ({
    seen: { kind: 'hardness', scale, readings: [{ value }] },
  });

  async function pieceOf(shop: BatchShop, mark: string, step = 'temper') {
    const section = { shape: 'plate', thicknessMm: 6 };
    const route = [{ kind: 'heat', step }];
    const { body } = await shop.call('POST', '/api/v1/pieces', {
      mark,
      steel: { grade: '1095' },
      section,
      route,
    });
    return { pieceId: body.id as string, routeStepId: body.route[0].id as string };
  }

  it('belongs to the last firing that held the piece, and to no other schedule', async () => {
    const shop = await batchShop();
    const piece = await pieceOf(shop, 'A-1');
    const firingId = await shop.record({ pieces: [piece] });
    await shop.call('POST', `/api/v1/pieces/${piece.pieceId}/observations`, hardness(60));
    await shop.call('POST', `/api/v1/pieces/${piece.pieceId}/observations`, hardness(700, 'HV'));
    const url = `/api/v1/statistics?measure=hardness&schedule=${shop.scheduleId}`;
    const { body } = await shop.call('GET', url);
    expect(body.points).toMatchObject([{ firingId, pieceId: piece.pieceId, value: 60, marks: ['A-1'] }]);
    expect(body.leftOut).toMatchObject({ otherScale: 1, unknown: 0 });
    expect(body.capability).toEqual({ known: false, reason: 'no-tolerance' });
  });

  it('against the tempering parameter teaches the shop its own steel', async () => {
    const shop = await batchShop();
    for (const [n, target] of [180, 210, 240, 270].entries()) {
      const soak = {
        kind: 'soak',
        targetCelsius: target,
        toleranceCelsius: 10,
        durationSeconds: SOAK_SECONDS,
      };
      const ramp = { kind: 'ramp', targetCelsius: target, toleranceCelsius: 10 };
      const draft = { name: `Temper ${target}`, segments: [ramp, soak] };
      const { body } = await shop.call('POST', '/api/v1/schedules', draft);
      const piece = await pieceOf(shop, `T-${n}`);
      await shop.record({ scheduleId: body.id, target, pieces: [piece], holdSeconds: 1800 });
      await shop.call(
        'POST',
        `/api/v1/pieces/${piece.pieceId}/observations`,
        hardness(63 - n + (n % 2) * 0.3),
      );
    }
    const { body } = await shop.call('GET', '/api/v1/statistics/tempering');
    expect(body).toMatchObject({ steelId: '1095', notFitted: null });
    expect(body.points).toHaveLength(4);
    // 1095 has 0.95 % C by its standard: C = 21.3 - 5.8 · 0.95, as published for hours.
    expect(body.constant).toBeCloseTo(21.3 - 5.8 * 0.95, 1);
    expect(body.curve[0].hardnessHrc).toBeGreaterThan(body.curve.at(-1).hardnessHrc);
  });

  it('after hardening alone says nothing of tempering', async () => {
    const shop = await batchShop();
    const piece = await pieceOf(shop, 'H-1', 'austenitise');
    await shop.record({ pieces: [piece] });
    await shop.call('POST', `/api/v1/pieces/${piece.pieceId}/observations`, hardness(65));
    expect((await shop.call('GET', '/api/v1/statistics/tempering')).body).toMatchObject({
      steels: [],
      points: [],
      notFitted: 'few-pieces',
    });
  });
});
