import { describe, expect, it } from 'vitest';
import { NEXT_MOVES } from '../../hub/contract/firing.ts';
import { LANGUAGES } from '../../hub/contract/language.ts';
import { ShopSettings } from '../../hub/contract/shop.ts';
import { EVENTS as DE_EVENTS } from '../../hub/contract/words/de-events.ts';
import { MOVES as DE_MOVES } from '../../hub/contract/words/de-moves.ts';
import { CLOCK as DE_CLOCK, REASONS as DE_REASONS } from '../../hub/contract/words/de-reasons.ts';
import { EVENTS } from '../../hub/contract/words/en-events.ts';
import { MOVES } from '../../hub/contract/words/en-moves.ts';
import { CLOCK, REASONS } from '../../hub/contract/words/en-reasons.ts';
import { fill, placesOf } from '../../hub/contract/words/fill.ts';
import { REASON_CODES } from '../../hub/contract/words/types.ts';
import { words } from '../../hub/contract/words/words.ts';

type Table = Readonly<Record<string, string>>;
const TABLES: readonly [name: string, english: Table, german: Table][] = [
  ['next moves', MOVES, DE_MOVES],
  ['reasons', REASONS, DE_REASONS],
  ['soak clock', CLOCK, DE_CLOCK],
  ['events', EVENTS, DE_EVENTS],
];

const WIDEST = {
  targetCelsius: 1290,
  limitCelsius: 1300,
  secondsLeft: 35_880,
  secondsAhead: 42,
  leastCelsiusPerHour: 1450,
  mostCelsiusPerHour: 1450,
};

describe.each(TABLES)('the table of %s', (_name, english, german) => {
  it('has the same sentences in both languages, with the same places for numbers', () => {
    expect(new Set(Object.keys(german))).toEqual(new Set(Object.keys(english)));
    for (const [key, template] of Object.entries(english)) {
      expect([key, placesOf(german[key] ?? '')]).toEqual([key, placesOf(template)]);
    }
  });

  it('is not the English one over again', () => {
    const same = Object.entries(english).filter(([key, template]) => german[key] === template);
    // What is nothing but places may stay.
    expect(same.filter(([, template]) => /[a-z]/.test(template.replace(/\{[a-z]+\}/gi, '')))).toEqual([]);
  });
});

describe.each(LANGUAGES)('in %s', (language) => {
  const say = words(language);

  it('every next move and reason has words, whatever is known', () => {
    const params = [{}, WIDEST, { ...WIDEST, direction: 'down' }, { ...WIDEST, furnaceKind: 'gas-forge' }];
    const told = params.flatMap((one) => [
      ...NEXT_MOVES.map((code) => say.nextMove(code, one, '[degF]')),
      ...REASON_CODES.map((code) => say.reason(code, one, 'Cel')),
    ]);
    expect(told.filter((text) => text === '' || /\{|undefined|NaN/.test(text))).toEqual([]);
  });

  it('every next move fits the wall: at most 34 characters', () => {
    const kinds = ['gas-forge', 'electric-oven', 'salt-bath'];
    const wide = kinds.flatMap((furnaceKind) =>
      [{}, { direction: 'down' }, { soaked: 1 }, { counting: 1 }].map((more) => ({
        ...WIDEST,
        furnaceKind,
        ...more,
      })),
    );
    const told = wide.flatMap((one) => NEXT_MOVES.map((code) => say.nextMove(code, one, '[degF]')));
    expect(told.filter((text) => text.length > 34)).toEqual([]);
  });
});

describe('the language of the shop', () => {
  it('is English until somebody chooses', () => {
    expect(ShopSettings.parse({}).language).toBe('en');
    expect(ShopSettings.safeParse({ language: 'xx' }).success).toBe(false);
  });

  it('says the trade words of each', () => {
    const move = { ...WIDEST, furnaceKind: 'gas-forge', limitCelsius: 868, secondsAhead: 40 };
    expect(words('en').nextMove('ease-off', move, 'Cel')).toBe('Gas down a little: 868 °C in 40 s');
    expect(words('de').nextMove('ease-off', move, 'Cel')).toBe('Gas etwas zurück: 868 °C in 40 s');
    expect(words('de').reason('short-overshoot', { overCelsius: 1.25, seconds: 8 }, 'Cel')).toContain(
      '1,3 °C',
    );
  });

  it('refuses a template that names what nobody knows', () => {
    expect(() => fill('{nobody}', { somebody: '1' })).toThrow('word-place-unknown');
  });
});
