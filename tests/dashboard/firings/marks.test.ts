import { describe, expect, it } from 'vitest';
import { firingMarks } from '../../../dashboard/firings/marks.ts';
import type { FiringEvent } from '../../../hub/contract/firing.ts';
import { alarm } from '../mock-shop.ts';

const MINUTE = 60_000;
const event = (kind: FiringEvent['kind'], at: number, change: Partial<FiringEvent> = {}): FiringEvent => ({
  at,
  kind,
  segment: 0,
  finding: null,
  params: {},
  text: 'Ramp to 860 °C: started',
  ...change,
});
const noticed = (at: number): FiringEvent =>
  event('finding-raised', at, { finding: 'overshoot', text: 'Overshoot. Forge: 877.5 °C, 1.5 °C above' });

describe('what a firing’s chart marks', () => {
  it('tells a finding once: as its alarm when there is one', () => {
    const raised = alarm('overshoot', { raisedAt: 5 * MINUTE, title: 'Overshoot', priority: 'warning' });
    const marks = firingMarks([noticed(5 * MINUTE - 10_000)], [raised]);
    expect(marks).toEqual([{ at: 5 * MINUTE, shape: 'warning', words: 'Overshoot' }]);
  });

  it('marks the findings of a firing recorded afterwards, which raised no alarm', () => {
    expect(firingMarks([noticed(MINUTE)], [])).toEqual([
      { at: MINUTE, shape: 'warning', words: 'Overshoot' },
    ]);
  });

  it('does not take a later finding of the same kind for one that an alarm told', () => {
    const raised = alarm('overshoot', { raisedAt: 5 * MINUTE });
    expect(firingMarks([noticed(30 * MINUTE)], [raised]).map((mark) => mark.at)).toEqual([
      5 * MINUTE,
      30 * MINUTE,
    ]);
  });

  it('gives blindness its own shape and leaves out what only ends', () => {
    const marks = firingMarks(
      [
        event('segment-started', 0),
        event('segment-ended', MINUTE),
        event('seeing', 3 * MINUTE),
        event('blind', 2 * MINUTE, { text: 'No fresh reading: nothing is counted' }),
      ],
      [],
    );
    expect(marks).toEqual([
      { at: 0, shape: 'event', words: 'Ramp to 860 °C' },
      { at: 2 * MINUTE, shape: 'blind', words: 'No fresh reading: nothing is counted' },
    ]);
  });
});
