import { FurnaceFitAnswer, FurnaceFitQuestion } from '../../../contract/compute/furnace-fit.ts';
import { showPlusMinus } from '../../../contract/significant.ts';
import { PhysicsError } from '../../../physics/errors.ts';
import { fitFurnace } from '../../../physics/heat/furnace-fit.ts';
import { evenly, workMeter } from './bounds.ts';
import { computation } from './computation.ts';
import { bodyOf } from './pieces.ts';

/**
 * A fit follows the piece some forty times. A longer run is thinned to this many points, and one that costs more
 * than the bound all the same (a thin piece in a chamber that swings for hours) is refused. It is the dearest of
 * all questions: up to about 0.4 s of the hub's thread, and asked only when somebody fits a furnace.
 */
const MOST_SETTLED = 1_000_000;
const MOST_POINTS_FITTED = 60;
const INTERVALS = 6;

export const furnaceFit = computation({
  name: 'furnace-fit',
  summary: "A furnace's own emissivity and film coefficient, fitted to a recorded run",
  question: FurnaceFitQuestion,
  answer: FurnaceFitAnswer,
  run: ({ run, loadAt, ...piece }) => {
    const body = bodyOf(piece, workMeter(MOST_SETTLED), INTERVALS);
    const { filmWM2K, ...fit } = fitFurnace({ body, run: evenly(run, MOST_POINTS_FITTED), loadAt });
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
  },
});

/** Where neither number changes the load, the errors have no size: JSON could not even carry them. */
function requireDetermined(...figures: readonly number[]): void {
  if (figures.every(Number.isFinite)) return;
  throw new PhysicsError('no-solution', 'this run does not determine emissivity and film coefficient');
}
