import { describe, expect, it } from 'vitest';
import {
  FIGURE_CAUTIONS,
  NO_CLAIMS,
  PIECE_FIGURES,
  PIECE_REASONS,
} from '../../hub/contract/firing-record-piece.ts';
import { RECORD } from '../../hub/contract/words/de-record.ts';
import { placesOf } from '../../hub/contract/words/fill.ts';
import { ENGLISH_RECORD, type RecordTables } from '../../hub/contract/words/say-record.ts';
import { words } from '../../hub/contract/words/words.ts';

const LANGUAGES = ['en', 'de'] as const;
const figure = { kind: 'scale', low: 0.04, value: 0.083, high: 0.17, unit: 'mm' } as const;

describe('what a record says of pieces', () => {
  it('names the same places in both languages', () => {
    for (const name of Object.keys(ENGLISH_RECORD) as (keyof RecordTables)[]) {
      const places = (tables: RecordTables) =>
        Object.entries(tables[name]).map(([key, text]) => `${key} ${placesOf(text)}`);
      expect(places(RECORD)).toEqual(places(ENGLISH_RECORD));
    }
  });

  it('has a sentence without holes for every code, whatever is known, and never calls anything safe', () => {
    for (const language of LANGUAGES) {
      const say = words(language).record;
      const all = [
        ...PIECE_REASONS.map((code) => say.reason(code, {}, '[degF]')),
        ...FIGURE_CAUTIONS.map(say.caution),
        ...NO_CLAIMS.map(say.noClaim),
        ...PIECE_FIGURES.map((kind) => say.figure({ ...figure, kind })),
        ...PIECE_FIGURES.map((kind) => say.figure({ kind, low: null, value: null, high: null, unit: 'mm' })),
      ];
      for (const text of all) expect(text).not.toMatch(/undefined|null|NaN|\{|\b[Ss]afe|sicher/);
      expect(new Set(all).size).toBeGreaterThan(40);
    }
  });

  it('shows a figure with as many digits as its band allows, and the decimal point of the language', () => {
    expect(words('en').record.figure(figure)).toBe('Scale 0.08 mm (0.04–0.17)');
    expect(words('de').record.figure(figure)).toBe('Zunder 0,08 mm (0,04–0,17)');
  });

  it('says the verdict with the reason that made it, temperatures in the unit of the schedule', () => {
    const say = words('en').record;
    const why = say.reason('harden-above-window', { reachedCelsius: 900, limitCelsius: 815 }, '[degF]');
    expect(say.verdict('not-met', why)).toMatch(/^Not met: Its skin reached 1652 °F, above .* 1499 °F/);
    expect(say.verdict('met', null)).toBe('Met');
    expect(say.judgedAgain('newer-rules', 'firing-3/record-1', 'met-with-doubts')).toBe(
      'Judged again by rules firing-3/record-1: met with doubts',
    );
  });
});
