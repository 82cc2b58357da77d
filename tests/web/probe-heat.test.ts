import { describe, expect, it } from 'vitest';
import type { Channel } from '../../hub/contract/shop.ts';
import { type Api, makeApi } from './api-client.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
/** ASTM E230 Table 6 (second-hand): protected type K wire of 1.63 mm (No. 14 gauge) up to 1090 °C. */
const WIRE = { type: 'K', tolerance: 'iec-2', construction: 'protected-wire', millimetres: 1.63 };
const LIMIT = 1090;

type Point = readonly [at: number, celsius: number];

/** A chamber thermocouple that counts as watching for ten minutes after a reading. */
async function ready(probe: object | null = WIRE): Promise<{ api: Api; channel: Channel; path: string }> {
  const api = makeApi();
  const made = api.channel({ name: 'chamber', furnace: api.furnace() });
  // Nobody has to stand watch while days pass.
  api.watch.stop();
  const path = `/api/v1/channels/${made.id}`;
  const { body } = await api.call('PATCH', path, { staleAfterSeconds: 600, probe });
  return { api, channel: body, path: `${path}/time-above` };
}

function say(api: Api, points: readonly Point[]): void {
  api.archive.commitIntake([
    {
      node: 'bench-node',
      receivedAt: api.clock.now(),
      readings: points.map(([at, value]) => ({
        name: 'chamber',
        quantity: 'temperature',
        at,
        value,
        quality: 'good',
      })),
      refusals: [],
    },
  ]);
}

/** Every five minutes from `from` for `hours`, at one temperature. */
function held(from: number, hours: number, celsius: number): Point[] {
  return Array.from({ length: hours * 12 + 1 }, (_, i) => [from + i * 5 * MINUTE, celsius] as const);
}

describe('hours above the limit of a probe', () => {
  it('are counted along the straight lines between readings', async () => {
    const { api, path } = await ready();
    const start = api.clock.now();
    // Up through the limit in ten minutes, an hour above, and down again in ten.
    const above = held(start + 10 * MINUTE, 1, LIMIT + 50);
    say(api, [[start, LIMIT - 50], ...above, [start + 80 * MINUTE, LIMIT - 50]]);
    api.clock.advance(80 * MINUTE);
    const { body } = await api.call('GET', path);
    expect(body).toMatchObject({ limitCelsius: LIMIT, peakCelsius: LIMIT + 50, from: start, complete: true });
    expect(body.hoursAbove).toBeCloseTo(70 / 60, 6);
    expect(body.hoursWatched).toBeCloseTo(80 / 60, 6);
  });

  it('never count a silence as below or above', async () => {
    const { api, path } = await ready();
    const start = api.clock.now();
    say(api, [...held(start, 1, LIMIT + 10), ...held(start + 3 * HOUR, 1, LIMIT + 10)]);
    api.clock.advance(4 * HOUR);
    const { body } = await api.call('GET', path);
    expect(body.hoursAbove).toBeCloseTo(2, 6);
    expect(body.hoursWatched).toBeCloseTo(2, 6);
  });

  it('add up over midnight, whatever day a stretch belongs to', async () => {
    const { api, path } = await ready();
    const midnight = Math.ceil(api.clock.now() / DAY) * DAY;
    say(api, held(midnight - 2 * HOUR - 2 * MINUTE, 5, LIMIT + 10));
    api.clock.advance(midnight + 3 * HOUR - 2 * MINUTE - api.clock.now());
    expect((await api.call('GET', path)).body.hoursAbove).toBeCloseTo(5, 6);
    api.clock.advance(2 * DAY);
    expect((await api.call('GET', path)).body.hoursAbove).toBeCloseTo(5, 6);
  });

  it('count a day that is over once, and again when readings of it come late', async () => {
    const { api, channel, path } = await ready();
    const start = api.clock.now();
    say(api, held(start, 1, LIMIT + 10));
    api.clock.advance(3 * DAY);
    expect((await api.call('GET', path)).body.hoursAbove).toBeCloseTo(1, 6);
    const kept = api.archive.hotDays(channel.id);
    expect(kept).toHaveLength(3);
    say(api, held(start + 2 * HOUR, 1, LIMIT + 20));
    expect(api.archive.hotDays(channel.id).length).toBeLessThan(3);
    const again = (await api.call('GET', path)).body;
    expect(again.hoursAbove).toBeCloseTo(2, 6);
    expect(again.peakCelsius).toBe(LIMIT + 20);
  });

  it('are counted anew for another size of wire', async () => {
    const { api, channel, path } = await ready();
    say(api, held(api.clock.now(), 1, LIMIT - 50));
    api.clock.advance(2 * DAY);
    expect((await api.call('GET', path)).body.hoursAbove).toBe(0);
    await api.call('PATCH', `/api/v1/channels/${channel.id}`, { probe: { ...WIRE, millimetres: 0.51 } });
    const { body } = await api.call('GET', path);
    expect(body.limitCelsius).toBeLessThan(LIMIT - 50);
    expect(body.hoursAbove).toBeCloseTo(1, 6);
  });

  it('come in bounded portions when years lie there, and get to the end', async () => {
    const { api, path } = await ready();
    const start = api.clock.now();
    say(api, [...held(start, 1, LIMIT + 10), ...held(start + 150 * DAY, 1, LIMIT + 10)]);
    api.clock.advance(151 * DAY);
    const first = (await api.call('GET', path)).body;
    expect(first).toMatchObject({ complete: false, from: start });
    expect(first.to).toBeLessThan(start + 80 * DAY);
    let last = first;
    for (let asked = 1; !last.complete && asked < 4; asked += 1) last = (await api.call('GET', path)).body;
    expect(last.complete).toBe(true);
    expect(last.hoursAbove).toBeCloseTo(2, 6);
  });

  it.each([
    [null, 'no-probe'],
    [{ type: 'K' }, 'no-size'],
    [{ ...WIRE, millimetres: 0.01 }, 'not-applicable'],
  ])('are none without a limit, with the reason: %j', async (probe, code) => {
    const { api, path } = await ready(probe);
    say(api, held(api.clock.now(), 1, LIMIT));
    const { body } = await api.call('GET', path);
    expect(body).toMatchObject({ limitCelsius: null, hoursAbove: null, reason: { code }, complete: true });
  });

  it('are none before the first reading', async () => {
    const { api, path } = await ready();
    expect((await api.call('GET', path)).body).toMatchObject({ hoursAbove: 0, hoursWatched: 0, from: null });
    expect((await api.call('GET', '/api/v1/channels/none/time-above')).status).toBe(404);
  });
});

describe('the probes of a firing', () => {
  it('tell the ± of each watched channel and its hours above the limit during this firing alone', async () => {
    const { api, channel } = await ready();
    const start = api.clock.now();
    say(api, held(start - 3 * HOUR, 2, LIMIT + 30));
    const soak = { kind: 'soak', targetCelsius: 1000, toleranceCelsius: 10, durationSeconds: 600 } as const;
    const furnace = api.archive.furnace(channel.furnaceId ?? '');
    if (furnace === null) throw new Error('no furnace');
    const { id } = api.start(furnace, api.schedule({ name: 'Hot', segments: [soak] }));
    say(api, held(start, 1, LIMIT + 10));
    api.clock.advance(HOUR);
    const [probe, ...more] = (await api.call('GET', `/api/v1/firings/${id}/probes`)).body;
    expect(more).toEqual([]);
    // IEC 60584-1 class 2 of type K at 1000 °C: ± 7.5 °C, as a rectangle 7.5/√3, doubled.
    expect(probe.uncertainty.expandedCelsius).toBeCloseTo((2 * 7.5) / Math.sqrt(3), 3);
    expect(probe.above).toMatchObject({ channel: channel.id, limitCelsius: LIMIT, from: start });
    expect(probe.above.hoursAbove).toBeCloseTo(1, 6);
    expect((await api.call('GET', '/api/v1/firings/none/probes')).status).toBe(404);
  });
});
