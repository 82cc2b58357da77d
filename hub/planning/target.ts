import type { RouteHeat } from '../contract/route-template.ts';
import { PhysicsError } from '../physics/errors.ts';
import { temperedHardness } from '../physics/steel/tempered-hardness.ts';
import { HABIT, type PlanFurnace, type PlanPiece, type PlanSteel, type Reason } from './types.ts';
import { sharedWindow } from './windows.ts';

/** Where a firing shall hold, and why there. */

export interface Target {
  readonly celsius: number;
  readonly lowCelsius: number;
  readonly highCelsius: number;
  readonly uncertaintyCelsius: number;
  readonly reason: Omit<Reason, 'path'>;
}

/** What a furnace of this kind can be held within by a careful smith, °C. Common practice, no source. */
const TOLERANCE: Readonly<Record<PlanFurnace['kind'], number>> = {
  'gas-forge': 15,
  'electric-oven': 8,
  'salt-bath': 6,
};

/** Tempers are judged finer: their window is narrow and their hardness falls with every degree. */
const TEMPER_TOLERANCE = 6;

export function toleranceOf(furnace: PlanFurnace, step: RouteHeat): number {
  return step === 'temper' && furnace.kind !== 'gas-forge' ? TEMPER_TOLERANCE : TOLERANCE[furnace.kind];
}

/**
 * The target of a step that suits every piece.
 *
 * @throws PhysicsError `not-applicable` when a piece has no window for the step or the windows do not overlap;
 *   `no-solution` when no temper leaves the wanted hardness
 */
export function targetOf(
  pieces: readonly PlanPiece[],
  step: RouteHeat,
  wantedHrc: number | null,
  holdHours: number,
): Target {
  const first = pieces[0];
  if (step === 'temper' && wantedHrc !== null && first !== undefined) {
    return targetForHardness(first.steel, wantedHrc, holdHours);
  }
  const shared = sharedWindow(pieces, step);
  if (shared === null) throw noWindow(pieces, step);
  const { lowCelsius, highCelsius, window } = shared;
  const celsius = inFives((lowCelsius + highCelsius) / 2, lowCelsius, highCelsius);
  const reason = {
    code: 'target-window',
    params: { lowCelsius, highCelsius, uncertaintyCelsius: window.uncertaintyCelsius },
    from: window.from,
  } as const;
  return { celsius, lowCelsius, highCelsius, uncertaintyCelsius: window.uncertaintyCelsius, reason };
}

function noWindow(pieces: readonly PlanPiece[], step: RouteHeat): PhysicsError {
  const without = pieces.filter(({ steel }) => sharedWindow([{ ...piecesOf(steel) }], step) === null);
  const names = [...new Set(without.map(({ steel }) => steel.title))].join(', ');
  return names === ''
    ? new PhysicsError(
        'not-applicable',
        `the ${step} windows of these steels do not overlap: fire them apart, or write the schedule yourself`,
      )
    : new PhysicsError(
        'not-applicable',
        `no ${step} temperature is known for ${names}: take it from the maker's data sheet and write the schedule yourself, or give the steel its windows under Setup`,
      );
}

function piecesOf(steel: PlanSteel): PlanPiece {
  return { id: null, mark: null, steel, shape: 'plate', thicknessMm: 10, step: null };
}

/** To five degrees where the window has room for it. */
function inFives(celsius: number, low: number, high: number): number {
  const five = Math.round(celsius / 5) * 5;
  return five >= low && five <= high ? five : Math.round(celsius);
}

const COLDEST_TEMPER = 150;
const HOTTEST_TEMPER = 650;

/** Hardness falls with temperature, but for secondary hardening: the first temper, from cold, that leaves it. */
function targetForHardness(steel: PlanSteel, wantedHrc: number, holdHours: number): Target {
  const hardnessAt = (celsius: number) => {
    const { hardnessHrc } = temperedHardness(
      { composition: steel.composition, measured: steel.measured },
      { kind: 'hold', celsius, hours: holdHours },
    );
    return hardnessHrc.value === null ? null : hardnessHrc;
  };
  for (let celsius = COLDEST_TEMPER; celsius <= HOTTEST_TEMPER; celsius += 5) {
    const found = safely(() => hardnessAt(celsius));
    if (found === null || found.value > wantedHrc + 0.5) continue;
    if (found.value < wantedHrc - 2) break;
    const { low, high, value } = found;
    return {
      celsius,
      lowCelsius: celsius - 10,
      highCelsius: celsius + 10,
      uncertaintyCelsius: 20,
      reason: {
        code: 'target-for-hardness',
        params: { wantedHrc, valueHrc: value, lowHrc: low, highHrc: high, hours: holdHours },
        from: { standing: found.standing, source: found.source },
      },
    };
  }
  throw new PhysicsError(
    'no-solution',
    `no temper from ${COLDEST_TEMPER} to ${HOTTEST_TEMPER} °C is known to leave ${wantedHrc} HRC in ${steel.title}: choose another hardness, or write the schedule from the maker's data sheet`,
  );
}

function safely<T>(ask: () => T): T | null {
  try {
    return ask();
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}

/** The reason of a tolerance: what such a furnace can be held within. */
export function toleranceReason(furnace: PlanFurnace, toleranceCelsius: number): Omit<Reason, 'path'> {
  return { code: 'tolerance-furnace', params: { toleranceCelsius, furnace: furnace.name }, from: HABIT };
}
