import type { z } from 'zod';
import { FurnaceFitAnswer, FurnaceFitQuestion } from '../../../contract/compute/furnace-fit.ts';
import { showPlusMinus } from '../../../contract/significant.ts';
import { PhysicsError } from '../../../physics/errors.ts';
import { computation } from './computation.ts';
import { fitApart } from './fit-apart.ts';
import type { FitOrder } from './fit-order.ts';

export const furnaceFit = computation({
  name: 'furnace-fit',
  summary: "A furnace's own emissivity and film coefficient, fitted to a recorded run",
  question: FurnaceFitQuestion,
  answer: FurnaceFitAnswer,
  run: ({ run, loadAt, ...piece }) => fitAnswer({ piece, run, loadAt }),
});

/**
 * Fits in the worker and says what was found.
 *
 * @throws WatchError with the code of the refusal; PhysicsError `no-solution` when the run determines neither number
 */
export async function fitAnswer(order: FitOrder): Promise<z.infer<typeof FurnaceFitAnswer>> {
  const { filmWM2K, ...fit } = await fitApart(order);
  requireDetermined(fit.emissivityStandardError, fit.filmStandardError, fit.correlation);
  return {
    ...fit,
    filmWattsPerSquareMetreKelvin: filmWM2K,
    shown: {
      emissivity: showPlusMinus(fit.emissivity, 2 * fit.emissivityStandardError, ''),
      filmWattsPerSquareMetreKelvin: showPlusMinus(filmWM2K, 2 * fit.filmStandardError, 'W/(m² K)'),
    },
    source: 'least squares (Levenberg-Marquardt) on the conduction model; ± is two standard errors',
  };
}

/** Where neither number changes the load, the errors have no size: JSON could not even carry them. */
function requireDetermined(...figures: readonly number[]): void {
  if (figures.every(Number.isFinite)) return;
  throw new PhysicsError('no-solution', 'this run does not determine emissivity and film coefficient');
}
