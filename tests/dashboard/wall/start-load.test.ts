import { describe, expect, it } from 'vitest';
import { heatsDue, loadOf, meantFor, toggled } from '../../../dashboard/wall/start-load.ts';
import type { BenchItem } from '../../../hub/contract/bench.ts';

const common = { title: '', note: '', optional: false, reminders: [], done: null };

function item(mark: string, scheduleId: string | null, firingId: string | null = null): BenchItem {
  const step = { id: `step-${mark}`, kind: 'heat', step: 'harden', scheduleId, ...common } as const;
  return {
    pieceId: `id-${mark}`,
    mark,
    title: '',
    steelTitle: '',
    step,
    window: null,
    urgent: false,
    before: null,
    firingId,
  };
}

const work: BenchItem = {
  ...item('W-1', null),
  step: { id: 'grind', kind: 'work', work: 'grind', ...common },
};

describe('the load of a firing that is about to start', () => {
  const bench = { due: [item('A-1', null), work, item('B-1', 'plan'), item('C-1', 'plan', 'burning')] };

  it('offers pieces that wait for a heat and lie in no firing, those of this schedule first', () => {
    expect(heatsDue(bench, { id: 'plan' }).map(({ mark }) => mark)).toEqual(['B-1', 'A-1']);
  });

  it('has those in hand whose step names the schedule', () => {
    expect([...meantFor(bench, { id: 'plan' })]).toEqual(['id-B-1']);
    expect([...meantFor(bench, { id: 'other' })]).toEqual([]);
  });

  it('takes a piece in and out again, and names the step that the firing is for', () => {
    const inHand = toggled(new Set(['id-B-1']), 'id-A-1');
    expect(loadOf(heatsDue(bench, { id: 'plan' }), inHand)).toEqual([
      { pieceId: 'id-B-1', routeStepId: 'step-B-1' },
      { pieceId: 'id-A-1', routeStepId: 'step-A-1' },
    ]);
    expect([...toggled(inHand, 'id-B-1')]).toEqual(['id-A-1']);
  });
});
