import type { Archive } from '../archive/types.ts';
import type { FiringSummary } from '../contract/firing.ts';
import type {
  GasBand,
  GasFiringRow,
  GasFurnaceNow,
  GasSupplyNow,
  GasUsed,
  GasView,
} from '../contract/gas.ts';
import { GAS_CAUTION, GAS_NOTICES } from '../contract/words/en-gas.ts';
import { flowOf, jetBand, jetOf, mostFlow } from '../gas/flow.ts';
import { lastsHours } from '../gas/lasts.ts';
import type { FurnaceGasState, GasConfig, GasFurnace, GasState, GasSupply } from '../gas/types.ts';
import { WATCH_KINDS } from '../gas/types.ts';
import { scaleFlow } from '../gas/window.ts';
import { heatInput } from '../physics/gas-supply/heat-input.ts';

/** What the page about the gas shows, out of the judge's state and the archive. It adds no judgement. */

export interface GasKnown {
  readonly archive: Archive;
  readonly config: GasConfig;
  readonly state: GasState;
  readonly now: number;
  readonly used: (firing: FiringSummary) => GasUsed | null;
}

const FIRINGS_SHOWN = 12;
const CHANGES_SHOWN = 20;
const FRESH_MS = 40_000;

export function gasView(known: GasKnown): GasView {
  const { archive, config, state, now } = known;
  const { settings } = archive.shop();
  const ids = config.supplies.flatMap(({ furnaces }) => furnaces.map(({ id }) => id));
  const firings = firingRows(known, new Set(ids));
  return {
    now,
    judgedTo: state.at,
    furnaces: config.supplies.flatMap((supply) =>
      supply.furnaces.map((furnace) => furnaceNow(known, supply, furnace)),
    ),
    supplies: config.supplies.map((supply) => supplyNow(known, supply, firings)),
    firings,
    changes: [...archive.gasChanges(CHANGES_SHOWN)],
    notSetUp: archive
      .furnaces()
      .filter(({ kind, archived, gas }) => kind === 'gas-forge' && !archived && gas === null)
      .map(({ id, name }) => ({ furnaceId: id, name })),
    pricePerKilogram: settings.gasPricePerKilogram,
    currency: settings.currency,
    closingTime: settings.closingTime,
    notices: [...GAS_NOTICES],
    caution: GAS_CAUTION,
  };
}

function firingRows({ archive, used }: GasKnown, furnaceIds: ReadonlySet<string>): GasFiringRow[] {
  return archive
    .firings({ limit: 60 })
    .filter(({ furnaceId }) => furnaceIds.has(furnaceId))
    .slice(0, FIRINGS_SHOWN)
    .map((firing) => {
      const { id: firingId, title, scheduleName, furnaceId, startedAt, endedAt } = firing;
      return { firingId, title: title || scheduleName, furnaceId, startedAt, endedAt, used: used(firing) };
    });
}

function furnaceNow({ state, now }: GasKnown, supply: GasSupply, furnace: GasFurnace): GasFurnaceNow {
  const own = state.furnaces.find(({ id }) => id === furnace.id);
  const sample = own?.samples.at(-1);
  const pascals = sample !== undefined && now - sample.atMs <= FRESH_MS ? sample.outletPascals : null;
  const flow = pascals === null ? null : flowOf(furnace.gas, pascals);
  const perKilogram = heatInput(1).kilowattsNet;
  return {
    furnaceId: furnace.id,
    name: furnace.name,
    supply: supply.id,
    gas: furnace.gas,
    hasPressure: furnace.pressures.length > 0,
    pressurePascals: pascals,
    pressureAt: own?.samples.findLast(({ outletPascals }) => outletPascals !== null)?.atMs ?? null,
    regime: pascals === null ? null : flow === 0 ? 'none' : jetOf(furnace.gas, pascals).regime,
    kilogramsPerHour: flow === null ? null : jetBand(flow),
    kilowattsNet: flow === null ? null : jetBand(flow * perKilogram),
    scaleKilogramsPerHour:
      own === undefined || (sample?.contentsKilograms ?? null) === null ? null : scaleFlow(own.samples),
    wanted: own?.firing?.wanted ?? false,
    trouble: own === undefined ? null : troubleOf(own),
  };
}

function troubleOf({ trouble, watch }: FurnaceGasState): string | null {
  const raised = WATCH_KINDS.find((kind) => watch[kind].raised);
  return raised ?? (trouble?.raised === true ? trouble.kind : null);
}

type Draw = Pick<NonNullable<GasSupplyNow['endurance']>, 'kilogramsPerHour' | 'drawFrom'>;

/** Gas flowing now, else the mean of the last firings, else the burners at the top of their bands. */
export function expectedDraw(
  { state }: Pick<GasKnown, 'state'>,
  supply: GasSupply,
  firings: readonly GasFiringRow[],
): Draw {
  const held = state.supplies.find(({ id }) => id === supply.id);
  const flowing = supply.furnaces.some(({ id, gas }) => {
    const outlet = state.furnaces.find((each) => each.id === id)?.samples.at(-1)?.outletPascals ?? null;
    return outlet !== null && flowOf(gas, outlet) > 0;
  });
  if (flowing && held?.drawKilogramsPerHour) {
    return { kilogramsPerHour: held.drawKilogramsPerHour, drawFrom: 'now' };
  }
  const ids = new Set(supply.furnaces.map(({ id }) => id));
  const past = firings
    .filter(({ furnaceId, endedAt }) => ids.has(furnaceId) && endedAt !== null)
    .flatMap(({ used }) => used?.kilogramsPerHour ?? [])
    .slice(0, 5);
  if (past.length > 0) {
    return { kilogramsPerHour: past.reduce((a, b) => a + b, 0) / past.length, drawFrom: 'last-firings' };
  }
  return {
    kilogramsPerHour: supply.furnaces.reduce((sum, { gas }) => sum + mostFlow(gas), 0),
    drawFrom: 'band',
  };
}

function supplyNow(known: GasKnown, supply: GasSupply, firings: readonly GasFiringRow[]): GasSupplyNow {
  const { state, config } = known;
  const held = state.supplies.find(({ id }) => id === supply.id);
  const contents: GasBand | null = held?.contents ?? null;
  const last = state.furnaces.find(({ id }) => id === supply.furnaces[0]?.id)?.samples.at(-1);
  const draw = expectedDraw(known, supply, firings);
  const report = contents === null ? null : lastsHours({ ...asked(config), contents, ...draw });
  return {
    id: supply.id,
    furnaceIds: supply.furnaces.map(({ id }) => id),
    contents,
    contentsFrom: held?.contentsFrom ?? null,
    notedAt: lastNoted(known, supply),
    unknownSeconds: Math.round(held?.byFlow?.unknownSeconds ?? 0),
    fullKilograms: config.cylinderKilograms === null ? null : config.cylinderKilograms * config.cylinders,
    endurance:
      report === null
        ? null
        : {
            lowHours: report.low,
            valueHours: report.value,
            highHours: report.high,
            limitedBy: report.limitedBy,
            ...draw,
          },
    cylinderPascals: last?.cylinderPascals ?? null,
    wallCelsius: last?.wallCelsius ?? null,
  };
}

function asked({ cylinderKilograms, cylinders }: GasConfig) {
  return { cylinderKilograms, cylinders, airCelsius: null };
}

function lastNoted({ archive }: GasKnown, supply: GasSupply): number | null {
  return archive.gasChanges(50).find(({ furnaceId }) => (furnaceId ?? 'shop') === supply.id)?.at ?? null;
}

/** Hours that the gas lasts at the draw that is to be expected; null: nobody knows what is left. */
export function hoursLeft(
  known: GasKnown,
  furnaceId: string,
): { lowHours: number; highHours: number } | null {
  const supply = known.config.supplies.find(({ furnaces }) => furnaces.some(({ id }) => id === furnaceId));
  if (supply === undefined) return null;
  const firings = firingRows(known, new Set(supply.furnaces.map(({ id }) => id)));
  const endurance = supplyNow(known, supply, firings).endurance;
  return endurance === null ? null : { lowHours: endurance.lowHours, highHours: endurance.highHours };
}
