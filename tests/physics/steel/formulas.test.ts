import { describe, expect, it } from 'vitest';
import type { Composition } from '../../../hub/physics/steel/composition.ts';
import { type CompositionFormula, evaluate, readFormula } from '../../../hub/physics/steel/formula.ts';
import {
  ANDREWS_AC1,
  ANDREWS_AC3,
  ELDIS_AC1,
  ELDIS_AC3,
  GRANGE_AC1,
  GRANGE_AC3,
  HOUGARDY_AC1,
  HOUGARDY_AC3,
  TRZASKA_AC1,
  TRZASKA_AC3,
} from '../../../hub/physics/steel/formulas-ac.ts';
import { KASATKIN_AC1, KASATKIN_AC3 } from '../../../hub/physics/steel/formulas-kasatkin.ts';
import { MS_FORMULAS, VAN_BOHEMEN_MS } from '../../../hub/physics/steel/formulas-ms.ts';
import { CRITICAL_ROWS } from '../../reference/steel-critical.ts';

function msFormula(start: string): CompositionFormula {
  const found = MS_FORMULAS.find((formula) => formula.name.startsWith(start));
  if (found === undefined) throw new Error(`no Ms formula ${start}`);
  return found;
}

/** The table is printed to one decimal. */
const ROUNDING = 0.051;

describe('critical-temperature formulas against the published check table', () => {
  it.each(CRITICAL_ROWS)('$steel: Ac1 and Ac3 by Andrews, Grange and Hougardy', (row) => {
    const pairs: readonly (readonly [CompositionFormula, number])[] = [
      [ANDREWS_AC1, row.andrewsAc1],
      [ANDREWS_AC3, row.andrewsAc3],
      [GRANGE_AC1, row.grangeAc1],
      [GRANGE_AC3, row.grangeAc3],
      [HOUGARDY_AC1, row.hougardyAc1],
      [HOUGARDY_AC3, row.hougardyAc3],
    ];
    for (const [formula, celsius] of pairs) {
      expect(Math.abs(evaluate(formula, row.composition) - celsius), formula.name).toBeLessThan(ROUNDING);
    }
  });

  it.each(CRITICAL_ROWS)('$steel: Ms by Andrews (both), van Bohemen and Ingber', (row) => {
    const pairs: readonly (readonly [CompositionFormula, number])[] = [
      [msFormula('Andrews 1965 Ms, linear'), row.msLinear],
      [msFormula('Andrews 1965 Ms, product'), row.msProduct],
      [VAN_BOHEMEN_MS, row.msVanBohemen],
      [msFormula('Ingber'), row.msIngber],
    ];
    for (const [formula, celsius] of pairs) {
      expect(Math.abs(evaluate(formula, row.composition) - celsius), formula.name).toBeLessThan(ROUNDING);
    }
  });

  it('meets the value that Ingber & Kunert print beside their own formula', () => {
    // Source: authors' public code note: C 1.5, Mn 0.5, Si 0.8 gives 14 °C (14.33 by hand).
    const celsius = evaluate(msFormula('Ingber'), { C: 1.5, Mn: 0.5, Si: 0.8 });
    expect(Math.round(celsius)).toBe(14);
    expect(celsius).toBeCloseTo(14.33, 2);
  });
});

describe('signs that are often copied wrongly', () => {
  const base: Composition = { C: 0.3, Mn: 0.7, Si: 0.25 };
  const change = (formula: CompositionFormula, extra: Partial<Composition>) =>
    evaluate(formula, { ...base, ...extra }) - evaluate(formula, base);

  it('Andrews Ac3 rises with the ferrite formers P, Al, As and Ti', () => {
    expect(change(ANDREWS_AC3, { P: 0.1 })).toBeCloseTo(70, 9);
    expect(change(ANDREWS_AC3, { Al: 0.1 })).toBeCloseTo(40, 9);
    expect(change(ANDREWS_AC3, { As: 0.1 })).toBeCloseTo(12, 9);
    expect(change(ANDREWS_AC3, { Ti: 0.1 })).toBeCloseTo(40, 9);
  });

  it('Andrews Ac3 falls with Cu, Cr and Mn', () => {
    expect(change(ANDREWS_AC3, { Cu: 1 })).toBeCloseTo(-20, 9);
    expect(change(ANDREWS_AC3, { Cr: 1 })).toBeCloseTo(-11, 9);
    expect(change(ANDREWS_AC3, { Mn: 1.7 })).toBeCloseTo(-30, 9);
  });

  it('nickel lowers Ac1 and Ac3 in every formula, Kasatkin included', () => {
    const all = [ANDREWS_AC1, GRANGE_AC1, ELDIS_AC1, HOUGARDY_AC1, TRZASKA_AC1, KASATKIN_AC1];
    const all3 = [ANDREWS_AC3, GRANGE_AC3, ELDIS_AC3, HOUGARDY_AC3, TRZASKA_AC3, KASATKIN_AC3];
    for (const formula of [...all, ...all3]) {
      expect(change(formula, { Ni: 1 }), formula.name).toBeLessThan(0);
    }
  });

  it('Kung & Rayment add cobalt and silicon to the linear Andrews form and change nothing else', () => {
    // Source: Kung & Rayment 1982: + 10 Co - 7.5 Si.
    const steel = { C: 0.4, Mn: 0.7, Si: 2, Co: 1 };
    const difference =
      evaluate(msFormula('Kung'), steel) - evaluate(msFormula('Andrews 1965 Ms, linear'), steel);
    expect(difference).toBeCloseTo(-5, 9);
  });
});

describe('formulas that have no published check value', () => {
  it('Eldis, Trzaska and Kasatkin agree with Andrews on 1045 within 30 °C', () => {
    const steel = { C: 0.45, Mn: 0.75, Si: 0.25 };
    for (const formula of [ELDIS_AC1, TRZASKA_AC1, KASATKIN_AC1]) {
      expect(Math.abs(evaluate(formula, steel) - evaluate(ANDREWS_AC1, steel)), formula.name).toBeLessThan(
        30,
      );
    }
    for (const formula of [TRZASKA_AC3, KASATKIN_AC3]) {
      expect(Math.abs(evaluate(formula, steel) - evaluate(ANDREWS_AC3, steel)), formula.name).toBeLessThan(
        30,
      );
    }
    // Eldis reads low: his Ae3 is an equilibrium line, Andrews' Ac3 one on heating.
    expect(evaluate(ELDIS_AC3, steel) - evaluate(ANDREWS_AC3, steel)).toBeCloseTo(-49.2, 0);
  });

  it('gives Fahrenheit formulas back in Celsius', () => {
    // Grange & Stewart 1946 by hand for 0.4 C, 0.7 Mn: 1000 - 260 - 49 = 691 °F = 366.1 °C.
    expect(evaluate(msFormula('Grange'), { C: 0.4, Mn: 0.7 })).toBeCloseTo(366.11, 2);
    // Payson & Savage: 930 - 228 - 42 - 5 = 655 °F; Nehrenberg: 930 - 216 - 42 - 5 = 667 °F.
    expect(evaluate(msFormula('Payson'), base04())).toBeCloseTo(346.11, 2);
    expect(evaluate(msFormula('Nehrenberg'), base04())).toBeCloseTo(352.78, 2);
  });

  it('Steven & Haynes and Trzaska Ms by hand', () => {
    // 561 - 474*0.4 - 33*0.7 - 17*1 = 331.3; 541 - 160.4 - 25.2 - 2.625 - 14 = 338.775.
    expect(evaluate(msFormula('Steven'), { ...base04(), Cr: 1 })).toBeCloseTo(331.3, 6);
    expect(evaluate(msFormula('Trzaska'), { ...base04(), Cr: 1 })).toBeCloseTo(338.775, 6);
  });

  it('names the elements outside a formula, and only those', () => {
    const reading = readFormula(ANDREWS_AC3, { C: 0.9, Mn: 1.2, Cr: 6 });
    expect(reading.outside.map((item) => item.element)).toEqual(['C', 'Cr']);
    expect(readFormula(ANDREWS_AC3, { C: 0.4, Mn: 0.7 }).outside).toEqual([]);
  });
});

function base04(): Composition {
  return { C: 0.4, Mn: 0.7, Si: 0.25 };
}
