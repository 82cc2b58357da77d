import type { z } from 'zod';
import type { MagnetAnswer } from '../../hub/contract/compute/critical-temperatures.ts';
import type { Flag } from '../../hub/contract/compute/estimate.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { degreesDifference, unitNamed } from '../words/format.ts';
import { magnetWords } from '../words/steel-magnet.ts';
import type { Critical } from './scale-rows.ts';
import { bandText, valueText } from './shown.ts';

type Magnet = z.infer<typeof MagnetAnswer>;

/** What the smith adds by eye in the magnet rule that the hub answers with the critical temperatures, °C. */
const OFFSET_CELSIUS = 100;

export interface MagnetSentences {
  /** One sentence, to be read first. */
  readonly verdict: string;
  /** Where it lets go, and what comes of adding to it. */
  readonly rest: readonly string[];
}

/** The magnet answer in sentences, for this steel and in this unit. Pure. */
export function magnetSentences(title: string, critical: Critical, unit: DisplayUnit): MagnetSentences {
  const { magnet } = critical;
  const { lost, plus } = magnet;
  if (lost.value === null || plus.value === null) {
    return { verdict: magnetWords.doNotUse(title), rest: [lost.value === null ? lost.reason.message : ''] };
  }
  const offset = `${degreesDifference(OFFSET_CELSIUS, unit)} ${unitNamed(unit).label}`;
  const meanings = magnet.meaning.map((flag) => meaningOf(flag, critical, unit));
  return {
    verdict: magnetWords.verdict(title, offset, valueText(plus, unit), verdictEnd(magnet)),
    rest: [
      magnetWords.lost(bandText(lost, unit), magnetWords.cause[magnet.cause ?? 'curie']),
      magnetWords.proves[magnet.proves],
      magnetWords.plus(bandText(plus, unit)),
      ...meanings,
    ],
  };
}

function verdictEnd({ meaning }: Magnet): string {
  const codes = new Set(meaning.map(({ code }) => code));
  const first = magnetWords.verdicts.find(([code]) => codes.has(code));
  return first === undefined ? '' : first[1];
}

/** The hub's remark in the unit that is shown; its own words where this page has none for the code. */
function meaningOf({ code, message }: Flag, { magnet, ac3 }: Critical, unit: DisplayUnit): string {
  const above = magnet.plus.value === null || ac3.value === null ? null : magnet.plus.value - ac3.value;
  const say = magnetWords.meaning[code];
  if (say === undefined) return message;
  return say(above === null ? '' : `${degreesDifference(above, unit)} ${unitNamed(unit).label}`);
}
