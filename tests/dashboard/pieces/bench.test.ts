import { describe, expect, it } from 'vitest';
import { byWeight, furnaceBatches, loadOf, marksOf } from '../../../dashboard/pieces/batch.ts';
import { EVERY_PIECE, pieceQuery, rowsOf } from '../../../dashboard/pieces/list.ts';
import { dueStep, STEP_CHOICES, stepKey, stepName } from '../../../dashboard/pieces/step-name.ts';
import { Bench } from '../../../hub/contract/bench.ts';
import type { PlanFault } from '../../../hub/contract/planning.ts';
import { ROUTE_CHECKS, ROUTE_HEATS, ROUTE_WORKS } from '../../../hub/contract/route-template.ts';
import { DONE, piece } from './kit.ts';

const HARDENED = piece({
  route: [
    { kind: 'heat', step: 'harden', done: DONE },
    { kind: 'heat', step: 'temper' },
    { kind: 'heat', step: 'temper', title: 'Temper again' },
  ],
});

describe('the steps of a route', () => {
  it('have each a name, and one place among the choices', () => {
    const count = ROUTE_HEATS.length + ROUTE_WORKS.length + ROUTE_CHECKS.length;
    expect(new Set(STEP_CHOICES.map(({ value }) => value)).size).toBe(count);
    expect(STEP_CHOICES.every(({ label }) => label !== '')).toBe(true);
  });

  it('are called as the shop calls them, and found by what they are', () => {
    expect(HARDENED.route.map(stepName)).toEqual(['Harden and quench', 'Temper', 'Temper again']);
    expect(HARDENED.route.map(stepKey)).toEqual(['heat:harden', 'heat:temper', 'heat:temper']);
  });

  it('are due in order: the first that is not done', () => {
    expect(dueStep(HARDENED)?.id).toBe('s1');
    expect(dueStep(piece())).toBeNull();
  });
});

describe('the list of pieces', () => {
  it('asks the hub for words and steel, and reads further where rows are dropped here', () => {
    expect(pieceQuery(EVERY_PIECE, null)).toMatchObject({ archived: 'no', q: undefined, limit: 50 });
    const filter = { ...EVERY_PIECE, text: ' knife ', steel: '1084' };
    expect(pieceQuery(filter, 'x')).toMatchObject({ q: 'knife 1084', after: 'x', limit: 200 });
  });

  it('keeps what is due and of that steel, and nothing else', () => {
    const idle = piece({ id: 'p2', mark: '1084-B', steel: { grade: 'O1' } });
    const due = { ...EVERY_PIECE, due: 'heat:temper' };
    expect(rowsOf([HARDENED, idle], due, new Map()).map(({ mark }) => mark)).toEqual(['K1']);
    const steel = { ...EVERY_PIECE, steel: '1084' };
    expect(rowsOf([HARDENED, idle], steel, new Map()).map(({ mark }) => mark)).toEqual(['K1']);
    expect(rowsOf([idle], EVERY_PIECE, new Map())[0]).toMatchObject({ due: '', steel: 'O1' });
  });
});

describe('a proposed batch', () => {
  const item = (pieceId: string) => ({
    pieceId,
    mark: pieceId.toUpperCase(),
    title: '',
    steelTitle: '1084',
    step: { ...HARDENED.route[1], id: `step-${pieceId}` },
    window: null,
    urgent: true,
    before: 'done',
    firingId: null,
  });
  const furnace = { presentCelsius: 20, travelCelsius: 200, order: 'exact' };
  const batch = {
    step: 'temper',
    pieceIds: ['b', 'a'],
    window: null,
    targetCelsius: null,
    scheduleId: null,
    reasons: [],
  };
  const bench = Bench.parse({
    at: 0,
    due: [item('a'), item('b'), item('c')],
    furnaces: [
      { ...furnace, furnaceId: 'oven', batches: [batch] },
      { ...furnace, furnaceId: 'forge', batches: [] },
    ],
    unplaced: [],
  });

  it('knows its pieces and the step that a firing is for each of them', () => {
    const [oven, ...rest] = furnaceBatches(bench);
    expect(rest).toEqual([]);
    const [known] = oven?.batches ?? [];
    expect(known && marksOf(known)).toBe('A, B');
    expect(known && loadOf(known)).toEqual([
      { pieceId: 'a', routeStepId: 'step-a' },
      { pieceId: 'b', routeStepId: 'step-b' },
    ]);
  });

  it('tells what is wrong before what is doubtful, and changes no order within', () => {
    const fault = (weight: PlanFault['weight'], text: string): PlanFault => ({
      code: 'beyond-rating',
      weight,
      segment: null,
      pieceId: null,
      mark: null,
      params: {},
      text,
    });
    const faults = [fault('doubt', '1'), fault('wrong', '2'), fault('doubt', '3')];
    expect(byWeight(faults).map(({ text }) => text)).toEqual(['2', '1', '3']);
  });
});
