import type { Flag } from '../../../contract/compute/estimate.ts';
import type { ExposureFrom, Medium } from '../../../contract/compute/piece.ts';
import { FIT_DOUBTFUL_CELSIUS, type FurnaceFit } from '../../../contract/furnace-fit.ts';
import type { Furnace } from '../../../contract/shop.ts';
import { showTo } from '../../../contract/significant.ts';
import { mediumOf } from '../../../physics/heat/media.ts';
import { usualFurnace } from '../../../physics/heat/usual-furnace.ts';
import type { World } from './world.ts';

/** What a piece meets, and how that is known: asked for, a medium's, fitted to this furnace, or usual. */

/** Oxidised steel in still gas (common practice; from memory: Incropera). */
const USUAL = { emissivity: 0.8, filmWattsPerSquareMetreKelvin: 10 } as const;
/** A pair that the run could not take apart is taken this far beyond the heat of its run, K. Ours. */
const FAR_CELSIUS = 100;

interface ExposureQuestion {
  readonly surroundingsCelsius: number;
  readonly emissivity?: number | undefined;
  readonly filmWattsPerSquareMetreKelvin?: number | undefined;
  readonly medium?: Medium | undefined;
  readonly furnace?: string | undefined;
}

export interface MetExposure {
  readonly exposure: { readonly emissivity: number; readonly filmWattsPerSquareMetreKelvin: number };
  readonly exposureFrom: ExposureFrom;
}

/** @throws WatchError `not-found` for a furnace that is not there */
export function exposureOf(question: ExposureQuestion, world: Pick<World, 'furnace'>): MetExposure {
  if (question.medium !== undefined) return ofMedium(question.medium);
  if (question.furnace !== undefined)
    return ofFurnace(world.furnace(question.furnace), question.surroundingsCelsius);
  const { emissivity, filmWattsPerSquareMetreKelvin } = question;
  const exposure = {
    emissivity: emissivity ?? USUAL.emissivity,
    filmWattsPerSquareMetreKelvin: filmWattsPerSquareMetreKelvin ?? USUAL.filmWattsPerSquareMetreKelvin,
  };
  const none = emissivity === undefined && filmWattsPerSquareMetreKelvin === undefined;
  return none
    ? { exposure, exposureFrom: from('usual', 'Usual values of oxidised steel in still gas') }
    : { exposure, exposureFrom: from('asked', 'As asked; usual values of still gas where nothing was said') };
}

function from(by: ExposureFrom['by'], text: string): ExposureFrom {
  return { by, furnaceId: null, residualCelsius: null, text, flags: [] };
}

function ofMedium(medium: Medium): MetExposure {
  const { emissivity, filmWM2K } = mediumOf(medium);
  const exposure = { emissivity: emissivity.value, filmWattsPerSquareMetreKelvin: filmWM2K.value };
  return { exposure, exposureFrom: from('medium', 'Typical values of the medium') };
}

function ofFurnace(furnace: Furnace, surroundingsCelsius: number): MetExposure {
  const { id, name, kind, fit } = furnace;
  if (fit === null) {
    const { emissivity, filmWM2K } = usualFurnace(kind);
    const text = `${name} was never fitted: usual values of a furnace of its kind (common practice)`;
    return {
      exposure: { emissivity: emissivity.value, filmWattsPerSquareMetreKelvin: filmWM2K.value },
      exposureFrom: { ...from('usual-of-kind', text), furnaceId: id },
    };
  }
  const { effectiveEmissivity: emissivity, filmWattsPerSquareMetreKelvin, residualCelsius } = fit;
  const text = `Fitted to ${name}; the fit leaves ${showResidual(residualCelsius)} (rms) of its load thermocouple`;
  const flags = fitFlags(fit, surroundingsCelsius);
  return {
    exposure: { emissivity, filmWattsPerSquareMetreKelvin },
    exposureFrom: { by: 'furnace-fit', furnaceId: id, residualCelsius, text, flags },
  };
}

/** One decimal below 10 K: a thermometer's step is a quarter degree. */
export function showResidual(residualCelsius: number): string {
  return showTo(residualCelsius, residualCelsius < 10 ? -1 : 0, '°C');
}

function fitFlags(fit: FurnaceFit, surroundingsCelsius: number): Flag[] {
  const { residualCelsius, separated, loadLowCelsius, loadHighCelsius } = fit;
  const flags: Flag[] = [];
  if (residualCelsius > FIT_DOUBTFUL_CELSIUS) {
    const message = `The fit leaves ${showResidual(residualCelsius)}: it describes this furnace roughly only`;
    flags.push({ code: 'doubtful-fit', message });
  }
  const low = (loadLowCelsius ?? Number.NEGATIVE_INFINITY) - FAR_CELSIUS;
  const high = (loadHighCelsius ?? Number.POSITIVE_INFINITY) + FAR_CELSIUS;
  if (!separated && (surroundingsCelsius < low || surroundingsCelsius > high)) {
    const message =
      'The run could not tell radiation from convection, and this is far from the heat that it was made at: fit the furnace again at this heat';
    flags.push({ code: 'far-from-fit', message });
  }
  return flags;
}
