/**
 * Eight hours of one firing at a reading a second, judged from the start as after a restart: with nothing known of
 * the load, and with two pieces computed. Run with `npx vitest bench --run tests/bench/firing-judge.bench.ts`.
 */
import { bench, describe } from 'vitest';
import type { LoadPiece } from '../../hub/contract/load.ts';
import { judgementOf } from '../../hub/firing/judge.ts';
import { replay } from '../../hub/firing/replay.ts';
import { caseOf, curve, inputsOf, noise, RAMP, soak } from '../firing/kit.ts';

const SECONDS = 8 * 3600;
const jitter = noise(1);
const readings = curve('chamber', { from: 0, to: SECONDS }, (s) => Math.min(800, 20 + s * 0.2) + jitter());

function piece(mark: string, thicknessMm: number): LoadPiece {
  return {
    pieceId: mark,
    mark,
    title: mark,
    steel: { id: null, title: '1084', composition: { C: 0.84, Mn: 0.75, Si: 0.22 } },
    section: { shape: 'bar', thicknessMm, massKilograms: null },
    routeStepId: null,
    step: 'austenitise',
  };
}

const plan = [RAMP, soak(7 * 3600)];
const bare = caseOf(plan, { furnaceKind: 'electric-oven' });
const loaded = caseOf(plan, { furnaceKind: 'electric-oven', pieces: [piece('A', 40), piece('B', 5)] });
const inputs = inputsOf(bare, { readings, to: SECONDS });

describe('eight hours replayed', () => {
  bench('nothing known of the load', () => void replay(bare, inputs), { iterations: 3, warmupIterations: 1 });
  bench('two pieces computed', () => void replay(loaded, inputs), { iterations: 3, warmupIterations: 1 });
});

const state = replay(loaded, inputs.slice(0, 12_000));
describe('a judgement', () => {
  bench('asked again within its snapshot', () => void judgementOf(loaded, state));
});
