import type { PieceHeat } from '../../contract/firing.ts';
import type { FiringCase, FiringState } from '../types.ts';
import { coreNow, loadOf } from './load.ts';
import { coreOf, surfaceOf } from './model.ts';

/** The computed pieces as people and programs get them. */

const tenth = (celsius: number): number => Math.round(celsius * 10) / 10;

/** Empty until something was measured, and for a firing whose load nobody named. */
export function piecesOf(c: FiringCase, state: FiringState): PieceHeat[] {
  const { load } = state;
  if (load === null) return [];
  const known = coreNow(c, state) !== null;
  const shown = (celsius: number | undefined) => (known && celsius !== undefined ? tenth(celsius) : null);
  return loadOf(c).map(({ piece, part }, i) => {
    const track = load.pieces[i];
    const cores = track === undefined ? [] : [track.value, track.low, track.high].map(coreOf);
    return {
      pieceId: piece.pieceId,
      mark: piece.mark,
      part,
      place: load.place,
      computedTo: load.steppedTo,
      coreCelsius: shown(cores[0]),
      surfaceCelsius: shown(track === undefined ? undefined : surfaceOf(track.value)),
      coreLowCelsius: shown(cores.length > 0 ? Math.min(...cores) : undefined),
      coreHighCelsius: shown(cores.length > 0 ? Math.max(...cores) : undefined),
      correctedBy: i === 0 ? load.correctedBy : null,
      bridgedSeconds: load.bridgedMs / 1000,
    };
  });
}
