import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import type { NewPiece } from '../../archive/piece-types.ts';
import { Piece, PieceDraft, PieceHistory, PiecePage, PiecePatch, TickRequest } from '../../contract/piece.ts';
import { WatchError } from '../../watch/errors.ts';
import { pieceHistory } from '../../watch/piece-history.ts';
import { steelOfPiece } from '../../watch/piece-steel.ts';
import { steelBook } from '../../watch/steel-book.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { need } from './need.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/pieces',
  summary: 'Pieces, the newest first, a page at a time',
  request: {
    query: z.object({
      mark: z.string().min(1).max(24).optional().describe('The whole mark, in any case'),
      q: z.string().max(200).optional().describe('Each word must stand in mark, title, note or steel'),
      archived: z.enum(['no', 'yes', 'any']).default('no'),
      after: z.string().max(64).optional().describe('`next` of the page before'),
      limit: z.coerce.number().int().min(1).max(200).default(50),
    }),
  },
  responses: { 200: json(PiecePage, 'One page') },
});
const create = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/pieces',
  summary: 'Add a piece, with a route of its own or from a template',
  request: { body: jsonBody(PieceDraft) },
  responses: { 201: json(Piece, 'The new piece') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/pieces/{id}',
  summary: 'One piece with its route',
  request: { params: IdParam },
  responses: { 200: json(Piece, 'The piece') },
});
const change = declareRoute('tend', {
  method: 'patch',
  path: '/api/v1/pieces/{id}',
  summary: 'Change a piece or its route: steps that keep their id keep their tick',
  request: { params: IdParam, body: jsonBody(PiecePatch) },
  responses: { 200: json(Piece, 'The piece as it is now') },
});
const remove = declareRoute('tend', {
  method: 'delete',
  path: '/api/v1/pieces/{id}',
  summary: 'Put a piece away: its history stays, and its mark is free again',
  request: { params: IdParam },
  responses: { 204: { description: 'Put away' } },
});
const StepParam = z.object({ id: z.string().min(1).max(64), stepId: z.string().min(1).max(64) });
const tick = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/pieces/{id}/route/{stepId}/done',
  summary: 'Tick a step of the route',
  request: { params: StepParam, body: { ...jsonBody(TickRequest), required: false } },
  responses: { 200: json(Piece, 'The piece as it is now') },
});
const untick = declareRoute('tend', {
  method: 'delete',
  path: '/api/v1/pieces/{id}/route/{stepId}/done',
  summary: 'Take the tick of a step away, whoever made it',
  request: { params: StepParam },
  responses: { 200: json(Piece, 'The piece as it is now') },
});
const history = declareRoute('look', {
  method: 'get',
  path: '/api/v1/pieces/{id}/history',
  summary: 'Every firing and observation of a piece, in order',
  request: { params: IdParam },
  responses: { 200: json(PieceHistory, 'The history') },
});

export function pieceRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock } = parts;
  const find = (id: string): Piece => need(archive.piece(id), 'piece', id);
  const book = steelBook(archive);

  app.openapi(list, (c) => c.json(archive.pieces(c.req.valid('query')), 200));
  app.openapi(create, (c) => {
    const draft = c.req.valid('json');
    refuseTaken(parts, draft.mark, null);
    steelOfPiece(book, draft.steel);
    return c.json(archive.createPiece(withRoute(parts, draft), clock.now()), 201);
  });
  app.openapi(read, (c) => c.json(find(c.req.valid('param').id), 200));
  app.openapi(change, (c) => {
    const piece = find(c.req.valid('param').id);
    const named = c.req.valid('json');
    if (named.steel !== undefined) steelOfPiece(book, named.steel);
    const stays = named.archived ?? piece.archived;
    if (!stays) refuseTaken(parts, named.mark ?? piece.mark, piece.id);
    return c.json(archive.changePiece(piece.id, named, clock.now()), 200);
  });
  app.openapi(remove, (c) => {
    const piece = find(c.req.valid('param').id);
    refuseInFiring(parts, piece);
    archive.changePiece(piece.id, { archived: true }, clock.now());
    return c.body(null, 204);
  });
  app.openapi(tick, (c) => {
    const { id, stepId } = c.req.valid('param');
    const { at, ...said } = TickRequest.parse(c.req.valid('json') ?? {});
    const now = clock.now();
    refuseFuture(at, now);
    if (said.firingId !== null) need(archive.firing(said.firingId), 'firing', said.firingId);
    return c.json(archive.tickStep(find(id).id, stepId, { at: at ?? now, ...said }, now), 200);
  });
  app.openapi(untick, (c) => {
    const { id, stepId } = c.req.valid('param');
    return c.json(archive.tickStep(find(id).id, stepId, null, clock.now()), 200);
  });
  app.openapi(history, (c) => {
    const piece = find(c.req.valid('param').id);
    return c.json(pieceHistory(archive, parts.watch.firings, piece), 200);
  });
}

function withRoute({ archive }: WebParts, { templateId, ...draft }: PieceDraft): NewPiece {
  if (templateId === null) return draft;
  if (draft.route.length > 0) {
    throw new WatchError('invalid-request', 'send a route or a templateId, not both');
  }
  return {
    ...draft,
    route: [...need(archive.routeTemplate(templateId), 'route template', templateId).steps],
  };
}

function refuseTaken({ archive }: WebParts, mark: string, but: string | null): void {
  const { pieces } = archive.pieces({ mark, archived: 'no', limit: 2 });
  if (pieces.every(({ id }) => id === but)) return;
  throw new WatchError(
    'already-exists',
    `the mark ${mark} is on another piece: choose another mark, or put that piece away first`,
  );
}

function refuseInFiring({ archive }: WebParts, { id, mark }: Piece): void {
  const lies = archive.runningFirings().find(({ pieces }) => pieces.some(({ pieceId }) => pieceId === id));
  if (!lies) return;
  throw new WatchError('in-use', `${mark} lies in a running firing (${lies.title}): finish that first`);
}

/** @throws WatchError `invalid-request` */
export function refuseFuture(at: number | undefined, now: number): void {
  if (at === undefined || at <= now) return;
  throw new WatchError('invalid-request', 'at lies in the future: leave it out for now');
}
