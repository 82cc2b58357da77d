import type { Archive } from '../archive/types.ts';
import type { ProposalRequest } from '../contract/planning.ts';
import type { RouteHeat } from '../contract/route-template.ts';
import type { Furnace } from '../contract/shop.ts';
import { furnaceMeetings } from '../firing/load/place.ts';
import type { Provenance } from '../physics/steel/estimate.ts';
import type { Steel } from '../physics/steel/own-steel.ts';
import { HABIT, type PlanFurnace, type PlanPiece, type PlanSteel } from '../planning/types.ts';
import { WatchError } from '../watch/errors.ts';
import type { LoadAsked } from '../watch/load.ts';
import { steelOfPiece } from '../watch/piece-steel.ts';
import { type SteelBook, steelBook } from '../watch/steel-book.ts';
import { shapeOf } from './routes/compute/pieces.ts';
import { need } from './routes/need.ts';

/** Pieces and furnaces of this shop as planning takes them. */

export function planFurnace(archive: Archive, id: string): PlanFurnace {
  const furnace: Furnace = need(archive.furnace(id), 'furnace', id);
  const fit = furnace.fit;
  const { value, low } = furnaceMeetings({
    furnaceKind: furnace.kind,
    fit:
      fit === null
        ? null
        : { emissivity: fit.effectiveEmissivity, filmWM2K: fit.filmWattsPerSquareMetreKelvin },
  });
  const at = ({ emissivity, film }: { emissivity: number; film: unknown }) => ({
    emissivity,
    film: typeof film === 'number' ? film : 10,
  });
  const fitted: Provenance = {
    standing: 'derived-here',
    source: `fit of ${furnace.name} to a recorded firing`,
  };
  return {
    name: furnace.name,
    kind: furnace.kind,
    ratedCelsius: furnace.ratedCelsius,
    exposure: at(value),
    slowExposure: at(low),
    exposureFrom: fit === null ? HABIT : fitted,
  };
}

/** Pieces on the bench, each for a step of its route, or for `step`. */
export function planPieces(archive: Archive, asked: LoadAsked, step: RouteHeat | null): PlanPiece[] {
  const book = steelBook(archive);
  return asked.map(({ pieceId, routeStepId }) => {
    const piece = archive.piece(pieceId);
    if (!piece) throw new WatchError('not-found', `there is no piece ${pieceId}: add it under Bench first`);
    const heat = piece.route.find((each) => each.id === routeStepId);
    return {
      id: piece.id,
      mark: piece.mark,
      steel: planSteel(book, steelOfPiece(book, piece.steel)),
      shape: shapeOf(piece.section.shape),
      thicknessMm: piece.section.thicknessMm,
      step: step ?? (heat?.kind === 'heat' ? heat.step : null),
    };
  });
}

/** One piece that is only described. */
export function describedPiece(archive: Archive, question: ProposalRequest): PlanPiece {
  const { section, step } = question;
  if (section === undefined) throw new WatchError('bad-input', 'give the section of the piece');
  const book = steelBook(archive);
  return {
    id: null,
    mark: null,
    steel: planSteel(book, book.steelOf(question)),
    shape: shapeOf(section.shape),
    thicknessMm: section.thicknessMm,
    step,
  };
}

/** A steel with what its grade says of quenching and of steps that must not be done. */
function planSteel(book: SteelBook, steel: Steel): PlanSteel {
  const known = steel.id === '' ? null : book.find(steel.id);
  const grade = known?.grade ?? null;
  return { ...steel, quench: grade?.quench ?? null, notRecommended: grade?.notRecommended ?? [] };
}
