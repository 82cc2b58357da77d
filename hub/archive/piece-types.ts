import type { FiringSummary } from '../contract/firing.ts';
import type { LoadPiece } from '../contract/load.ts';
import type { Observation, ObservationSeen } from '../contract/observation.ts';
import type { Piece, PieceDraft, PiecePage, PiecePatch, StepDone } from '../contract/piece.ts';
import type { RouteTemplate, RouteTemplateDraft } from '../contract/route-template.ts';

/** What the archive promises about pieces. Synchronous and committed on return, like all of it. */

/** The newest first; `after` is the id of the last piece of the page before. */
export interface PieceFilter {
  /** The whole mark, whatever the case of its letters. */
  readonly mark?: string | undefined;
  /** Words of which each must stand in mark, title, note or steel. */
  readonly q?: string | undefined;
  readonly archived?: 'no' | 'yes' | 'any' | undefined;
  readonly after?: string | undefined;
  readonly limit: number;
}

export type NewPiece = Omit<PieceDraft, 'templateId'>;
export type NewObservation = Omit<Observation, 'id'>;

export interface NewAttachment extends Omit<NewObservation, 'seen'> {
  readonly file: Omit<Extract<ObservationSeen, { kind: 'attachment' }>, 'kind' | 'attachmentId' | 'bytes'>;
  readonly content: Uint8Array;
}

export interface Attachment {
  readonly fileName: string;
  readonly contentType: string;
  readonly content: Uint8Array;
}

/** A firing that a piece lay in, and what it was when it was taken in. */
export interface PieceFiring {
  readonly firing: FiringSummary;
  readonly as: LoadPiece;
}

export interface PieceStore {
  pieces(filter: PieceFilter): PiecePage;
  piece(id: string): Piece | null;
  /** Every piece that is not put away and has a step left, the oldest first. */
  openPieces(): readonly Piece[];
  /** Gives each step of the route its id. A mark that another piece carries is a `conflict`. */
  createPiece(draft: NewPiece, at: number): Piece;
  /**
   * Writes the fields that are named. A step of a new route that carries the id of one that is there keeps its
   * tick; an id that is not there is a `conflict`.
   */
  changePiece(id: string, change: PiecePatch, at: number): Piece;
  /** Ticks a step (null: takes the tick away); a step that is not there is `not-found`. */
  tickStep(pieceId: string, stepId: string, done: StepDone | null, at: number): Piece;

  /** Of one piece, the oldest first. */
  observations(pieceId: string): readonly Observation[];
  observation(id: string): Observation | null;
  addObservation(draft: NewObservation): Observation;
  /** The file and the observation that tells of it, in one transaction. */
  addAttachment(draft: NewAttachment): Observation;
  attachment(id: string): Attachment | null;
  /** With its attachment, if it tells of one. */
  deleteObservation(id: string): boolean;

  routeTemplates(): readonly RouteTemplate[];
  routeTemplate(id: string): RouteTemplate | null;
  createRouteTemplate(draft: RouteTemplateDraft, at: number): RouteTemplate;
  saveRouteTemplate(id: string, draft: RouteTemplateDraft, at: number): RouteTemplate;
  deleteRouteTemplate(id: string): boolean;

  /** Replaces what lies in a firing. */
  saveLoad(firingId: string, pieces: readonly LoadPiece[]): void;
  /** Every firing that a piece lay in, the earliest start first. */
  firingsOfPiece(pieceId: string): readonly PieceFiring[];
}
