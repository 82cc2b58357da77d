import type { AirView } from '../../hub/contract/air.ts';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import { airSetupWords } from '../words/air-setup.ts';
import type { Reader } from './read-texts.ts';

/** What the hub takes as a limit of the shop's own, ppm. */
const LEAST_PPM = 1;
const MOST_PPM = 10_000;

/** What the shop says about its air, as texts; what is chosen from a list keeps its type. */
export interface AirTexts {
  readonly profile: AirView['profile'];
  readonly twa: string;
  readonly stel: string;
  readonly ceiling: string;
  readonly idlh: string;
  readonly source: string;
  readonly workRate: ShopSettings['workRate'];
  readonly room: string;
}

type AirSettings = Pick<ShopSettings, 'airProfile' | 'airCustomLimits' | 'workRate' | 'roomCubicMetres'>;

export function airTexts({ airProfile, airCustomLimits, workRate, roomCubicMetres }: AirSettings): AirTexts {
  const write = (value: number | null | undefined) =>
    value === null || value === undefined ? '' : String(value);
  return {
    profile: airProfile,
    twa: write(airCustomLimits?.twaPpm),
    stel: write(airCustomLimits?.stelPpm),
    ceiling: write(airCustomLimits?.ceilingPpm),
    idlh: write(airCustomLimits?.idlhPpm),
    source: airCustomLimits?.source ?? '',
    workRate,
    room: write(roomCubicMetres),
  };
}

/** The fields as the contract takes them; what cannot be read is noted with the reader. */
export function airFields(texts: AirTexts, reader: Reader) {
  return {
    airProfile: texts.profile,
    airCustomLimits: customLimits(texts, reader),
    workRate: texts.workRate,
    roomCubicMetres: reader.number('roomCubicMetres', texts.room) ?? null,
  };
}

/** Limits that were typed once are kept under another profile too; nothing typed at all is none. */
function customLimits(texts: AirTexts, reader: Reader) {
  const { twa, stel, ceiling, idlh, source } = texts;
  const typed = [twa, stel, ceiling, idlh, source].some((text) => text.trim() !== '');
  if (!typed && texts.profile !== 'custom') return null;
  const limit = (name: string, text: string) => {
    const path = `airCustomLimits.${name}`;
    const value = reader.number(path, text);
    if (value !== undefined && (value < LEAST_PPM || value > MOST_PPM)) {
      reader.faults[path] = airSetupWords.ppmRange(LEAST_PPM, MOST_PPM);
    }
    return value === undefined ? {} : { [name]: value };
  };
  if ([twa, stel, ceiling, idlh].every((text) => text.trim() === '')) {
    reader.faults['airCustomLimits.twaPpm'] = airSetupWords.oneLimit;
  }
  return {
    ...limit('twaPpm', twa),
    ...limit('stelPpm', stel),
    ...limit('ceilingPpm', ceiling),
    ...limit('idlhPpm', idlh),
    source,
  };
}
