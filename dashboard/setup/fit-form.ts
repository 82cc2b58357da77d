import type { z } from 'zod';
import { type FurnaceFit, FurnaceFitTry } from '../../hub/contract/furnace-fit.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import { differenceFromBase } from '../../hub/contract/units.ts';
import { faultsOf, missing } from '../parts/faults.ts';
import { number, unitNamed } from '../words/format.ts';
import { fitWords } from '../words/setup-fit.ts';
import { Reader } from './read-texts.ts';
import type { Checked } from './use-text-form.ts';

export interface FitTexts {
  readonly firingId: string;
  readonly shape: 'plate' | 'bar' | 'sphere';
  readonly thickness: string;
  readonly loadAt: 'core' | 'surface';
  readonly loadChannel: string;
}

export type FitQuestion = z.input<typeof FurnaceFitTry>;

/** What the form asks the hub to try. Faults by the contract's field names. */
export function checkFit(texts: FitTexts): Checked<FitQuestion> {
  const reader = new Reader();
  const { firingId, shape, loadAt } = texts;
  const thicknessMm = reader.number('thicknessMm', texts.thickness);
  const question = { firingId, shape, thicknessMm, loadAt, loadChannel: texts.loadChannel || null };
  const parsed = FurnaceFitTry.safeParse(question);
  const faults = {
    ...(parsed.success ? {} : faultsOf(parsed.error.issues)),
    ...reader.faults,
    ...missing({ firingId, thicknessMm: texts.thickness }),
  };
  return { value: parsed.success && Object.keys(faults).length === 0 ? parsed.data : null, faults };
}

/** The channels that can teach a fit: thermocouples in the work of this furnace. */
export function loadChannels(channels: Iterable<Channel>, furnaceId: string): Channel[] {
  return [...channels].filter(
    (channel) => channel.adopted && channel.furnaceId === furnaceId && channel.role === 'load',
  );
}

/** A difference of temperatures, with a decimal below ten: what a fit leaves is small. */
export function residualText(celsius: number, unit: DisplayUnit): string {
  const shown = unitNamed(unit);
  const value = differenceFromBase(celsius, shown);
  return `${number(value, value < 10 ? 1 : 0)} ${shown.label}`;
}

/** A kept fit in one line, its residual always with it. */
export function fitText(fit: FurnaceFit | null, unit: DisplayUnit): string {
  if (fit === null) return fitWords.usual;
  const film = number(fit.filmWattsPerSquareMetreKelvin, fit.filmWattsPerSquareMetreKelvin < 10 ? 1 : 0);
  return fitWords.kept(number(fit.effectiveEmissivity, 2), film, residualText(fit.residualCelsius, unit));
}
