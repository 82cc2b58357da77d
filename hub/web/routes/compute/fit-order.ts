import type { FurnaceFitQuestion } from '../../../contract/compute/furnace-fit.ts';
import type { ProblemCode } from '../../../contract/problem.ts';
import type { FurnaceFit } from '../../../physics/heat/furnace-fit.ts';

/** What goes to the thread that fits a furnace, and what comes back: plain data, for it is copied. */

export interface FitOrder {
  readonly piece: Pick<FurnaceFitQuestion, 'shape' | 'thicknessMm' | 'material'>;
  readonly run: FurnaceFitQuestion['run'];
  readonly loadAt: FurnaceFitQuestion['loadAt'];
}

export type FitReply =
  | { readonly fit: FurnaceFit; readonly refusal: null }
  | { readonly fit: null; readonly refusal: { readonly code: ProblemCode; readonly message: string } };
