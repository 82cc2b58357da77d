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

interface Path {
  readonly cost: number;
  readonly order: readonly number[];
}

/** The cheapest path through each set of stops that ends at each of them, sets growing by one. */
function leastOrder(stops: readonly Stop[], startCelsius: number): readonly number[] {
  const urgents = setOf(stops, (stop) => stop.urgent);
  const best = new Map<string, Path>();
  const offer = (set: number, path: Path): void => {
    const key = `${set}:${path.order.at(-1)}`;
    if (path.cost < (best.get(key)?.cost ?? Number.POSITIVE_INFINITY)) best.set(key, path);
  };
  const whole = 2 ** stops.length - 1;
  grow(stops, 0, { cost: 0, order: [] }, { startCelsius, urgents, offer });
  for (let set = 1; set < whole; set++) {
    for (let last = 0; last < stops.length; last++) {
      const path = best.get(`${set}:${last}`);
      if (path) grow(stops, set, path, { startCelsius, urgents, offer });
    }
  }
  const ends = stops.flatMap((_, last) => best.get(`${whole}:${last}`) ?? []);
  return ends.reduce<Path>((a, b) => (b.cost < a.cost ? b : a), ends[0] ?? { cost: 0, order: [] }).order;
}

interface Growth {
  readonly startCelsius: number;
  readonly urgents: number;
  readonly offer: (set: number, path: Path) => void;
}

/** Offers a path with each stop that may come next. */
function grow(
  stops: readonly Stop[],
  set: number,
  path: Path,
  { startCelsius, urgents, offer }: Growth,
): void {
  const last = path.order.at(-1);
  const from = last === undefined ? startCelsius : (stops[last]?.leavesCelsius ?? startCelsius);
  const urgentsLeft = (urgents & ~set) !== 0;
  stops.forEach((stop, next) => {
    if ((set & (1 << next)) !== 0 || (urgentsLeft && !stop.urgent)) return;
    const cost = path.cost + Math.abs(stop.targetCelsius - from);
    offer(set | (1 << next), { cost, order: [...path.order, next] });
  });
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
