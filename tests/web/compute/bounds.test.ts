import { describe, expect, it } from 'vitest';
import { plainMaterial } from '../../../hub/physics/heat/material.ts';
import { evenly, requireModestCurve, workMeter } from '../../../hub/web/routes/compute/bounds.ts';
import { makeApi } from '../api-client.ts';

const STEEL = plainMaterial({ densityKgM3: 7850, specificHeatJKgK: 650, conductivityWmK: 30 });
const REST = { celsius: 20, austenite: 0, seconds: 1 };

describe('bounds of one request', () => {
  it('counts over all the materials of a request, and no further', () => {
    const meter = workMeter(3);
    const [steel, packing] = [meter(STEEL), meter(STEEL)];
    expect(steel.settle(6500, REST).celsius).toBeCloseTo(30, 9);
    packing.settle(6500, REST);
    steel.settle(6500, REST);
    expect(() => packing.settle(6500, REST)).toThrow(expect.objectContaining({ code: 'too-much-work' }));
  });

  it('lets through an ordinary record and refuses one that swings without end', () => {
    const swinging = (times: number) =>
      Array.from({ length: times }, (_, i) => ({ atMs: i, celsius: i % 2 ? 900 : 20 }));
    expect(requireModestCurve(swinging(100))).toHaveLength(100);
    expect(() => requireModestCurve(swinging(1000))).toThrow(
      expect.objectContaining({ code: 'too-much-work' }),
    );
  });

  it('thins to what is asked and keeps both ends', () => {
    const all = Array.from({ length: 997 }, (_, i) => i);
    const some = evenly(all, 50);
    expect(some).toHaveLength(50);
    expect([some[0], some.at(-1)]).toEqual([0, 996]);
    expect(some).toEqual(some.toSorted((a, b) => a - b));
    expect(evenly(all, 2000)).toBe(all);
  });
});

describe('what the bounds mean to somebody who asks', () => {
  const { call } = makeApi();
  const ask = (name: string, question: object) => call('POST', `/api/v1/compute/${name}`, question);
  const swing = Array.from({ length: 1000 }, (_, i) => ({ atMs: i * 1000, celsius: i % 2 ? 700 : 20 }));

  it.each([
    ['tempering', { steel: '1084', curve: swing }],
    ['decarburisation', { steel: '1084', curve: swing }],
    ['grain-growth', { steel: '1084', curve: swing }],
    ['scale', { curve: swing }],
    ['arrests', { record: swing }],
    [
      'cooling',
      {
        shape: 'plate',
        thicknessMm: 0.2,
        initialCelsius: 900,
        medium: 'closed-furnace',
        material: { kind: 'transforming' },
      },
    ],
  ])('%s refuses too much work with a code of its own', async (name, question) => {
    const answer = await ask(name, question);
    expect(answer).toMatchObject({ status: 422, body: { code: 'too-much-work' } });
  });

  it('refuses more points than a body should carry, with the place', async () => {
    const curve = Array.from({ length: 5001 }, (_, i) => ({ atMs: i, celsius: 20 }));
    const { status, body } = await ask('scale', { curve });
    expect(status).toBe(400);
    expect(body.errors[0].path).toBe('/curve');
  });

  it('keeps a long soak in a slow ramp within the bounds', async () => {
    const surroundingsCurve = [
      { atSeconds: 0, celsius: 20 },
      { atSeconds: 4 * 3600, celsius: 815 },
    ];
    const question = { shape: 'bar', thicknessMm: 50, surroundingsCelsius: 815, surroundingsCurve };
    const { status, body } = await ask('soak-time', question);
    expect(status).toBe(200);
    expect(body.arrivalSeconds).toBeGreaterThan(4 * 3600 - 600);
  });
});
