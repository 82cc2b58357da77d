import type { GasBand, GasUsed } from '../contract/gas.ts';
import { heatInput } from '../physics/gas-supply/heat-input.ts';
import { FLOW_ERROR_SHARE } from '../physics/gas-supply/orifice-report.ts';
import { highestIn, SCALE_ERROR_KILOGRAMS, weighedKilograms } from './contents.ts';
import { flowOf, mostFlow } from './flow.ts';
import type { GasCell, GasConfig, GasFurnace, GasSupply } from './types.ts';

/** What one firing burned, out of its cells: weighed where a scale saw begin and end, else added up by the jet. */

/** A pressure is believed for this long past its cell, then nobody knows the flow. */
const HOLD_MS = 30_000;
/** A scale that jumps by this between cells was touched: what it shows before and after cannot be taken together. */
const TOUCHED_KILOGRAMS = 0.5;
/** Less than this the scale cannot weigh. */
const LEAST_WEIGHED_KILOGRAMS = 2 * SCALE_ERROR_KILOGRAMS;

export interface PieceMass {
  readonly pieceId: string;
  readonly mark: string;
  /** null: not known. */
  readonly kilograms: number | null;
}

export interface FiringGasQuestion {
  readonly config: GasConfig;
  readonly supply: GasSupply;
  readonly furnace: GasFurnace;
  /** Of the firing, in order. */
  readonly cells: Iterable<GasCell>;
  readonly pieces: readonly PieceMass[];
  readonly pricePerKilogram: number | null;
  readonly currency: string;
}

interface Sum {
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly flowSeconds: number;
  readonly unknownSeconds: number;
  readonly last: { readonly at: number; readonly flow: number } | null;
  readonly weighed: { readonly first: number; readonly last: number; readonly still: boolean } | null;
}

const NOTHING: Sum = {
  value: 0,
  least: 0,
  most: 0,
  flowSeconds: 0,
  unknownSeconds: 0,
  last: null,
  weighed: null,
};

/** Null: no pressure and no weight was ever measured in it. */
export function firingGas(question: FiringGasQuestion): Omit<GasUsed, 'text'> | null {
  let sum = NOTHING;
  for (const cell of question.cells) sum = added(question, sum, cell);
  if (sum.last === null && sum.weighed === null) return null;
  const byScale = weighedBand(question, sum);
  const kilograms = byScale ?? { low: sum.least, value: sum.value, high: sum.most };
  const cost = question.pricePerKilogram;
  return {
    method: byScale === null ? 'jet' : 'scale',
    kilograms,
    kilowattHoursNet: times(kilograms, heatInput(1).kilowattsNet),
    kilowattHoursGross: times(kilograms, heatInput(1).kilowattsGross),
    cost: cost === null ? null : times(kilograms, cost),
    currency: question.currency,
    kilogramsPerHour: sum.flowSeconds === 0 ? null : (kilograms.value * 3600) / sum.flowSeconds,
    unknownSeconds: Math.round(sum.unknownSeconds),
    ...shared(question.pieces, kilograms.value, cost),
  };
}

function added({ config, supply, furnace }: FiringGasQuestion, sum: Sum, cell: GasCell): Sum {
  const pascals = highestIn(cell, furnace.pressures);
  const seconds = (cell.to - cell.from) / 1000;
  const hours = seconds / 3600;
  const weighed = weighedAfter(sum, weighedKilograms(config, supply, cell));
  if (pascals !== null) {
    const flow = flowOf(furnace.gas, pascals);
    return {
      ...sum,
      weighed,
      value: sum.value + flow * hours,
      least: sum.least + flow * hours * (1 - FLOW_ERROR_SHARE),
      most: sum.most + flow * hours * (1 + FLOW_ERROR_SHARE),
      flowSeconds: sum.flowSeconds + (flow > 0 ? seconds : 0),
      last: { at: cell.to, flow },
    };
  }
  const flow = sum.last?.flow ?? 0;
  if (sum.last !== null && cell.to - sum.last.at <= HOLD_MS) {
    return { ...sum, ...held(sum, flow * hours), weighed };
  }
  return {
    ...sum,
    weighed,
    value: sum.value + flow * hours,
    most: sum.most + Math.max(flow, mostFlow(furnace.gas)) * hours,
    flowSeconds: sum.flowSeconds + (flow > 0 ? seconds : 0),
    unknownSeconds: sum.unknownSeconds + seconds,
  };
}

function held(sum: Sum, kilograms: number): Pick<Sum, 'value' | 'least' | 'most'> {
  return {
    value: sum.value + kilograms,
    least: sum.least + kilograms * (1 - FLOW_ERROR_SHARE),
    most: sum.most + kilograms * (1 + FLOW_ERROR_SHARE),
  };
}

function weighedAfter(sum: Sum, kilograms: number | null): Sum['weighed'] {
  if (kilograms === null) return sum.weighed;
  const { weighed: old } = sum;
  if (old === null) return { first: kilograms, last: kilograms, still: true };
  const still = old.still && Math.abs(kilograms - old.last) < TOUCHED_KILOGRAMS;
  return { first: old.first, last: kilograms, still };
}

/** Null: no scale, one that was touched, one that serves several furnaces, or too little to weigh. */
function weighedBand({ supply }: FiringGasQuestion, { weighed }: Sum): GasBand | null {
  if (weighed === null || !weighed.still || supply.furnaces.length > 1) return null;
  const lost = weighed.first - weighed.last;
  if (lost < LEAST_WEIGHED_KILOGRAMS) return null;
  // The tare falls out of a difference: what is left is the step and the drift of the scale, twice.
  const error = SCALE_ERROR_KILOGRAMS / 2;
  return { low: lost - error, value: lost, high: lost + error };
}

function times({ low, value, high }: GasBand, factor: number): GasBand {
  return { low: low * factor, value: value * factor, high: high * factor };
}

type Shared = Pick<GasUsed, 'sharedBy' | 'pieces'>;

/** By mass where every mass is known, else alike: heavy steel takes more heat, but the furnace takes most of all. */
function shared(pieces: readonly PieceMass[], kilograms: number, price: number | null): Shared {
  if (pieces.length === 0) return { sharedBy: null, pieces: [] };
  const masses = pieces.map((piece) => piece.kilograms);
  const known = masses.every((mass) => mass !== null && mass > 0);
  const total = known ? masses.reduce((sum: number, mass) => sum + (mass ?? 0), 0) : pieces.length;
  const rows = pieces.map(({ pieceId, mark, kilograms: mass }) => {
    const share = (known ? (mass ?? 0) : 1) / total;
    const own = kilograms * share;
    return { pieceId, mark, share, kilograms: own, cost: price === null ? null : own * price };
  });
  return { sharedBy: known ? 'mass' : 'count', pieces: rows };
}
