/** How heat goes over to a piece that lies free in a furnace that nobody has fitted yet. */
import type { Band, Standing } from './standing.ts';

export type FurnaceKind = 'gas-forge' | 'electric-oven' | 'salt-bath';

export interface UsualFurnace {
  /** Effective emissivity, chamber to load. */
  readonly emissivity: Band;
  /** Film coefficient, W/(m² K). */
  readonly filmWM2K: Band;
  readonly standing: Standing;
}

const PRACTICE = 'common-practice';

/**
 * Oxidised steel radiates with about 0.8 and less is left between walls and neighbours; burner gas moves, oven air
 * hardly does; molten salt wets, and its radiation is part of the film. Common practice, no source.
 */
const USUAL: Readonly<Record<FurnaceKind, UsualFurnace>> = {
  'gas-forge': {
    emissivity: { low: 0.6, value: 0.75, high: 0.9 },
    filmWM2K: { low: 10, value: 25, high: 50 },
    standing: PRACTICE,
  },
  'electric-oven': {
    emissivity: { low: 0.5, value: 0.7, high: 0.85 },
    filmWM2K: { low: 5, value: 10, high: 20 },
    standing: PRACTICE,
  },
  'salt-bath': {
    emissivity: { low: 0, value: 0, high: 0 },
    filmWM2K: { low: 300, value: 600, high: 1000 },
    standing: PRACTICE,
  },
};

/** The usual values of a kind of furnace, with their band. */
export function usualFurnace(kind: FurnaceKind): UsualFurnace {
  return USUAL[kind];
}
