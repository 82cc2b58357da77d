import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import {
  ATTACHMENT_TYPES,
  MOST_ATTACHMENTS_OF_A_PIECE,
  Observation,
  ObservationDraft,
  type ObservationSeen,
} from '../../contract/observation.ts';
import type { Piece } from '../../contract/piece.ts';
import { WatchError } from '../../watch/errors.ts';
import { magnetTap } from '../../watch/magnet-tap.ts';
import { attachmentType, dispositionOf, takenFile } from '../attachment.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody, QueryInstant } from '../route.ts';
import { need } from './need.ts';
import { refuseFuture } from './pieces.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/pieces/{id}/observations',
  summary: 'What was seen on a piece, the oldest first',
  request: { params: IdParam },
  responses: { 200: json(z.array(Observation), 'Observations') },
});
const add = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/pieces/{id}/observations',
  summary: 'Note what was seen. A magnet tap is given its temperature and what was to be expected',
  request: { params: IdParam, body: jsonBody(ObservationDraft) },
  responses: { 201: json(Observation, 'The observation') },
});
const remove = declareRoute('tend', {
  method: 'delete',
  path: '/api/v1/observations/{id}',
  summary: 'Delete an observation, with its file if it has one',
  request: { params: IdParam },
  responses: { 204: { description: 'Deleted' } },
});
const binary = { schema: z.string().openapi({ format: 'binary' }) };
const files = Object.fromEntries(ATTACHMENT_TYPES.map((type) => [type, binary]));
const attach = declareRoute('tend', {
  method: 'post',
  path: '/api/v1/pieces/{id}/attachments',
  summary: 'Attach a photo or a file: the body is the file itself, 8 MiB at most',
  request: {
    params: IdParam,
    query: z.object({
      fileName: z.string().max(200).default(''),
      at: QueryInstant.optional(),
      by: z.string().trim().max(80).default(''),
      note: z.string().max(2000).default(''),
      firingId: z.string().max(64).optional(),
      stepId: z.string().max(64).optional(),
    }),
    body: { required: true, content: files },
  },
  responses: { 201: json(Observation, 'The observation that tells of it') },
});
const fetchFile = declareRoute('look', {
  method: 'get',
  path: '/api/v1/attachments/{id}',
  summary: 'A photo or file, to be saved: it is never given out as a page',
  request: { params: IdParam },
  responses: { 200: { description: 'The file', content: files } },
});

export function pieceObservationRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, clock } = parts;
  const find = (id: string): Piece => need(archive.piece(id), 'piece', id);

  app.openapi(list, (c) => c.json([...archive.observations(find(c.req.valid('param').id).id)], 200));
  app.openapi(add, (c) => {
    const piece = find(c.req.valid('param').id);
    const { at: said, seen: told, ...about } = c.req.valid('json');
    const at = instantOf(parts, said);
    checkAbout(parts, piece, about);
    const seen: ObservationSeen = told.kind === 'magnet' ? tapped(parts, piece, told.furnaceId, at) : told;
    const draft = { ...about, pieceId: piece.id, at, seen, createdAt: clock.now() };
    return c.json(archive.addObservation(draft), 201);
  });
  app.openapi(remove, (c) => {
    const { id } = need(archive.observation(c.req.valid('param').id), 'observation', c.req.valid('param').id);
    archive.deleteObservation(id);
    return c.body(null, 204);
  });
  app.openapi(attach, async (c) => {
    const piece = find(c.req.valid('param').id);
    const { fileName, at: said, by, note, firingId = null, stepId = null } = c.req.valid('query');
    const at = instantOf(parts, said);
    checkAbout(parts, piece, { firingId, stepId });
    refuseTooMany(parts, piece);
    const type = attachmentType(c.req.header('content-type'));
    const content = Buffer.from(await c.req.arrayBuffer());
    const file = takenFile(content, type, fileName);
    const about = { pieceId: piece.id, firingId, stepId, at, by, note, createdAt: clock.now() };
    return c.json(archive.addAttachment({ ...about, file, content }), 201);
  });
  app.openapi(fetchFile, (c) => {
    const { id } = c.req.valid('param');
    const { fileName, contentType, content } = need(archive.attachment(id), 'attachment', id);
    return new Response(new Uint8Array(content), {
      headers: {
        'content-type': contentType === 'text/plain' ? 'text/plain; charset=utf-8' : contentType,
        'content-disposition': dispositionOf(fileName),
        'x-content-type-options': 'nosniff',
      },
    }) as never;
  });
}

function instantOf({ clock }: WebParts, said: number | undefined): number {
  refuseFuture(said, clock.now());
  return said ?? clock.now();
}

/** What an observation refers to must be there. @throws WatchError `not-found` */
function checkAbout(
  { archive }: WebParts,
  piece: Piece,
  { firingId, stepId }: { readonly firingId: string | null; readonly stepId: string | null },
): void {
  if (firingId !== null) need(archive.firing(firingId), 'firing', firingId);
  if (stepId !== null)
    need(piece.route.find(({ id }) => id === stepId) ?? null, 'step of this route', stepId);
}

function tapped({ archive }: WebParts, piece: Piece, furnaceId: string, at: number): ObservationSeen {
  return magnetTap(archive, piece, need(archive.furnace(furnaceId), 'furnace', furnaceId).id, at);
}

function refuseTooMany({ archive }: WebParts, piece: Piece): void {
  const files = archive.observations(piece.id).filter(({ seen }) => seen.kind === 'attachment');
  if (files.length < MOST_ATTACHMENTS_OF_A_PIECE) return;
  const message = `${piece.mark} has ${files.length} files, and no more are taken: delete some first`;
  throw new WatchError('conflict', message);
}
