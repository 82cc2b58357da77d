import { describe, expect, it } from 'vitest';
import { journalEntries, journalLines } from '../../hub/web/alarm-tables.ts';
import { type Api, makeApi } from './api-client.ts';

/** A shop with a hot furnace whose probe has gone silent, and carbon monoxide above both limits. */
async function troubled(): Promise<Api & { blind: string; air: string }> {
  const api = makeApi();
  const forge = api.furnace();
  const chamber = api.channel({ name: 'chamber', furnace: forge });
  const co = api.channel({ name: 'co', quantity: 'carbon-monoxide' });
  api.say(chamber, 800);
  api.run(40, () => [[co, 90]]);
  const { body } = await api.call('GET', '/api/v1/alarms?state=open');
  const idOf = (kind: string): string => body.find((alarm: { kind: string }) => alarm.kind === kind).id;
  return { ...api, blind: idOf('not-watching-channel'), air: idOf('unsafe-air-second') };
}

const WHO = { by: 'Ina', why: 'probe is being changed' };
const at = (id: string, what: string): string => `/api/v1/alarms/${id}/${what}`;

describe('shelving over the API', () => {
  it('puts an alarm off for some minutes, lists it, and brings it back by itself', async () => {
    const api = await troubled();
    const shelved = await api.call('POST', at(api.blind, 'shelve'), { minutes: 5, ...WHO });
    expect(shelved).toMatchObject({
      status: 200,
      body: { state: 'shelved', shelf: { until: api.clock.now() + 300_000, ...WHO } },
    });
    api.clock.advance(299_000);
    expect(api.archive.alarm(api.blind)?.state).toBe('shelved');
    api.clock.advance(2_000);
    expect(api.archive.alarm(api.blind)).toMatchObject({ state: 'unacknowledged', shelf: null });
  });

  it('survives a restart of the hub, and ends on time after it', async () => {
    const api = await troubled();
    await api.call('POST', at(api.blind, 'shelve'), { minutes: 5, ...WHO });
    const again = api.restart();
    const state = () => again.alarms.open().find((row) => row.id === api.blind)?.state;
    api.clock.advance(200_000);
    expect(state()).toBe('shelved');
    api.clock.advance(101_000);
    expect(state()).toBe('unacknowledged');
  });

  it('is bounded, and asks for a name and a reason', async () => {
    const api = await troubled();
    const code = async (body: object) => (await api.call('POST', at(api.blind, 'shelve'), body)).body.code;
    expect(await code({ minutes: 481, ...WHO })).toBe('invalid-request');
    expect(await code({ until: api.clock.now() + 481 * 60_000, ...WHO })).toBe('shelf-out-of-bounds');
    expect(await code({ until: api.clock.now() - 1, ...WHO })).toBe('shelf-out-of-bounds');
    expect(await code({ minutes: 5, by: 'Ina' })).toBe('invalid-request');
    expect(await code({ minutes: 5, until: api.clock.now() + 60_000, ...WHO })).toBe('invalid-request');
    expect(api.archive.alarm(api.blind)?.state).toBe('unacknowledged');
  });

  it('refuses what the life cycle does not allow, by code', async () => {
    const api = await troubled();
    const press = async (id: string, what: string, body: object) => {
      const answer = await api.call('POST', at(id, what), body);
      return [answer.status, answer.body.code];
    };
    expect(await press(api.blind, 'unshelve', { by: 'Ina' })).toEqual([409, 'not-shelved']);
    expect(await press(api.blind, 'reset', { by: 'Ina' })).toEqual([409, 'condition-still-holds']);
    expect(await press(api.blind, 'return-to-service', WHO)).toEqual([409, 'not-out-of-service']);
    expect(await press('nope', 'shelve', { minutes: 5, ...WHO })).toEqual([404, 'not-found']);
    await api.call('POST', at(api.blind, 'shelve'), { minutes: 5, ...WHO });
    expect(await press(api.blind, 'shelve', { minutes: 5, ...WHO })).toEqual([409, 'already-shelved']);
    expect(await press(api.blind, 'acknowledge', { by: 'Ina' })).toEqual([409, 'set-aside']);
  });
});

describe('danger to life over the API', () => {
  it('is neither shelved nor taken out of service, and goes on sounding', async () => {
    const api = await troubled();
    const { body } = await api.call('GET', '/api/v1/alarms?state=open');
    const dangers = body.filter((alarm: { dangerToLife: boolean }) => alarm.dangerToLife);
    expect(dangers.length).toBeGreaterThanOrEqual(2);
    for (const { id } of dangers) {
      const shelve = await api.call('POST', at(id, 'shelve'), { minutes: 5, ...WHO });
      const out = await api.call('POST', at(id, 'out-of-service'), WHO);
      expect([shelve.status, shelve.body.code]).toEqual([403, 'danger-to-life']);
      expect([out.status, out.body.code]).toEqual([403, 'danger-to-life']);
      expect(api.archive.alarm(id)?.state).toBe('unacknowledged');
    }
  });
});

describe('out of service over the API', () => {
  it('lasts until it is returned, and the feed carries it', async () => {
    const api = await troubled();
    await api.call('POST', at(api.blind, 'out-of-service'), WHO);
    const last = api.changes.filter((change) => change.type === 'alarm').at(-1);
    expect(last).toMatchObject({ alarm: { id: api.blind, state: 'out-of-service', outOfService: WHO } });
    api.clock.advance(600_000);
    const back = await api.call('POST', at(api.blind, 'return-to-service'), { by: 'Ina', why: 'tested' });
    expect(back.body).toMatchObject({ outOfService: null });
    expect(['unacknowledged', 'normal']).toContain(back.body.state);
  });
});

describe('groups of alarms over the API', () => {
  it('lead with blindness, and never put an air alarm under anything', async () => {
    const api = await troubled();
    const { body } = await api.call('GET', '/api/v1/alarms/groups');
    expect(body[0].lead.kind).toBe('not-watching-channel');
    const followers = body.flatMap((group: { followers: { kind: string }[] }) => group.followers);
    expect(followers.filter(({ kind }: { kind: string }) => kind.startsWith('unsafe-air'))).toEqual([]);
    expect((await api.call('GET', '/api/v1/alarms/held-back')).body).toEqual([]);
  });
});

describe('the journal over the API', () => {
  it('says who did what, when and why, newest first and page by page', async () => {
    const api = await troubled();
    await api.call('POST', at(api.air, 'acknowledge'), { by: 'Ina' });
    await api.call('POST', at(api.blind, 'shelve'), { minutes: 5, ...WHO });
    const { body } = await api.call('GET', '/api/v1/alarms/journal?limit=2');
    expect(body).toMatchObject([
      { event: 'shelve', alarmId: api.blind, from: 'unacknowledged', to: 'shelved', ...WHO },
      { event: 'acknowledge', alarmId: api.air, by: 'Ina', to: 'acknowledged' },
    ]);
    const older = await api.call('GET', `/api/v1/alarms/journal?before=${body[1].seq}`);
    expect(older.body[0].seq).toBe(body[1].seq - 1);
    expect(older.body.at(-1)).toMatchObject({ seq: 1, event: 'condition-on' });
  });

  it('is exported whole, line by line and as a table, and its chain holds', async () => {
    const api = await troubled();
    const csv = await api.call('GET', '/api/v1/alarms/journal/export?format=csv');
    const lines = [...journalLines(journalEntries(api.archive, {}))];
    expect(csv.type).toContain('text/csv');
    expect(csv.body.trimEnd().split('\r\n')).toHaveLength(lines.length + 1);
    const check = await api.call('GET', '/api/v1/alarms/journal/verification');
    expect(check.body).toMatchObject({ holds: true, entries: lines.length, breaks: [] });
    const { seq } = check.body.head;
    const other = await api.call(
      'GET',
      `/api/v1/alarms/journal/verification?seq=${seq}&hash=${'0'.repeat(64)}`,
    );
    expect(other.body).toMatchObject({ holds: false, breaks: [{ seq, code: 'head-differs' }] });
  });
});

describe('the definitions over the API', () => {
  it('carry the whole rationalisation, with the setpoint that holds now', async () => {
    const api = makeApi();
    const { body } = await api.call('GET', '/api/v1/alarm-definitions');
    const first = body.find((one: { kind: string }) => one.kind === 'unsafe-air-first');
    expect(first).toMatchObject({
      dangerToLife: true,
      deadbandPercent: 10,
      setpoint: { from: 'setting', name: 'carbonMonoxideFirstPpm', value: 20, unit: 'ppm' },
    });
    for (const one of body) {
      for (const field of ['cause', 'consequence', 'action', 'source', 'timeSource'])
        expect(one[field].length).toBeGreaterThan(5);
    }
    await api.call('PATCH', '/api/v1/shop', { carbonMonoxideFirstPpm: 25 });
    const after = await api.call('GET', '/api/v1/alarm-definitions');
    expect(after.body.find((one: { kind: string }) => one.kind === 'unsafe-air-first').setpoint.value).toBe(
      25,
    );
  });

  it('come as a table with a row a kind', async () => {
    const api = makeApi();
    const csv = await api.call('GET', '/api/v1/alarm-definitions?format=csv');
    const json = await api.call('GET', '/api/v1/alarm-definitions');
    const rows = csv.body.trimEnd().split('\r\n');
    expect(rows).toHaveLength(json.body.length + 1);
    expect(rows[0]).toMatch(
      /^kind,name,priority,rank,danger_to_life,cause,consequence,action,seconds_to_act/,
    );
  });
});

describe('the review over the API', () => {
  it('reads the journal of the stretch that is asked for', async () => {
    const api = await troubled();
    api.clock.advance(20_000);
    await api.call('POST', at(api.air, 'acknowledge'), { by: 'Ina' });
    const { body } = await api.call('GET', '/api/v1/alarms/review');
    const journal = api.archive.alarmJournal({ order: 'oldest-first', limit: 100 });
    expect(body.announced).toBe(journal.filter(({ to }) => to === 'unacknowledged').length);
    expect(body.acknowledgement).toMatchObject({ answered: 1 });
    expect(body.acknowledgement.medianSeconds).toBeGreaterThanOrEqual(20);
    expect(body.standing.map(({ alarmId }: { alarmId: string }) => alarmId)).toContain(api.blind);
    const before = await api.call('GET', '/api/v1/alarms/review?from=1000&to=2000');
    expect(before.body).toMatchObject({ announced: 0, standing: [], enoughData: false });
  });

  it('refuses a stretch that runs backwards or is too long', async () => {
    const { call } = makeApi();
    const code = async (query: string) => (await call('GET', `/api/v1/alarms/review?${query}`)).body.code;
    expect(await code('from=2000&to=1000')).toBe('invalid-request');
    expect(await code('from=0')).toBe('too-much-work');
  });
});
