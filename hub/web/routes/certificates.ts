import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { MillCertificate, MillCertificateDraft, MillCertificatePatch } from '../../contract/own-steel.ts';
import { requireComposition } from '../../physics/steel/composition.ts';
import { WatchError } from '../../watch/errors.ts';
import { steelBook } from '../../watch/steel-book.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { defined, need } from './need.ts';
import { SteelParam } from './steels.ts';

const list = declareRoute('look', {
  method: 'get',
  path: '/api/v1/steels/{name}/certificates',
  summary: 'Mill certificates of a steel',
  request: { params: SteelParam },
  responses: { 200: json(z.array(MillCertificate), 'Certificates, the newest first') },
});
const create = declareRoute('set-up', {
  method: 'post',
  path: '/api/v1/steels/{name}/certificates',
  summary: 'Keep a mill certificate of a grade or of an own steel',
  request: { params: SteelParam, body: jsonBody(MillCertificateDraft) },
  responses: { 201: json(MillCertificate, 'The certificate: compute with its id') },
});
const read = declareRoute('look', {
  method: 'get',
  path: '/api/v1/certificates/{id}',
  summary: 'One mill certificate',
  request: { params: IdParam },
  responses: { 200: json(MillCertificate, 'The certificate') },
});
const change = declareRoute('set-up', {
  method: 'patch',
  path: '/api/v1/certificates/{id}',
  summary: 'Change a mill certificate',
  request: { params: IdParam, body: jsonBody(MillCertificatePatch) },
  responses: { 200: json(MillCertificate, 'The certificate as it is now') },
});
const remove = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/certificates/{id}',
  summary: 'Put a mill certificate away',
  request: { params: IdParam },
  responses: { 204: { description: 'Put away' } },
});

export function certificateRoutes(app: OpenAPIHono, { archive, clock }: WebParts): void {
  const book = steelBook(archive);
  const find = (id: string): MillCertificate => need(archive.certificate(id), 'certificate', id);
  const ofSteel = (steel: string) => archive.certificates(steel).filter(({ archived }) => !archived);
  const requireNew = (steel: string, heatNumber: string, self: string | null): void => {
    const other = ofSteel(steel).find((each) => each.heatNumber === heatNumber && each.id !== self);
    if (other === undefined) return;
    throw new WatchError('already-exists', `there is a certificate of heat ${heatNumber} already`);
  };
  app.openapi(list, (c) => {
    const { name } = c.req.valid('param');
    return c.json(ofSteel(need(book.find(name), 'steel', name).id), 200);
  });
  app.openapi(create, (c) => {
    const { name } = c.req.valid('param');
    const draft = c.req.valid('json');
    const steel = need(book.find(name), 'steel', name).id;
    requireComposition(draft.composition);
    requireNew(steel, draft.heatNumber, null);
    return c.json(archive.createCertificate(steel, draft, clock.now()), 201);
  });
  app.openapi(read, (c) => c.json(find(c.req.valid('param').id), 200));
  app.openapi(change, (c) => {
    const before = find(c.req.valid('param').id);
    const certificate = { ...before, ...defined(c.req.valid('json')), updatedAt: clock.now() };
    requireComposition(certificate.composition);
    requireNew(certificate.steel, certificate.heatNumber, certificate.id);
    return c.json(archive.saveCertificate(certificate), 200);
  });
  app.openapi(remove, (c) => {
    const certificate = find(c.req.valid('param').id);
    archive.saveCertificate({ ...certificate, archived: true, updatedAt: clock.now() });
    return c.body(null, 204);
  });
}
