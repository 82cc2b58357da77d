import { z } from 'zod';
import { PieceShape } from './compute/piece.ts';
import { Composition } from './compute/steel-choice.ts';
import { StepName } from './compute/steels.ts';
import { Id } from './shop.ts';

/** What lies in the furnace: pieces as a firing freezes them at its start, so that a record stands alone. */

/** The section that decides how long heat takes to reach the middle. */
export const Section = z
  .strictObject({
    shape: PieceShape,
    thicknessMm: z.number().min(0.2).max(1000).describe('Thickness, or diameter of a bar or sphere, mm'),
    massKilograms: z.number().gt(0).max(2000).nullable().default(null),
  })
  .meta({ id: 'Section' });
export type Section = z.infer<typeof Section>;

/** A short mark that can be stamped on the steel or written on a label. */
export const PieceMark = z
  .string()
  .trim()
  .regex(
    /^[A-Za-z0-9][A-Za-z0-9._-]{0,23}$/,
    'letters, digits and . _ - only, starting with a letter or digit, at most 24',
  );

/** One piece of a load, frozen when the firing starts. */
export const LoadPiece = z
  .object({
    pieceId: Id,
    mark: PieceMark,
    title: z.string(),
    steel: z.object({
      id: z.string().nullable().describe('Id in the catalogue or of the own steel; null: composition alone'),
      title: z.string(),
      composition: Composition,
    }),
    section: Section,
    routeStepId: Id.nullable().describe('The step of its route that this firing is for'),
    step: StepName.nullable().describe('What the firing is to this steel; null: not said'),
  })
  .meta({ id: 'LoadPiece' });
export type LoadPiece = z.infer<typeof LoadPiece>;
