import { describe, expect, it } from 'vitest';
import { makeBody } from '../../../hub/physics/heat/body.ts';
import { structuralSteel } from '../../../hub/physics/heat/material.ts';
import { startPiece, stepPiece } from '../../../hub/physics/heat/piece.ts';
import { type ApiAnswer, makeApi } from '../api-client.ts';
import { answerTo } from './ask.ts';

const PIECE = { shape: 'bar', thicknessMm: 20 };

/** A furnace that we know, 0.62 and 18 W/(m² K), in two stages, read in quarter degrees every 30 s. */
function recordedRun(minutes: number) {
  const material = structuralSteel();
  let state = startPiece(makeBody({ shape: 'bar', sectionMetres: 0.02, material }), 20);
  let surroundingsWereCelsius = 450;
  return Array.from({ length: minutes * 2 + 1 }, (_, i) => {
    const surroundingsCelsius = i < 50 ? 450 : 850;
    const seconds = i === 0 ? 0 : 30;
    state = stepPiece(state, {
      seconds,
      surroundingsCelsius,
      surroundingsWereCelsius,
      emissivity: 0.62,
      film: 18,
    });
    surroundingsWereCelsius = surroundingsCelsius;
    const loadCelsius = Math.round(state.coreCelsius * 4) / 4;
    return { atMs: i * 30_000, chamberCelsius: surroundingsCelsius, loadCelsius };
  });
}

describe('a furnace fit over the web', () => {
  it('finds the furnace that made the run, and says how surely', async () => {
    const body = await answerTo('furnace-fit', { ...PIECE, run: recordedRun(50) });
    expect(Math.abs(body.emissivity - 0.62)).toBeLessThan(0.01);
    expect(Math.abs(body.filmWattsPerSquareMetreKelvin - 18)).toBeLessThan(0.8);
    expect(body.rmsCelsius).toBeLessThan(0.8);
    expect(body).toMatchObject({ separated: true, pointsUsed: 101 });
    expect(body.shown.emissivity).toMatch(/^0\.62\d* ± 0\.0/);
  });

  it('brings the refusals of its thread back with their codes', async () => {
    const { call } = makeApi();
    const ask = (question: object) => call('POST', '/api/v1/compute/furnace-fit', { ...PIECE, ...question });
    const run = recordedRun(10);
    expect((await ask({ run: run.slice(0, 5) })).body.code).toBe('bad-input');
    expect((await ask({ run: run.toReversed() })).body.code).toBe('bad-input');
    const idle = run.map((point) => ({ ...point, chamberCelsius: 22, loadCelsius: 22 }));
    expect(await ask({ run: idle })).toMatchObject({ status: 422, body: { code: 'not-applicable' } });
    expect((await ask({ run, thicknessMm: 0 })).body.code).toBe('out-of-range');
  });

  it('answers other questions while it fits, and turns away a crowd', async () => {
    const { call } = makeApi();
    const ask = () => call('POST', '/api/v1/compute/furnace-fit', { ...PIECE, run: recordedRun(30) });
    const order: string[] = [];
    const noted = (what: string) => (answer: ApiAnswer) => {
      order.push(what);
      return answer;
    };
    const crowd = Promise.all(Array.from({ length: 8 }, () => ask().then(noted('furnace'))));
    const glow = call('POST', '/api/v1/compute/glow', { celsius: 860 }).then(noted('glow'));
    const [answers] = await Promise.all([crowd, glow]);
    const codes = answers.map(({ status, body }) => (status === 200 ? 'fitted' : body.code));
    expect(new Set(codes)).toEqual(new Set(['fitted', 'too-much-work']));
    expect(codes.filter((code) => code === 'fitted')).toHaveLength(5);
    expect(order.lastIndexOf('furnace')).toBeGreaterThan(order.indexOf('glow'));
    expect(await ask()).toMatchObject({ status: 200 });
  });
});
