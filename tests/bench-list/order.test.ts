import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_EXACT, orderStops, type Stop, travel } from '../../hub/bench/order.ts';

function stop(targetCelsius: number, leavesCelsius = targetCelsius, urgent = false): Stop {
  return { targetCelsius, leavesCelsius, urgent };
}

/** Every order, urgent ones before the others: the answer by brute force. */
function leastByTrial(stops: readonly Stop[], start: number): number {
  const orders = permutations(stops.map((_, place) => place)).filter((order) => {
    const last = order.findLastIndex((place) => stops[place]?.urgent);
    return order.slice(0, last + 1).every((place) => stops[place]?.urgent);
  });
  return Math.min(...orders.map((order) => travel(stops, order, start)));
}

function permutations(places: readonly number[]): number[][] {
  if (places.length === 0) return [[]];
  return places.flatMap((place) =>
    permutations(places.filter((other) => other !== place)).map((rest) => [place, ...rest]),
  );
}

const anyStop = fc
  .record({
    target: fc.integer({ min: 150, max: 1250 }),
    share: fc.double({ min: 0.1, max: 1, noNaN: true }),
    urgent: fc.boolean(),
  })
  .map(({ target, share, urgent }) => stop(target, Math.round(target * share), urgent));
const start = fc.integer({ min: 20, max: 1250 });

describe('the order of batches in a furnace', () => {
  it('is the least travel there is, urgent ones first, as trying every order shows', () => {
    fc.assert(
      fc.property(fc.array(anyStop, { maxLength: 6 }), start, (stops, from) => {
        const { order, travelCelsius, by } = orderStops(stops, from);
        expect(by).toBe('exact');
        expect(travelCelsius).toBeCloseTo(travel(stops, order, from), 6);
        expect(travelCelsius).toBeCloseTo(leastByTrial(stops, from), 6);
      }),
      { numRuns: 60 },
    );
  });

  it('names every batch once, urgent ones first, whether few or many', () => {
    fc.assert(
      fc.property(fc.array(anyStop, { maxLength: 30 }), start, (stops, from) => {
        const { order, by } = orderStops(stops, from);
        expect(order.toSorted((a, b) => a - b)).toEqual(stops.map((_, place) => place));
        const urgent = order.map((place) => stops[place]?.urgent ?? false);
        expect(urgent.lastIndexOf(true)).toBe(stops.filter((each) => each.urgent).length - 1);
        expect(by).toBe(stops.length > MOST_EXACT ? 'sweep' : 'exact');
      }),
      { numRuns: 40 },
    );
  });

  it('sweeps many from the nearer end, which on one line is the least there is', () => {
    const stops = Array.from({ length: 20 }, (_, n) => stop(200 + 50 * ((n * 7) % 20)));
    const { travelCelsius, by } = orderStops(stops, 300);
    expect(by).toBe('sweep');
    // From 300 down to 200 and up to 1150: 100 + 950. The other way would be 850 + 950.
    expect(travelCelsius).toBe(1050);
  });

  it('heats a cold furnace up once, and cools a hot one down once', () => {
    const heats = [stop(850), stop(200), stop(650)];
    expect(orderStops(heats, 20)).toMatchObject({ order: [1, 2, 0], travelCelsius: 830 });
    expect(orderStops(heats, 900)).toMatchObject({ order: [0, 2, 1], travelCelsius: 700 });
  });

  it('leaves an anneal that cools in the furnace for the end', () => {
    const heats = [stop(800, 540), stop(810), stop(820)];
    expect(orderStops(heats, 805).order.at(-1)).toBe(0);
  });

  it('tempers what is quenched first, though another heat is nearer', () => {
    expect(orderStops([stop(850), stop(200, 200, true)], 840).order).toEqual([1, 0]);
  });

  it('has nothing to say about an empty bench', () => {
    expect(orderStops([], 500)).toEqual({ order: [], travelCelsius: 0, by: 'exact' });
  });
});
