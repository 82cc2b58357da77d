/** The order of batches in one furnace that wastes least heating up and cooling down. */

export interface Stop {
  readonly targetCelsius: number;
  /** Where the furnace stands when it is over, °C: below the target when pieces cool in it. */
  readonly leavesCelsius: number;
  /** Goes before all that are not urgent. */
  readonly urgent: boolean;
}

export interface Ordered {
  /** Places of the stops, in order. */
  readonly order: readonly number[];
  /** Sum of all heating up and cooling down between them, the first included, °C. */
  readonly travelCelsius: number;
  readonly by: 'exact' | 'sweep';
}

/** With more than these every order is no longer looked through: 2^12 sets of 12 are 50 000 states. */
export const MOST_EXACT = 12;

/**
 * The order with the least travel from `startCelsius`, urgent stops before the others. Up to {@link MOST_EXACT}
 * stops it is the least there is (Held and Karp's dynamic programme over sets); beyond, urgent ones and then the
 * others are swept from the nearer end of their heats to the farther.
 *
 * Travel is counted in °C, up and down alike: what a °C costs in time or gas is the furnace's own.
 */
export function orderStops(stops: readonly Stop[], startCelsius: number): Ordered {
  const exact = stops.length <= MOST_EXACT;
  const order = exact ? leastOrder(stops, startCelsius) : sweptOrder(stops, startCelsius);
  return { order, travelCelsius: travel(stops, order, startCelsius), by: exact ? 'exact' : 'sweep' };
}

/** Travel of an order, °C. */
export function travel(stops: readonly Stop[], order: readonly number[], startCelsius: number): number {
  let at = startCelsius;
  let sum = 0;
  for (const place of order) {
    const stop = stops[place];
    if (stop === undefined) continue;
    sum += Math.abs(stop.targetCelsius - at);
    at = stop.leavesCelsius;
  }
  return sum;
}

/** For each set of stops and each last of them: the least travel, and the stop before the last. */
interface Table {
  readonly cost: Float64Array;
  readonly before: Int8Array;
}

const NOBODY = -1;

/** Held and Karp: the cheapest path through each set that ends at each of its stops, sets growing by one. */
function leastOrder(stops: readonly Stop[], startCelsius: number): number[] {
  const sets = 2 ** stops.length;
  const cells = sets * stops.length;
  const table = {
    cost: new Float64Array(cells).fill(Number.POSITIVE_INFINITY),
    before: new Int8Array(cells).fill(NOBODY),
  };
  const urgents = setOf(stops, (stop) => stop.urgent);
  extend(stops, table, { set: 0, last: NOBODY, cost: 0, atCelsius: startCelsius }, urgents);
  for (let set = 1; set < sets - 1; set++) {
    stops.forEach(({ leavesCelsius: atCelsius }, last) => {
      const cost = table.cost[set * stops.length + last] ?? Number.POSITIVE_INFINITY;
      if (cost < Number.POSITIVE_INFINITY) extend(stops, table, { set, last, cost, atCelsius }, urgents);
    });
  }
  return readBack(stops.length, table);
}

interface Path {
  readonly set: number;
  readonly last: number;
  readonly cost: number;
  readonly atCelsius: number;
}

/** Offers a path to each stop that may come next. */
function extend(stops: readonly Stop[], { cost, before }: Table, path: Path, urgents: number): void {
  const urgentsLeft = (urgents & ~path.set) !== 0;
  for (const [next, stop] of stops.entries()) {
    if ((path.set & (1 << next)) !== 0 || (urgentsLeft && !stop.urgent)) continue;
    const cell = (path.set | (1 << next)) * stops.length + next;
    const offered = path.cost + Math.abs(stop.targetCelsius - path.atCelsius);
    if (offered >= (cost[cell] ?? 0)) continue;
    cost[cell] = offered;
    before[cell] = path.last;
  }
}

/** The order behind the cheapest way through all. */
function readBack(count: number, { cost, before }: Table): number[] {
  let set = 2 ** count - 1;
  const whole = cost.subarray(set * count);
  let last = whole.indexOf(Math.min(...whole));
  const order: number[] = [];
  while (last >= 0 && set > 0) {
    order.unshift(last);
    const from = before[set * count + last] ?? NOBODY;
    set &= ~(1 << last);
    last = from;
  }
  return order;
}

function setOf(stops: readonly Stop[], holds: (stop: Stop) => boolean): number {
  return stops.reduce((set, stop, place) => (holds(stop) ? set | (1 << place) : set), 0);
}

function sweptOrder(stops: readonly Stop[], startCelsius: number): number[] {
  const places = stops.map((_, place) => place);
  const first = sweep(
    stops,
    places.filter((place) => stops[place]?.urgent),
    startCelsius,
  );
  const last = stops[first.at(-1) ?? -1];
  const rest = places.filter((place) => !stops[place]?.urgent);
  return [...first, ...sweep(stops, rest, last?.leavesCelsius ?? startCelsius)];
}

/** From one end of the heats to the other, whichever way travels less. */
function sweep(stops: readonly Stop[], places: readonly number[], startCelsius: number): number[] {
  const heat = (place: number) => stops[place]?.targetCelsius ?? 0;
  const up = places.toSorted((a, b) => heat(a) - heat(b));
  const down = up.toReversed();
  return travel(stops, down, startCelsius) < travel(stops, up, startCelsius) ? down : up;
}
