import { Observation, type ObservationSeen } from '../../../hub/contract/observation.ts';
import { Piece } from '../../../hub/contract/piece.ts';

/** Pieces and observations for tests of the screens, built through the contract's own schemas. */

type PieceInput = {
  readonly mark?: string;
  readonly route?: readonly object[];
  readonly [key: string]: unknown;
};

export function piece({ route = [], ...more }: PieceInput = {}): Piece {
  return Piece.parse({
    id: 'p1',
    mark: 'K1',
    steel: { grade: '1084' },
    section: { shape: 'plate', thicknessMm: 3 },
    route: route.map((step, index) => ({ id: `s${index}`, done: null, ...step })),
    archived: false,
    createdAt: 0,
    updatedAt: 0,
    ...more,
  });
}

export const DONE = { at: 0, by: '', firingId: null, outcome: 'done' } as const;

export function seen(what: ObservationSeen): Observation {
  return Observation.parse({ id: 'o1', pieceId: 'p1', at: 0, seen: what, createdAt: 0 });
}
