import type { RecordAir } from '../../hub/contract/firing-record.ts';
import type { GasUsed } from '../../hub/contract/gas.ts';
import { number } from './format.ts';
import { dayAndTime, duration, timeOfDay } from './time.ts';

/** Words of what a firing did to its pieces, on the screen and on paper. */

export const findingWords = {
  head: 'Pieces',
  asking: 'Asking the hub what it did to the pieces',
  failed: 'What this firing did to its pieces could not be read',
  noPieces: 'Nobody said what lay in it, so nothing is said of a piece.',
  stillRuns: 'The pieces are judged when the firing is over.',
  held: 'Held at',
  window: 'Wanted',
  windowOf: (low: string, high: string) => (low === high ? `about ${low}` : `${low} to ${high}`),
  middle: 'Middle at heat',
  air: 'Air at heat',
  peak: 'Hottest: middle / skin',
  above: 'Skin above window',
  cooling: 'Cooled at',
  unknown: 'not known',
  figures: 'Figures, and what they do not say',
  reasons: 'Reasons',
  caution: (text: string) => ` (${text})`,
  source: (text: string) => ` Source: ${text}.`,
  byCore: 'computed from the readings',
  byProbe: 'by the probe on the load',
  byAir: 'by the air alone',
  core: (mark: string) => `Middle of ${mark}, computed`,
  beside: 'Air and gas in the meantime',
  earlier: 'Judged before',
  earlierAt: (at: number, text: string) => `${dayAndTime(at)}: ${text}`,
  rules: (judge: string, record: string) => `Judged by rules ${judge}/${record}.`,
  probes: 'Probes in force',
  heads: {
    piece: 'Piece',
    verdict: 'Verdict',
    held: 'Held / hottest',
    soak: 'At heat: middle / air',
    figures: 'Figures',
  },
  morePieces: (count: number) => `and ${count} more pieces in the record (JSON)`,
  limits: 'What each figure does not say stands in the record (JSON).',
} as const;

/** Carbon monoxide at one place, as it was measured: never that the air was good. */
export function airSaid({
  label,
  peakPpm,
  peakAt,
  worstQuarterHourPpm,
  meanPpm,
  ...time
}: RecordAir): string {
  if (peakPpm === null || meanPpm === null) return `${label}: carbon monoxide was not measured.`;
  const worst = worstQuarterHourPpm === null ? '' : `, worst 15 min ${ppm(worstQuarterHourPpm)}`;
  const silent =
    time.notMeasuredSeconds < 60 ? '' : `; for ${duration(time.notMeasuredSeconds)} nothing was measured`;
  const at = peakAt === null ? '' : ` at ${timeOfDay(peakAt)}`;
  return `${label}: carbon monoxide ${ppm(peakPpm)} at most${at}${worst}, mean ${ppm(meanPpm)}${silent}.`;
}

function ppm(value: number): string {
  return `${number(value, value < 10 ? 1 : 0)} ppm`;
}

export function gasSaid({ kilograms: { low, value, high }, text }: GasUsed): string {
  const kg = (one: number) => number(one, 2);
  return `Gas: ${kg(value)} kg (${kg(low)}–${kg(high)}). ${text}`;
}
