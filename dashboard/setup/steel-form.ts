import type { Composition } from '../../hub/contract/compute/steel-choice.ts';
import {
  type MillCertificate,
  MillCertificateDraft,
  type OwnSteel,
  OwnSteelDraft,
  type OwnWindow,
} from '../../hub/contract/own-steel.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type Faults, faultsOf, missing } from '../parts/faults.ts';
import { readIn, writeIn } from '../schedules/entry.ts';
import { type PercentTexts, percentTexts, readComposition } from '../steel/composition.ts';
import { rate, temperature } from '../words/format.ts';
import { ownSteelWords } from '../words/setup-steels.ts';
import { Reader } from './read-texts.ts';
import type { Checked } from './use-text-form.ts';

/** What is typed of an own steel or a mill certificate, and what it means. Temperatures in the shop's unit. */

export interface WindowTexts {
  readonly step: OwnWindow['step'];
  readonly low: string;
  readonly high: string;
  readonly from: string;
  /** Cooling no faster than, degrees an hour; may be empty. */
  readonly rate: string;
  readonly coolTo: string;
  readonly note: string;
}

export interface SteelTexts {
  readonly name: string;
  readonly note: string;
  readonly percents: PercentTexts;
  readonly windows: readonly WindowTexts[];
}

export type SteelValue = ReturnType<typeof OwnSteelDraft.parse>;

export const EMPTY_WINDOW: WindowTexts = {
  step: 'austenitise',
  low: '',
  high: '',
  from: '',
  rate: '',
  coolTo: '',
  note: '',
};

export function steelTexts(steel: OwnSteel | null, unit: DisplayUnit): SteelTexts {
  if (steel === null) return { name: '', note: '', percents: {}, windows: [] };
  return {
    name: steel.name,
    note: steel.note,
    percents: percentTexts(steel.composition as Record<string, number>),
    windows: steel.windows.map((window) => ({
      step: window.step,
      low: writeIn(window.lowCelsius, unit, 'point'),
      high: writeIn(window.highCelsius, unit, 'point'),
      from: window.from,
      rate: writeIn(window.maxCoolingCelsiusPerHour, unit, 'difference'),
      coolTo: writeIn(window.coolToCelsius, unit, 'point'),
      note: window.note,
    })),
  };
}

/** What the form means. Faults by the contract's paths: "composition.C", "windows.0.lowCelsius". */
export function checkSteel(texts: SteelTexts, unit: DisplayUnit): Checked<SteelValue> {
  const reader = new Reader();
  const { composition, faults: percentFaults } = compositionOf(texts.percents);
  const windows = texts.windows.map((window, i) => windowOf(window, `windows.${i}`, reader, unit));
  const draft = { name: texts.name, note: texts.note, composition, windows };
  const parsed = OwnSteelDraft.safeParse(draft);
  const say = (path: string, limit: number) =>
    path.endsWith('PerHour') ? rate(limit, unit) : temperature(limit, unit);
  const faults = {
    ...(parsed.success ? {} : faultsOf(parsed.error.issues, say)),
    ...reader.faults,
    ...percentFaults,
    ...missing({ name: texts.name }),
  };
  return sound(parsed.success ? parsed.data : null, faults);
}

function windowOf(texts: WindowTexts, path: string, reader: Reader, unit: DisplayUnit) {
  const point = (field: string, text: string, optional: boolean) =>
    reader.take(`${path}.${field}`, text, readIn(text, unit, 'point', optional));
  return {
    step: texts.step,
    lowCelsius: point('lowCelsius', texts.low, false),
    highCelsius: point('highCelsius', texts.high, false),
    from: texts.from,
    maxCoolingCelsiusPerHour:
      reader.take(
        `${path}.maxCoolingCelsiusPerHour`,
        texts.rate,
        readIn(texts.rate, unit, 'difference', true),
      ) ?? null,
    coolToCelsius: point('coolToCelsius', texts.coolTo, true) ?? null,
    note: texts.note,
  };
}

export interface CertificateTexts {
  readonly heatNumber: string;
  readonly date: string;
  readonly note: string;
  readonly percents: PercentTexts;
}

export type CertificateValue = ReturnType<typeof MillCertificateDraft.parse>;

export function certificateTexts(certificate: MillCertificate | null): CertificateTexts {
  if (certificate === null) return { heatNumber: '', date: '', note: '', percents: {} };
  const { heatNumber, date, note, composition } = certificate;
  const percents = percentTexts(composition as Record<string, number>);
  return { heatNumber, date: date ?? '', note, percents };
}

export function checkCertificate(texts: CertificateTexts): Checked<CertificateValue> {
  const { composition, faults: percentFaults } = compositionOf(texts.percents);
  const { heatNumber, note } = texts;
  const date = texts.date.trim() === '' ? null : texts.date.trim();
  const parsed = MillCertificateDraft.safeParse({ heatNumber, note, date, composition });
  const faults = {
    ...(parsed.success ? {} : faultsOf(parsed.error.issues)),
    ...percentFaults,
    ...missing({ heatNumber }),
  };
  return sound(parsed.success ? parsed.data : null, faults);
}

/** Only what is no number, and a missing carbon, is refused here: what a steel may hold is the hub's to say. */
function compositionOf(percents: PercentTexts): { composition: Composition | undefined; faults: Faults } {
  const read = readComposition(percents);
  if (!read.ok) {
    const entries = Object.entries(read.faults).map(([element, fault]) => [`composition.${element}`, fault]);
    return { composition: undefined, faults: Object.fromEntries(entries) };
  }
  if (read.composition?.C === undefined) {
    return { composition: undefined, faults: { 'composition.C': ownSteelWords.needsCarbon } };
  }
  return { composition: read.composition, faults: {} };
}

function sound<V>(value: V | null, faults: Faults): Checked<V> {
  // A composition that could not be read stands beside its element, not once more as a whole.
  const { composition: _, ...placed } = faults;
  return { value: Object.keys(placed).length === 0 ? value : null, faults: placed };
}
