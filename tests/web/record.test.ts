import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { FiringRecord } from '../../hub/contract/firing-record.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { type Api, makeApi } from './api-client.ts';

const HOUR = 3_600_000;
const RAMP = { kind: 'ramp', targetCelsius: 905, toleranceCelsius: 15 };
const SOAK = { kind: 'soak', targetCelsius: 905, toleranceCelsius: 15, durationSeconds: 1200 };

interface Recorded extends Api {
  readonly firingId: string;
  readonly chamber: Channel;
  readonly thin: string;
  readonly thick: string;
  findings(): ReturnType<Api['call']>;
}

/** The air of an oven: to 905 °C in an hour, held for 40 minutes; read every ten seconds, and carbon monoxide beside. */
function readings(from: number) {
  return Array.from({ length: 600 }, (_, i) => {
    const at = from + i * 10_000;
    const value = Math.min(905, 50 + (855 * i) / 360);
    const common = { at, quality: 'good' as const };
    return [
      { ...common, name: 'chamber', quantity: 'temperature' as const, value },
      { ...common, name: 'co', quantity: 'carbon-monoxide' as const, value: i === 300 ? 31 : 4 },
    ];
  }).flat();
}

/** A firing that is over, of a thin bar and a thick block of 1045 that it normalised. */
async function recorded(): Promise<Recorded> {
  const api = makeApi();
  const furnace = api.furnace('Oven', 'electric-oven');
  const chamber = api.channel({ name: 'chamber', furnace });
  api.channel({ name: 'co', quantity: 'carbon-monoxide' });
  const startedAt = api.clock.now() - 4 * HOUR;
  const write = { node: 'bench-node', receivedAt: startedAt, readings: readings(startedAt), refusals: [] };
  api.archive.commitIntake([write]);
  for (const channel of api.archive.channels()) {
    api.archive.saveChannel({
      ...channel,
      adopted: true,
      role: channel.name === 'co' ? 'room-air' : 'chamber',
    });
  }
  const schedule = api.schedule({ name: 'Normalise', segments: [RAMP, SOAK] } as never);
  const piece = async (mark: string, thicknessMm: number) => {
    const { body } = await api.call('POST', '/api/v1/pieces', {
      mark,
      steel: { grade: '1045' },
      section: { shape: 'plate', thicknessMm, massKilograms: null },
      route: [{ kind: 'heat', step: 'normalise' }],
    });
    return { pieceId: body.id, routeStepId: body.route[0].id };
  };
  const [thin, bar, thick] = [await piece('K-6', 6), await piece('B-20', 20), await piece('A-150', 150)];
  const endedAt = startedAt + 599 * 10_000;
  const draft = {
    furnaceId: furnace.id,
    scheduleId: schedule.id,
    startedAt,
    endedAt,
    pieces: [thin, thick, bar],
  };
  const { body } = await api.call('POST', '/api/v1/firings', draft);
  const findings = () => api.call('GET', `/api/v1/firings/${body.id}/findings`);
  return { ...api, firingId: body.id, chamber, thin: thin.pieceId, thick: thick.pieceId, findings };
}

/** For what only looks. */
let seen: Recorded;
beforeAll(async () => {
  seen = await recorded();
});

describe('the record of a firing', () => {
  it('says of each piece what its own middle went through', async () => {
    const { body, status } = await seen.findings();
    expect(status).toBe(200);
    const [thin, thick] = body.pieces;
    expect(thin).toMatchObject({ mark: 'K-6', basis: 'core', coreOf: null });
    expect(thin.soakSeconds).toBeGreaterThan(1200);
    expect(thick).toMatchObject({ mark: 'A-150', verdict: 'not-met' });
    expect(thick.text).toMatch(/^Not met: Its middle (never|had)/);
    expect(thick.airSoakSeconds).toBeGreaterThan(1200);
    expect(thick.peakCelsius.value).toBeLessThan(thin.peakCelsius.value);
  });

  it('judges a piece between the slowest and the quickest by its own middle too', async () => {
    const [thin, thick, bar] = (await seen.findings()).body.pieces;
    expect(bar).toMatchObject({ mark: 'B-20', basis: 'core', coreOf: null });
    expect(bar.soakSeconds).toBeGreaterThan(1200);
    expect(bar.soakSeconds).toBeLessThan(thin.soakSeconds);
    expect(bar.verdict).not.toBe(thick.verdict);
  });

  it('is what its published schema says, by a general validator made from that schema alone', async () => {
    const api = seen;
    const record = (await api.call('GET', `/api/v1/firings/${api.firingId}/record?format=json`)).body;
    expect(record.schema).toBe('/api/v1/schemas/firing-record');
    const published = await api.call('GET', record.schema);
    expect(published.body.$id).toBe(record.schema);
    const validator = z.fromJSONSchema(published.body);
    expect(validator.safeParse(record).error).toBeUndefined();
    expect(validator.safeParse({ ...record, formatVersion: 1 }).success).toBe(false);
    const [piece] = record.pieces;
    expect(validator.safeParse({ ...record, pieces: [{ ...piece, verdict: 'fine' }] }).success).toBe(false);
    expect(FiringRecord.parse(record)).toEqual(record);
  });

  it('has the figures with their bands, and the carbon monoxide that was measured', async () => {
    const { body } = await seen.findings();
    const scale = body.pieces[0].figures.find(({ kind }: { kind: string }) => kind === 'scale');
    expect(scale.low).toBeLessThan(scale.value);
    expect(scale.text).toMatch(/^Scale 0\.\d\d mm \(0\.\d\d–0\.\d\d\)$/);
    expect(body.air).toMatchObject([{ peakPpm: 31, worstQuarterHourPpm: expect.closeTo(4.3, 1) }]);
    expect(body.gas).toBeNull();
  });

  it('keeps the probes that were in force, whatever is calibrated later', async () => {
    const api = await recorded();
    const before = (await api.findings()).body;
    expect(before.probes).toMatchObject([
      { channel: api.chamber.id, probe: null, frozenAt: expect.any(Number) },
    ]);
    await api.call('PATCH', `/api/v1/channels/${api.chamber.id}`, {
      probe: { type: 'K', tolerance: 'iec-1' },
    });
    const after = (await api.findings()).body;
    expect(after.probes).toEqual(before.probes);
    expect(after.uncertainty).toEqual(before.uncertainty);
  });

  it('is judged again on request, and the verdict of earlier rules stays beside it', async () => {
    const api = await recorded();
    const [kept] = api.archive.firingVerdicts(api.firingId);
    if (kept === undefined) throw new Error('no verdict was kept');
    const pieces = kept.pieces as { pieceId: string; verdict: 'met' }[];
    const old = { ...kept, recordVersion: 'record-0', verdict: 'met' as const, pieces };
    api.archive.saveFiringVerdict(api.firingId, old, true);
    const answer = await api.call('POST', `/api/v1/firings/${api.firingId}/rejudge`);
    expect(answer).toMatchObject({ status: 200, body: { judgement: { verdict: 'not-met' } } });
    const { body } = await api.findings();
    expect(body.judged).toMatchObject({ why: 'asked', recordVersion: 'record-1', verdict: 'not-met' });
    expect(body.earlier).toMatchObject([{ recordVersion: 'record-0', verdict: 'met' }]);
    expect(body.earlier[0].text).toMatch(/^Judged again on request, by rules firing-\d+\/record-1: met$/);
    // The same rules and the same verdict again: nothing new to keep.
    await api.call('POST', `/api/v1/firings/${api.firingId}/rejudge`);
    expect((await api.findings()).body.earlier).toHaveLength(1);
  });

  it('is judged again after a start with newer rules, while nothing burns', async () => {
    const api = await recorded();
    const [kept] = api.archive.firingVerdicts(api.firingId);
    if (kept === undefined) throw new Error('no verdict was kept');
    const pieces = kept.pieces as { pieceId: string; verdict: 'met' }[];
    api.archive.saveFiringVerdict(api.firingId, { ...kept, recordVersion: 'record-0', pieces }, true);
    api.restart();
    api.clock.advance(6000);
    const rows = api.archive.firingVerdicts(api.firingId);
    expect(rows.map(({ recordVersion, why }) => `${recordVersion} ${why}`)).toEqual([
      'record-1 newer-rules',
      'record-0 ended',
    ]);
  });

  it('is refused a second judging while it runs', async () => {
    const api = await recorded();
    const { furnaceId, schedule } = (await api.call('GET', `/api/v1/firings/${api.firingId}`)).body;
    const running = await api.call('POST', '/api/v1/firings', { furnaceId, scheduleId: schedule.id });
    const answer = await api.call('POST', `/api/v1/firings/${running.body.id}/rejudge`);
    expect(answer).toMatchObject({ status: 409, body: { code: 'conflict' } });
    expect((await api.call('GET', `/api/v1/firings/${running.body.id}/findings`)).body).toMatchObject({
      judged: null,
      pieces: [],
    });
  });

  it('gives each piece its own verdict in its history and its route', async () => {
    const api = seen;
    const history = async (id: string) => (await api.call('GET', `/api/v1/pieces/${id}/history`)).body;
    const [thin, thick] = [await history(api.thin), await history(api.thick)];
    expect(thick.entries[0].verdict).toBe('not-met');
    expect(thick.piece.route[0].done.outcome).toBe('not-met');
    expect(thin.entries[0].verdict).toBe(thin.piece.route[0].done.outcome);
    expect(thin.entries[0].verdict).not.toBe('not-met');
  });
});
