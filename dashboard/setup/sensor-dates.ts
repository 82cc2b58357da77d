import type { Channel } from '../../hub/contract/shop.ts';
import type { Quantity } from '../../hub/contract/units.ts';
import { airSetupWords } from '../words/air-setup.ts';
import type { Reader } from './read-texts.ts';

/** Dates of a gas sensor as a form holds them: "2026-11-25", empty: not known. The day is that of this screen. */
export interface SensorDateTexts {
  readonly calibratedAt: string;
  readonly calibrationDueAt: string;
  readonly endOfLifeAt: string;
}

export const NO_DATES: SensorDateTexts = { calibratedAt: '', calibrationDueAt: '', endOfLifeAt: '' };

/** True for what has a cell that ages: the gases. */
export function hasDates(quantity: Quantity): boolean {
  return quantity === 'carbon-monoxide' || quantity === 'carbon-dioxide' || quantity === 'oxygen';
}

export function dateTexts(channel: Pick<Channel, keyof SensorDateTexts>): SensorDateTexts {
  return {
    calibratedAt: writeDate(channel.calibratedAt),
    calibrationDueAt: writeDate(channel.calibrationDueAt),
    endOfLifeAt: writeDate(channel.endOfLifeAt),
  };
}

export interface SensorDates {
  readonly calibratedAt: number | null;
  readonly calibrationDueAt: number | null;
  readonly endOfLifeAt: number | null;
}

/**
 * The dates as instants, epoch ms: the first of the day named. A text that still says the day of `before` keeps its
 * very instant, so that opening and saving a form moves nothing.
 */
export function datesOf(texts: SensorDateTexts, reader: Reader, before: SensorDates | null): SensorDates {
  const read = (path: keyof SensorDateTexts) => {
    const text = texts[path].trim();
    const known = before?.[path] ?? null;
    if (known !== null && writeDate(known) === text) return known;
    const at = readDate(text);
    if (at === undefined) reader.faults[path] = airSetupWords.noDate;
    return at ?? null;
  };
  return {
    calibratedAt: read('calibratedAt'),
    calibrationDueAt: read('calibrationDueAt'),
    endOfLifeAt: read('endOfLifeAt'),
  };
}

function writeDate(at: number | null): string {
  if (at === null) return '';
  const date = new Date(at);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** The start of a day; null: none was named; undefined: there is no such day. */
function readDate(text: string): number | null | undefined {
  if (text === '') return null;
  const [, year = '', month = '', day = ''] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text) ?? [];
  const at = new Date(Number(year), Number(month) - 1, Number(day)).getTime();
  // 31 February would become a day of March.
  return year !== '' && at >= 0 && writeDate(at) === text ? at : undefined;
}
