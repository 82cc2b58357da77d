import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Flag } from '../../contract/compute/estimate.ts';
import {
  FIT_DOUBTFUL_CELSIUS,
  FIT_REFUSED_CELSIUS,
  type FurnaceFit,
  FurnaceFitKeep,
  FurnaceFitTried,
  FurnaceFitTry,
} from '../../contract/furnace-fit.ts';
import { Furnace } from '../../contract/shop.ts';
import { WatchError } from '../../watch/errors.ts';
import { type RecordedRun, recordedRun } from '../fit-run.ts';
import type { WebParts } from '../parts.ts';
import { declareRoute, IdParam, json, jsonBody } from '../route.ts';
import { showResidual } from './compute/exposure.ts';
import { fitAnswer } from './compute/furnace-fit.ts';
import { need } from './need.ts';

const tryFit = declareRoute('look', {
  method: 'post',
  path: '/api/v1/furnaces/{id}/fit/try',
  summary: 'Fit a furnace to a finished firing and keep nothing: values, residual, what speaks against them',
  request: { params: IdParam, body: jsonBody(FurnaceFitTry) },
  responses: { 200: json(FurnaceFitTried, 'What was found') },
});
const keep = declareRoute('set-up', {
  method: 'put',
  path: '/api/v1/furnaces/{id}/fit',
  summary: 'Keep a fit for a furnace: every computation about it uses it from then on',
  request: { params: IdParam, body: jsonBody(FurnaceFitKeep) },
  responses: { 200: json(Furnace, 'The furnace with its fit') },
});
const forget = declareRoute('set-up', {
  method: 'delete',
  path: '/api/v1/furnaces/{id}/fit',
  summary: 'Forget the fit of a furnace: the usual values of its kind count again',
  request: { params: IdParam },
  responses: { 204: { description: 'Forgotten' } },
});

export function furnaceFitRoutes(app: OpenAPIHono, parts: WebParts): void {
  const { archive, bus, clock, watch } = parts;
  const find = (id: string): Furnace => need(archive.furnace(id), 'furnace', id);
  const save = (id: string, fit: FurnaceFit | null): Furnace => {
    const furnace = archive.saveFurnace({ ...find(id), fit }, clock.now());
    watch.setupChanged();
    bus.tell({ type: 'furnace', furnace });
    return furnace;
  };
  const fitted = async (id: string, asked: FurnaceFitTry): Promise<FurnaceFitTried> => {
    const firing = need(archive.firing(asked.firingId), 'firing', asked.firingId);
    const recorded = recordedRun(archive, find(id).id, firing, asked);
    const { shape, thicknessMm, material, loadAt } = asked;
    const piece = { shape, thicknessMm, material };
    const answer = await fitAnswer({ piece, run: [...recorded.run], loadAt });
    return triedOf(answer, recorded, asked.firingId, clock.now());
  };
  app.openapi(tryFit, async (c) => {
    return c.json(await fitted(c.req.valid('param').id, c.req.valid('json')), 200);
  });
  app.openapi(keep, async (c) => {
    const { id } = c.req.valid('param');
    const asked = c.req.valid('json');
    find(id);
    const { kind, ...given } = asked;
    const fit =
      asked.kind === 'firing'
        ? (await fitted(id, asked)).fit
        : { ...(given as Omit<Extract<FurnaceFitKeep, { kind: 'numbers' }>, 'kind'>), fittedAt: clock.now() };
    requireDescribes(fit);
    return c.json(save(id, fit), 200);
  });
  app.openapi(forget, (c) => {
    save(c.req.valid('param').id, null);
    return c.body(null, 204);
  });
}

function requireDescribes({ residualCelsius }: FurnaceFit): void {
  const refusal = refusalOf(residualCelsius);
  if (refusal) throw new WatchError('not-applicable', refusal.message);
}

function refusalOf(residualCelsius: number): Flag | null {
  if (residualCelsius <= FIT_REFUSED_CELSIUS) return null;
  const message = `the fit leaves ${showResidual(residualCelsius)} (rms), more than ${FIT_REFUSED_CELSIUS} °C: it does not describe this furnace. Was the load in the furnace all the time, and are section and place of its thermocouple right?`;
  return { code: 'not-applicable', message };
}

function triedOf(
  answer: FurnaceFitTried['answer'],
  { run, whole }: RecordedRun,
  firingId: string,
  now: number,
): FurnaceFitTried {
  const loads = run.map(({ loadCelsius }) => loadCelsius);
  const fit: FurnaceFit = {
    effectiveEmissivity: answer.emissivity,
    filmWattsPerSquareMetreKelvin: answer.filmWattsPerSquareMetreKelvin,
    residualCelsius: answer.rmsCelsius,
    separated: answer.separated,
    loadLowCelsius: Math.min(...loads),
    loadHighCelsius: Math.max(...loads),
    fittedAt: now,
    from: { kind: 'firing', firingId },
  };
  return { fit, answer, flags: flagsOf(answer, whole), refusal: refusalOf(answer.rmsCelsius) };
}

/** Where the search for the two numbers ends; see hub/physics/heat/furnace-fit.ts. */
const LEAST_EMISSIVITY = 0.02;
const MOST_FILM = 200;

function flagsOf(answer: FurnaceFitTried['answer'], whole: boolean): Flag[] {
  const { rmsCelsius, separated, emissivity, filmWattsPerSquareMetreKelvin: film } = answer;
  const flags: Flag[] = [];
  const add = (holds: boolean, code: string, message: string) => {
    if (holds) flags.push({ code, message });
  };
  add(
    rmsCelsius > FIT_DOUBTFUL_CELSIUS,
    'doubtful-fit',
    `The fit leaves ${showResidual(rmsCelsius)} (rms): it describes this furnace roughly only`,
  );
  add(
    !separated,
    'not-separated',
    'This run cannot tell radiation from convection: the pair holds near the heat of this firing only',
  );
  add(
    emissivity <= LEAST_EMISSIVITY || emissivity >= 1 || film <= 0 || film >= MOST_FILM,
    'at-bound',
    'A value lies at the end of what is searched: the real one may lie beyond, or the section is wrong',
  );
  add(
    !whole,
    'run-cut',
    'Readings are missing: the longest unbroken part was used, as if the piece were equally hot at its start',
  );
  return flags;
}
