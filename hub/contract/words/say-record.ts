import type { Params } from '../alarm.ts';
import type { FiringVerdict } from '../firing.ts';
import type { JudgedWhy } from '../firing-record.ts';
import type {
  FigureCautionCode,
  NoClaimCode,
  PieceFigure,
  PieceFigureKind,
  PieceReasonCode,
} from '../firing-record-piece.ts';
import type { DisplayUnit } from '../schedule.ts';
import { significantStep } from '../significant.ts';
import { CAUTION, FIGURE, FIGURE_NAME, JUDGED, NO_CLAIM, PIECE, VERDICT, WAS } from './en-record.ts';
import { fill } from './fill.ts';
import { numberOf, textOf } from './format.ts';
import type { Numbers } from './numbers.ts';

/** Which sentences of a language tell of a piece in a record, and with which numbers. */

type Table<Of> = Readonly<Record<keyof Of, string>>;

export interface RecordTables {
  readonly piece: Table<typeof PIECE>;
  readonly verdict: Table<typeof VERDICT>;
  readonly judged: Table<typeof JUDGED>;
  readonly was: Table<typeof WAS>;
  readonly figure: Table<typeof FIGURE>;
  readonly figureName: Table<typeof FIGURE_NAME>;
  readonly caution: Table<typeof CAUTION>;
  readonly noClaim: Table<typeof NO_CLAIM>;
}

export const ENGLISH_RECORD: RecordTables = {
  piece: PIECE,
  verdict: VERDICT,
  judged: JUDGED,
  was: WAS,
  figure: FIGURE,
  figureName: FIGURE_NAME,
  caution: CAUTION,
  noClaim: NO_CLAIM,
};

export type FigureSaid = Pick<PieceFigure, 'kind' | 'low' | 'value' | 'high' | 'unit'>;

/** Everything that a record says of pieces, in one language. */
export interface RecordWords {
  reason(code: PieceReasonCode, params: Params, unit: DisplayUnit): string;
  verdict(verdict: FiringVerdict, why: string | null): string;
  judgedAgain(why: JudgedWhy, rules: string, was: FiringVerdict): string;
  figure(figure: FigureSaid): string;
  figureName(kind: PieceFigureKind): string;
  caution(code: FigureCautionCode): string;
  noClaim(code: NoClaimCode): string;
}

export function recordTeller(tables: RecordTables, say: Numbers, decimalPoint: string): RecordWords {
  return {
    reason: (code, params, unit) => fill(tables.piece[code], valuesOf(params, unit, say, decimalPoint)),
    verdict(verdict, why) {
      if (verdict === 'pending') return tables.verdict.pending;
      if (verdict === 'met' && why === null) return tables.verdict['met.plain'];
      return fill(tables.verdict[verdict], { why: why ?? '?' });
    },
    judgedAgain: (why, rules, was) => fill(tables.judged[why], { rules, was: tables.was[was] }),
    figure: (figure) => figureText(tables, figure, decimalPoint),
    figureName: (kind) => tables.figureName[kind],
    caution: (code) => tables.caution[code],
    noClaim: (code) => tables.noClaim[code],
  };
}

function valuesOf(params: Params, unit: DisplayUnit, say: Numbers, decimalPoint: string) {
  const number = (name: string) => numberOf(params, name);
  const plain = (name: string) => {
    const value = number(name);
    return value === null ? '?' : String(Math.round(value * 10) / 10).replace('.', decimalPoint);
  };
  return {
    segment: plain('segment'),
    why: textOf(params, 'why', '?'),
    steel: textOf(params, 'steel', '?'),
    fluid: textOf(params, 'fluid', '?'),
    limit: say.temperature(number('limitCelsius'), unit),
    target: say.temperature(number('targetCelsius'), unit),
    reached: say.temperature(number('reachedCelsius'), unit),
    peak: say.temperature(number('peakCelsius'), unit),
    lowTemp: say.temperature(number('lowCelsius'), unit),
    highTemp: say.temperature(number('highCelsius'), unit),
    slack: say.difference(number('uncertaintyCelsius'), unit),
    to: say.temperature(number('toCelsius'), unit),
    soak: say.elapsed(number('soakSeconds')),
    planned: say.elapsed(number('plannedSeconds')),
    low: say.elapsed(number('lowSeconds')),
    rate: say.rate(number('measuredCelsiusPerHour'), unit),
    worstRate: say.rate(number('worstCelsiusPerHour'), unit),
    rateLimit: say.rate(number('limitCelsiusPerHour'), unit),
    thickness: plain('thicknessMm'),
    critical: plain('criticalMm'),
    hrc: whole(number('valueHrc')),
    lowHrc: whole(number('lowHrc')),
    highHrc: whole(number('highHrc')),
    wantedHrc: plain('wantedHrc'),
  };
}

function whole(value: number | null): string {
  return value === null ? '?' : String(Math.round(value));
}

const UNITS: Readonly<Record<PieceFigure['unit'], string>> = {
  mm: 'mm',
  um: 'µm',
  h: 'h',
  HRC: 'HRC',
  K: 'K',
};

/** Digits as the band allows, the same for all three; a figure without a band keeps three. */
function figureText(
  tables: RecordTables,
  { kind, low, value, high, unit }: FigureSaid,
  point: string,
): string {
  if (low === null || value === null || high === null) {
    return fill(tables.figure.none, { name: tables.figureName[kind] });
  }
  const step = significantStep((high - low) / 2);
  const text = (one: number) => shownTo(one, step).replace('.', point);
  return fill(tables.figure[kind], {
    low: text(low),
    value: text(value),
    high: text(high),
    unit: UNITS[unit],
  });
}

function shownTo(value: number, step: number): string {
  if (step === 0) return String(Number(value.toPrecision(3)));
  return (Math.round(value / step) * step).toFixed(Math.max(0, -Math.round(Math.log10(step))));
}
