import { describe, expect, it } from 'vitest';
import { resampled } from '../../../dashboard/heat/cooling-picture.ts';
import { readCool, readHeat, startTexts } from '../../../dashboard/heat/form.ts';
import { GLOWS } from '../../../dashboard/heat/glows.ts';
import { profile } from '../../../dashboard/heat/plot-under.ts';
import { wordsIndex } from '../../../dashboard/heat/plot-words.ts';
import { buriedQuestion, chamberAt, chamberCurve, soakQuestions } from '../../../dashboard/heat/questions.ts';

const TEXTS = startTexts('Cel', 'kind:gas-forge');

function plan(more: Partial<typeof TEXTS>) {
  const read = readHeat({ ...TEXTS, ...more }).plan;
  if (read === null) throw new Error('the test asks what cannot be read');
  return read;
}

describe('curves put on a common time', () => {
  it('are straight between their points', () => {
    expect(resampled([0, 10, 20], [100, 50, 40], [0, 5, 10, 15])).toEqual([100, 75, 50, 45]);
  });

  it('say nothing after their end: a curve that stopped is not drawn on', () => {
    expect(resampled([0, 10], [100, 50], [10, 11])).toEqual([50, null]);
    expect(resampled([], [], [1])).toEqual([null]);
  });
});

describe('the words on a curve', () => {
  it('stand where it passes a share of its own height, rising or falling', () => {
    expect(wordsIndex({ y: [0, 20, 60, 100], wordsAt: 0.5 })).toBe(2);
    expect(wordsIndex({ y: [null, 100, 40, 0], wordsAt: 0.5 })).toBe(2);
  });

  it('stand nowhere on a curve without a value', () => {
    expect(wordsIndex({ y: [null, null] })).toBe(-1);
  });
});

describe('the chamber', () => {
  it('climbs at its rate and stands then', () => {
    const climbing = plan({ lit: 'cold', rate: '415' });
    expect(chamberCurve(climbing)).toEqual([
      { atSeconds: 0, celsius: 20 },
      { atSeconds: 7200, celsius: 850 },
    ]);
    expect(chamberAt(climbing, 3600)).toBeCloseTo(435);
    expect(chamberAt(climbing, 9999)).toBe(850);
  });

  it('is no curve while it stands at its heat, and none when it would have to fall', () => {
    expect(chamberCurve(plan({}))).toBeUndefined();
    expect(chamberCurve(plan({ lit: 'cold', start: '900' }))).toBeUndefined();
  });

  it('is asked once for all sections while it stands, and once a section while it climbs', () => {
    const heating = { emissivity: 0.8, filmWattsPerSquareMetreKelvin: 10 };
    expect(soakQuestions(plan({}), heating, [10, 20, 30])).toHaveLength(1);
    expect(soakQuestions(plan({ lit: 'cold' }), heating, [10, 20, 30])).toHaveLength(3);
    expect(soakQuestions(plan({}), heating, [])).toEqual([]);
  });
});

describe('a bar that is buried', () => {
  it('is asked with its own section: π d² / 4 when it is round', () => {
    const round = readCool({ ...TEXTS, thickness: '20' }).plan;
    const flat = readCool({ ...TEXTS, shape: 'plate', thickness: '6', width: '40' }).plan;
    const area = (one: typeof round) => {
      const { widthMm, thicknessMm } = one ? buriedQuestion(one, 'ash') : { widthMm: 0, thicknessMm: 0 };
      return widthMm * thicknessMm;
    };
    expect(area(round)).toBeCloseTo(314.159, 3);
    expect(area(flat)).toBe(240);
  });
});

describe('the cut through the piece', () => {
  it('is the core in the middle and the skin at the edge', () => {
    expect([profile(0), profile(1)]).toEqual([0, 1]);
    // The mean of a plate that warms evenly stands a third of the way from core to skin (Carslaw and Jaeger 3.8).
    const mean =
      Array.from({ length: 1000 }, (_, i) => profile((i + 0.5) / 1000)).reduce((a, b) => a + b) / 1000;
    expect(mean).toBeCloseTo(1 / 3, 5);
  });

  it('names each colour once, from the coldest that glows', () => {
    expect(GLOWS[0]).toMatchObject({ name: 'black red', fromCelsius: 426 });
    expect(new Set(GLOWS.map(({ name }) => name)).size).toBe(GLOWS.length);
  });
});
