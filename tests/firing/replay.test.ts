import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ChannelReading } from '../../hub/contract/reading.ts';
import { judgementOf, startFiring, stepFiring } from '../../hub/firing/judge.ts';
import { inputsInOrder, replay, stepAll } from '../../hub/firing/replay.ts';
import type { FiringState } from '../../hub/firing/types.ts';
import { at, CHAMBER, caseOf, curve, grouped, QUENCH, RAMP, REAR, soak, T0 } from './kit.ts';

const c = caseOf([RAMP, soak(60), QUENCH], { watched: [CHAMBER, REAR] });
const END = 240;

/** A firing that touches everything: rise, band edge, gaps, two probes, odd milliseconds. */
const reading = fc.record({
  channel: fc.constantFrom('chamber', 'rear'),
  at: fc.integer({ min: T0 - 10_000, max: at(END) }),
  value: fc.integer({ min: 3100, max: 3260 }).map((quarters) => quarters / 4),
  quality: fc.constantFrom('good' as const, 'good' as const, 'good' as const, 'bad' as const),
});
const readings = fc.uniqueArray(reading, {
  minLength: 20,
  maxLength: 150,
  selector: (r) => `${r.channel} ${r.at}`,
});
const confirmations = fc.array(
  fc.record({ at: fc.integer({ min: T0, max: at(END) }), segment: fc.integer({ min: 0, max: 2 }) }),
  { maxLength: 4 },
);

type Confirmations = { at: number; segment: number }[];

function span(known: readonly ChannelReading[], told: Confirmations, from: number, to: number) {
  const spans = { from, to, startedAt: T0, tickMs: 1000 };
  return inputsInOrder({ readings: grouped(known), confirmations: told, ...spans });
}

/** The reference: one replay of everything there is. */
function atOnce(known: readonly ChannelReading[], told: Confirmations): FiringState {
  return replay(c, span(known, told, startFiring(c).at - 1, at(END)));
}

describe('the law of replay', () => {
  it('holds for any cutting of time: judging in steps equals judging at once', () => {
    const cuts = fc.array(fc.integer({ min: T0 - 5000, max: at(END) }), { maxLength: 12 });
    fc.assert(
      fc.property(readings, confirmations, cuts, (known, told, wild) => {
        let state = startFiring(c);
        let from = state.at - 1;
        for (const to of [...wild].sort((a, b) => a - b).concat(at(END))) {
          state = stepAll(c, state, span(known, told, from, to));
          from = to;
        }
        expect(state).toEqual(atOnce(known, told));
      }),
      { numRuns: 25 },
    );
  });

  it('holds for readings that arrive late: back to a checkpoint and forward again', () => {
    const arrivals = fc.array(fc.nat({ max: 1000 }), { minLength: 150, maxLength: 150 });
    fc.assert(
      fc.property(readings, confirmations, arrivals, (known, told, order) => {
        const arriving = known.map((r, i) => ({ r, key: r.at + (order[i] ?? 0) * 60 }));
        arriving.sort((a, b) => a.key - b.key);
        const heard: ChannelReading[] = [];
        const first = { at: startFiring(c).at - 1, state: startFiring(c) };
        let checkpoints = [first];
        for (const { r, key } of [...arriving, { r: null, key: at(END) }]) {
          if (r !== null) heard.push(r);
          if (r !== null) checkpoints = checkpoints.filter((point) => point.at < r.at || point === first);
          const last = checkpoints.at(-1) ?? first;
          const to = Math.min(Math.max(key, last.at), at(END));
          checkpoints.push({ at: to, state: stepAll(c, last.state, span(heard, told, last.at, to)) });
        }
        const live = checkpoints.at(-1)?.state ?? first.state;
        const again = atOnce(known, told);
        expect(live).toEqual(again);
        expect(judgementOf(c, live)).toEqual(judgementOf(c, again));
      }),
      { numRuns: 25 },
    );
  });

  it('holds for a copy of the state: it is plain data', () => {
    const known = [
      ...curve('chamber', { from: 0, to: 90 }, () => 800),
      ...curve('rear', { from: 0, to: 90 }, () => 795),
    ];
    const half = replay(c, span(known, [], startFiring(c).at - 1, at(45)));
    const copy = stepAll(c, structuredClone(half), span(known, [], at(45), at(90)));
    expect(copy).toEqual(stepAll(c, half, span(known, [], at(45), at(90))));
  });
});

describe('the order of inputs', () => {
  it('is time, then reading, confirmation, tick and finish, then channel', () => {
    const inputs = inputsInOrder({
      readings: [
        [{ channel: 'rear', at: T0 + 1000, value: 1, quality: 'good' }],
        [{ channel: 'chamber', at: T0 + 1000, value: 1, quality: 'good' }],
      ],
      confirmations: [{ at: T0 + 1000, segment: 0 }],
      finishedAt: T0 + 1000,
      from: T0 - 1,
      to: T0 + 2000,
      startedAt: T0,
      tickMs: 1000,
    });
    const names = [...inputs].map((i) => (i.kind === 'reading' ? i.reading.channel : i.kind));
    expect(names).toEqual(['tick', 'chamber', 'rear', 'confirm', 'tick', 'finish', 'tick']);
  });

  it('takes what is later than `from` up to and with `to`, so that spans join without a seam', () => {
    const known = curve('chamber', { from: 0, to: 10 }, () => 20);
    const cut = (from: number, to: number) => [...span(known, [], from, to)];
    expect([...cut(T0 - 1, at(4)), ...cut(at(4), at(10))]).toEqual(cut(T0 - 1, at(10)));
    expect(cut(at(4), at(5))).toHaveLength(2);
  });

  it('has no tick before the start of the firing', () => {
    const ticks = [...span([], [], T0 - 20_000, at(2))];
    expect(ticks.map((input) => (input.kind === 'tick' ? input.at : null))).toEqual([T0, at(1), at(2)]);
  });
});

describe('time inside the judge', () => {
  it('never runs back', () => {
    const state = stepFiring(c, startFiring(c), { kind: 'tick', at: at(10) });
    expect(() => stepFiring(c, state, { kind: 'tick', at: at(9) })).toThrowError(
      expect.objectContaining({ code: 'time-runs-back' }),
    );
  });

  it('does not change a state that was handed on', () => {
    const state = stepFiring(c, startFiring(c), { kind: 'tick', at: at(10) });
    const before = structuredClone(state);
    stepFiring(c, state, {
      kind: 'reading',
      reading: { channel: 'rear', at: at(11), value: 9, quality: 'good' },
    });
    expect(state).toEqual(before);
  });
});
