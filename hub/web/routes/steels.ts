import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { SteelDetail, SteelSummary } from '../../contract/compute/steels.ts';
import { OwnSteel, OwnSteelDraft, OwnSteelPatch } from '../../contract/own-steel.ts';
import { findGrade, GRADES, steelNameKey } from '../../physics/steel/catalogue.ts';
import { WatchError } from '../../watch/errors.ts';
import { type KnownSteel, steelBook, steelOfOwn } from '../../watch/steel-book.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, json, jsonBody } from '../route.ts';
import { gradeShown, ownShown, temperSetShown } from './compute/steel-shown.ts';
import { defined, need } from './need.ts';

/** The catalogue's grades and the shop's own steels, under one roof. */

export const SteelParam = z.object({ name: z.string().min(1).max(64) });

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/steels',
  summary:
    'Every steel: the grades of the catalogue, then those of this shop, with the source of each number',
  responses: { 200: json(z.array(SteelSummary), 'Steels, in the order a picker shows them') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/steels/{name}',
  summary: 'One steel by any of its names or its id, with measured tempering curves and its certificates',
  request: { params: SteelParam },
  responses: { 200: json(SteelDetail, 'The steel') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/steels',
  summary: 'Add a steel of your own',
  request: { body: jsonBody(OwnSteelDraft) },
  responses: { 201: json(OwnSteel, 'The new steel') },
});
const change = declareRoute('set-up', {
  method: 'patch',
  path: '/api/v1/steels/{name}',
  summary: 'Change a steel of your own',
  request: { params: SteelParam, body: jsonBody(OwnSteelPatch) },
  responses: { 200: json(OwnSteel, 'The steel as it is now') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/steels/{name}',
  summary: 'Put a steel of your own away: what was computed and recorded with it stays',
  request: { params: SteelParam },
  responses: { 204: { description: 'Put away' } },
});

export function steelRoutes(app: OpenAPIHono, { archive, clock }: WebParts): void {
  const book = steelBook(archive);
  const find = (name: string): KnownSteel => need(book.find(name), 'steel', name);
  const findOwn = (name: string): OwnSteel => {
    const known = find(name);
    if (known.origin === 'own') return known.own;
    throw new WatchError(
      'conflict',
      `${known.id} is a grade of the catalogue, which is not changed here: add a steel of your own`,
    );
  };
  const inUse = () => archive.ownSteels().filter(({ archived }) => !archived);
  app.openapi(list, (c) => c.json([...GRADES.map(gradeShown), ...inUse().map(ownShown)], 200) as never);
  app.openapi(read, (c) => {
    const known = find(c.req.valid('param').name);
    const certificates = archive.certificates(known.id).filter(({ archived }) => !archived);
    const shown = known.origin === 'catalogue' ? gradeShown(known.grade) : ownShown(known.own);
    const temperSets = known.grade?.temperSets.map(temperSetShown) ?? [];
    return c.json({ ...shown, temperSets, own: known.own, certificates }, 200) as never;
  });
  app.openapi(create, (c) => {
    const draft = c.req.valid('json');
    steelOfOwn({ ...draft, id: '' });
    return c.json(archive.createOwnSteel(draft, freeKey(draft.name, inUse(), null), clock.now()), 201);
  });
  app.openapi(change, (c) => {
    const before = findOwn(c.req.valid('param').name);
    const steel = { ...before, ...defined(c.req.valid('json')), updatedAt: clock.now() };
    steelOfOwn(steel);
    return c.json(archive.saveOwnSteel(steel, freeKey(steel.name, inUse(), before.id)), 200);
  });
  app.openapi(remove, (c) => {
    const steel = findOwn(c.req.valid('param').name);
    const away = { ...steel, archived: true, updatedAt: clock.now() };
    archive.saveOwnSteel(away, steelNameKey(steel.name));
    return c.body(null, 204);
  });
}

/**
 * The name as it is compared, when it is free.
 *
 * @throws WatchError `already-exists`: an own steel may hide neither a grade nor another own steel
 */
function freeKey(name: string, own: readonly OwnSteel[], self: string | null): string {
  const key = steelNameKey(name);
  if (key === '') throw new WatchError('bad-input', `${name} is no name: use letters or digits`);
  const grade = findGrade(name);
  if (grade !== null) {
    throw new WatchError(
      'already-exists',
      `${name} is a name of ${grade.id} in the catalogue: give yours another, such as "${grade.id} of my mill"`,
    );
  }
  const other = own.find((each) => each.id !== self && steelNameKey(each.name) === key);
  if (other) throw new WatchError('already-exists', `there is a steel ${other.name} already`);
  return key;
}
