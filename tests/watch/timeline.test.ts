import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Model, Timeline } from '../../hub/watch/timeline.ts';

interface Note {
  readonly at: number;
  readonly text: string;
}

/** A judge that remembers everything it was told: any difference in order or number shows. */
function remembering(notes: readonly Note[]): Model<readonly string[], Note> {
  return {
    start: () => [],
    step: (state, note) => [...state, `${note.at}:${note.text}`],
    inputs: (after, upTo) =>
      notes
        .filter((n) => n.at > after && n.at <= upTo)
        .sort((a, b) => a.at - b.at || (a.text < b.text ? -1 : 1)),
  };
}

describe('a judge carried along time', () => {
  it('takes each input once, in order, however the way is cut', () => {
    const notes = [1, 5, 5, 900, 70_000].map((at, i) => ({ at, text: String(i) }));
    const atOnce = new Timeline(remembering(notes), 0).advance(100_000);
    const inSteps = new Timeline(remembering(notes), 0);
    for (let to = 0; to <= 100_000; to += 333) inSteps.advance(to);
    expect(inSteps.advance(100_000)).toEqual(atOnce);
    expect(atOnce).toHaveLength(5);
  });

  it('goes back for what came late, and only then', () => {
    const notes: Note[] = [{ at: 10, text: 'a' }];
    const timeline = new Timeline(remembering(notes), 0);
    timeline.advance(1000);
    notes.push({ at: 500, text: 'late' });
    expect(timeline.rewindBefore(500)).toBe(true);
    expect(timeline.advance(1000)).toEqual(['10:a', '500:late']);
    expect(timeline.rewindBefore(1001)).toBe(false);
  });

  it('gives the same state for any order of arrival (law)', () => {
    const arrivals = fc.array(
      fc.tuple(fc.integer({ min: 1, max: 600_000 }), fc.integer({ min: 0, max: 2_000 })),
      {
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(arrivals, (steps) => {
        const known: Note[] = [];
        const timeline = new Timeline(remembering(known), 0);
        let now = 0;
        for (const [index, [at, wait]] of steps.entries()) {
          known.push({ at, text: String(index) });
          timeline.rewindBefore(at);
          now += wait;
          timeline.advance(now);
        }
        const whole = new Timeline(remembering(known), 0).advance(700_000);
        expect(timeline.advance(700_000)).toEqual(whole);
      }),
    );
  });

  it('lets go of what is too old to go back to, and still takes up what is not', () => {
    const notes: Note[] = [{ at: 10, text: 'a' }];
    const timeline = new Timeline(remembering(notes), 0);
    for (let to = 60_000; to <= 3_600_000; to += 60_000) timeline.advance(to);
    timeline.forgetBefore(3_000_000);
    notes.push({ at: 20, text: 'far too late' }, { at: 3_200_000, text: 'late' });
    timeline.rewindBefore(20);
    expect(timeline.at).toBe(3_000_000);
    expect(timeline.advance(3_600_000)).toEqual(['10:a', '3200000:late']);
  });
});
