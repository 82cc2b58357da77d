import type { RecordPiece } from '../../hub/contract/firing-record-piece.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { findingWords } from '../words/findings.ts';
import { rate, temperature } from '../words/format.ts';
import { span } from '../words/span.ts';

/** What a piece went through, as names and values in the unit that people see. Pure. */
export interface PieceFact {
  readonly name: string;
  readonly value: string;
}

export function pieceFacts(piece: RecordPiece, unit: DisplayUnit): PieceFact[] {
  const { window, coolingCelsiusPerHour: cooling, secondsAboveWindow: above } = piece;
  const facts: PieceFact[] = [
    { name: findingWords.held, value: heldText(piece, unit) },
    { name: findingWords.middle, value: timeText(piece.soakSeconds) },
    { name: findingWords.air, value: timeText(piece.airSoakSeconds) },
    { name: findingWords.peak, value: peakText(piece, unit) },
  ];
  if (window !== null) {
    const wanted = findingWords.windowOf(
      temperature(window.lowCelsius, unit),
      temperature(window.highCelsius, unit),
    );
    facts.push({ name: findingWords.window, value: wanted });
  }
  if (above !== null && above >= 1) facts.push({ name: findingWords.above, value: span(above) });
  if (cooling !== null) facts.push({ name: findingWords.cooling, value: rate(cooling, unit) });
  return facts;
}

export function heldText({ heldCelsius }: RecordPiece, unit: DisplayUnit): string {
  return heldCelsius === null ? findingWords.unknown : temperature(heldCelsius, unit);
}

export function peakText({ peakCelsius, surfacePeakCelsius }: RecordPiece, unit: DisplayUnit): string {
  if (peakCelsius === null || surfacePeakCelsius === null) return findingWords.unknown;
  return `${temperature(peakCelsius.value, unit)} / ${temperature(surfacePeakCelsius, unit)}`;
}

export function timeText(seconds: number | null): string {
  return seconds === null ? findingWords.unknown : span(seconds);
}

/** The figures that claim something, as one line. */
export function claimed({ figures }: RecordPiece): string {
  return figures
    .filter(({ value }) => value !== null)
    .map(({ text }) => text)
    .join('. ');
}
