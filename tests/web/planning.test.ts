import { describe, expect, it } from 'vitest';
import { type Api, makeApi } from './api-client.ts';

const SECTION = { shape: 'bar', thicknessMm: 12 };
const DRIFT = {
  mark: 'D-1',
  title: 'Drift',
  steel: { grade: '1084' },
  section: SECTION,
  route: [
    { kind: 'heat', step: 'full-anneal' },
    { kind: 'heat', step: 'harden' },
  ],
};

function ovenOf(api: Api): string {
  return api.furnace('Oven', 'electric-oven').id;
}

describe('schedules that come from the steel', () => {
  it('proposes an anneal with reasons and sources, and keeps them with the schedule and its firing', async () => {
    const api = makeApi();
    const furnace = api.furnace('Oven', 'electric-oven');
    const furnaceId = furnace.id;
    api.channel({ name: 'chamber', furnace });
    const asked = { step: 'full-anneal', furnaceId, steel: '1084', section: SECTION };
    const { status, body } = await api.call('POST', '/api/v1/schedules/propose', asked);
    expect(status).toBe(200);
    expect(body.draft.basis.reasons.length).toBeGreaterThan(5);
    // 1084: at most 28 °C/h down to 650 °C (from memory: Heat Treater's Guide).
    expect(body.draft.segments[2]).toMatchObject({ maximumRateCelsiusPerHour: 28, targetCelsius: 650 });
    expect(body.faults).toEqual([]);
    const kept = await api.call('POST', '/api/v1/schedules', body.draft);
    expect(kept.status).toBe(201);
    expect(kept.body.basis).toEqual(body.draft.basis);
    const started = await api.call('POST', '/api/v1/firings', { furnaceId, scheduleId: kept.body.id });
    expect(started.body.schedule.basis.askTheDataSheet.length).toBeGreaterThan(2);
    const read = await api.call('GET', `/api/v1/firings/${started.body.id}`);
    expect(read.body.schedule.basis.reasons).toEqual(body.draft.basis.reasons);
  });

  it('says with each reason what was proposed, so that a change by hand shows', async () => {
    const api = makeApi();
    const asked = { step: 'harden', furnaceId: ovenOf(api), steel: 'O1', section: SECTION };
    const { body } = await api.call('POST', '/api/v1/schedules/propose', asked);
    const soak = body.draft.basis.reasons.find((r: { code: string }) => r.code === 'target-window');
    expect(soak.value).toBe(body.draft.segments[0].targetCelsius);
  });

  it('plans for pieces on the bench with the soak clock on their middle', async () => {
    const api = makeApi();
    const furnaceId = ovenOf(api);
    const { body: piece } = await api.call('POST', '/api/v1/pieces', DRIFT);
    const { body } = await api.call('POST', '/api/v1/schedules/propose', {
      step: 'full-anneal',
      furnaceId,
      pieceIds: [piece.id],
    });
    const codes = body.draft.basis.reasons.map((r: { code: string }) => r.code);
    expect(codes).toContain('soak-core-clock');
    expect(body.expectedSeconds).toBeGreaterThan(3600);
  });

  it('refuses what cannot honestly be planned, with a code and what to do', async () => {
    const api = makeApi();
    const furnaceId = ovenOf(api);
    const propose = (question: object) =>
      api.call('POST', '/api/v1/schedules/propose', { furnaceId, ...question });
    expect(await propose({ step: 'normalise', steel: 'A2', section: SECTION })).toMatchObject({
      status: 422,
      body: { code: 'not-applicable' },
    });
    expect(await propose({ step: 'temper', steel: '1045', section: SECTION, wantedHrc: 69 })).toMatchObject({
      body: { code: 'no-solution' },
    });
    expect((await propose({ step: 'temper', section: SECTION })).body.code).toBe('invalid-request');
    expect((await propose({ step: 'temper', steel: '1045' })).body.errors[0].path).toBe('/section');
  });
});

describe('the check before a start', () => {
  it('names the piece, the segment and what to mend, and what it could not look at', async () => {
    const api = makeApi();
    const furnaceId = ovenOf(api);
    const { body: piece } = await api.call('POST', '/api/v1/pieces', DRIFT);
    const segments = [
      { kind: 'ramp', targetCelsius: 900 },
      { kind: 'soak', targetCelsius: 900, durationSeconds: 600 },
      { kind: 'cool', targetCelsius: 60, medium: 'quench' },
    ];
    const { status, body } = await api.call('POST', '/api/v1/schedules/check', {
      furnaceId,
      segments,
      pieces: [{ pieceId: piece.id, routeStepId: piece.route[1].id }],
    });
    expect(status).toBe(200);
    expect(body.faults[0]).toMatchObject({
      code: 'harden-above-window',
      weight: 'wrong',
      segment: 1,
      mark: 'D-1',
    });
    expect(body.faults[0].text).toMatch(/900 °C is above the hardening window/);
    expect(body.notChecked.join(' ')).toMatch(/Gas/);
  });

  it('wants one schedule: a stored one or segments', async () => {
    const api = makeApi();
    const furnaceId = ovenOf(api);
    const none = await api.call('POST', '/api/v1/schedules/check', { furnaceId });
    expect(none).toMatchObject({ status: 400, body: { code: 'invalid-request' } });
    const unknown = await api.call('POST', '/api/v1/schedules/check', { furnaceId, scheduleId: 'nothing' });
    expect(unknown).toMatchObject({ status: 404, body: { code: 'not-found' } });
  });
});
