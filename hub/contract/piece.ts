import { z } from 'zod';
import { Composition } from './compute/steel-choice.ts';
import { FiringSummary, FiringVerdict } from './firing.ts';
import { LoadPiece, PieceMark, Section } from './load.ts';
import { Observation } from './observation.ts';
import { patchShape } from './patch.ts';
import { EpochMs } from './reading.ts';
import { checkShape, heatShape, MOST_ROUTE_STEPS, workShape } from './route-template.ts';
import { Id } from './shop.ts';

/** One thing made of steel, with the route it must pass and how far along it is. */

/** What a piece is made of: a grade or own steel, a mill certificate, or a composition. */
export const PieceSteel = z
  .strictObject({
    grade: z
      .string()
      .trim()
      .min(1)
      .max(64)
      .nullable()
      .default(null)
      .describe('A grade of GET /api/v1/steels by any of its names, or an own steel by its name or id'),
    title: z.string().trim().max(80).default('').describe("The shop's own name for it, such as leaf spring"),
    certificateId: Id.nullable()
      .default(null)
      .describe('A mill certificate that is kept: its composition counts'),
    composition: Composition.nullable()
      .default(null)
      .describe('Mass percent, where there is no certificate that is kept; with a grade: sold as that grade'),
  })
  .superRefine(({ grade, certificateId, composition }, ctx) => {
    if (certificateId !== null && composition !== null) {
      const message = 'a certificate brings its own composition: give one of the two';
      ctx.addIssue({ code: 'custom', path: ['composition'], message });
    }
    if (grade !== null || certificateId !== null || composition !== null) return;
    const message =
      'name a grade of /api/v1/steels or give a composition; for scrap, the grade that it most likely is';
    ctx.addIssue({ code: 'custom', path: ['grade'], message });
  })
  .meta({ id: 'PieceSteel' });
export type PieceSteel = z.infer<typeof PieceSteel>;

/** How a step of a route came out. A heat takes the verdict of its firing. */
export const STEP_OUTCOMES = ['done', 'skipped', 'met', 'met-with-doubts', 'not-met'] as const;
export const StepOutcome = z.enum(STEP_OUTCOMES);
export type StepOutcome = z.infer<typeof StepOutcome>;

export const StepDone = z
  .object({
    at: EpochMs,
    by: z.string().describe('Who ticked it; empty: not said'),
    firingId: Id.nullable().describe('The firing that did it; null: ticked by hand'),
    outcome: StepOutcome,
  })
  .meta({ id: 'StepDone' });
export type StepDone = z.infer<typeof StepDone>;

const drafted = { id: Id.optional().describe('Of a step that is there already: its tick stays') };

/** A step as a person sends it. Steps without an id are new; ticks are set by their own route. */
export const RouteStepDraft = z
  .discriminatedUnion('kind', [
    z.strictObject({ ...drafted, ...heatShape }),
    z.strictObject({ ...drafted, ...workShape }),
    z.strictObject({ ...drafted, ...checkShape }),
  ])
  .meta({ id: 'RouteStepDraft' });
export type RouteStepDraft = z.infer<typeof RouteStepDraft>;

const kept = { id: Id, done: StepDone.nullable().describe('null: not done yet') };

export const RouteStep = z
  .discriminatedUnion('kind', [
    z.object({ ...kept, ...heatShape }),
    z.object({ ...kept, ...workShape }),
    z.object({ ...kept, ...checkShape }),
  ])
  .meta({ id: 'RouteStep' });
export type RouteStep = z.infer<typeof RouteStep>;
export type HeatStep = Extract<RouteStep, { kind: 'heat' }>;

const words = { title: z.string().trim().max(120).default(''), note: z.string().max(4000).default('') };
const routeShape = { route: z.array(RouteStepDraft).max(MOST_ROUTE_STEPS).default([]) };

export const PieceDraft = z
  .strictObject({
    mark: PieceMark.describe('Unique among pieces that are not put away, whatever the case of its letters'),
    ...words,
    steel: PieceSteel,
    section: Section,
    templateId: Id.nullable()
      .default(null)
      .describe('Takes its route from this template; then `route` is empty'),
    ...routeShape,
  })
  .meta({ id: 'PieceDraft' });
export type PieceDraft = z.infer<typeof PieceDraft>;

/** A field left out stays as it is. `route` is the whole route, in order. `archived: false` takes it out again. */
export const PiecePatch = z
  .strictObject({
    ...patchShape({ mark: PieceMark, ...words, steel: PieceSteel, section: Section, ...routeShape }),
    archived: z.boolean().optional(),
  })
  .meta({ id: 'PiecePatch' });
export type PiecePatch = z.infer<typeof PiecePatch>;

export const Piece = z
  .object({
    id: Id,
    mark: PieceMark,
    ...words,
    steel: PieceSteel,
    section: Section,
    route: z.array(RouteStep),
    archived: z.boolean(),
    createdAt: EpochMs,
    updatedAt: EpochMs,
  })
  .meta({ id: 'Piece' });
export type Piece = z.infer<typeof Piece>;

/** One page of pieces, the newest first. */
export const PiecePage = z
  .object({
    pieces: z.array(Piece),
    next: Id.nullable().describe('Send it as `after` for the next page; null: this is the last'),
  })
  .meta({ id: 'PiecePage' });
export type PiecePage = z.infer<typeof PiecePage>;

export const TickRequest = z
  .strictObject({
    at: EpochMs.optional().describe('Default now'),
    by: z.string().trim().max(80).default(''),
    firingId: Id.nullable().default(null),
    outcome: StepOutcome.default('done'),
  })
  .meta({ id: 'TickRequest' });
export type TickRequest = z.infer<typeof TickRequest>;

/** What lies in a running firing, sent as a whole: `PUT /api/v1/firings/{id}/pieces`. */
export const LoadChange = z
  .strictObject({
    pieces: z.array(z.strictObject({ pieceId: Id, routeStepId: Id.nullable().default(null) })).max(60),
    by: z.string().trim().max(80).default(''),
  })
  .meta({ id: 'LoadChange' });
export type LoadChange = z.infer<typeof LoadChange>;

/** One entry of a piece's history. A firing stands at its start, an observation at its instant. */
export const HistoryEntry = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('firing'),
    at: EpochMs,
    firing: FiringSummary,
    as: LoadPiece.describe('What it was when the firing took it in'),
    verdict: FiringVerdict.nullable().describe('Of this piece; null: the firing was judged as a whole only'),
  }),
  z.object({ kind: z.literal('observation'), at: EpochMs, observation: Observation }),
]);
export type HistoryEntry = z.infer<typeof HistoryEntry>;

export const PieceHistory = z
  .object({ piece: Piece, entries: z.array(HistoryEntry).describe('The oldest first') })
  .meta({ id: 'PieceHistory' });
export type PieceHistory = z.infer<typeof PieceHistory>;
