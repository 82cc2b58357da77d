import { describe, expect, it } from 'vitest';
import { CRITICAL_ROWS } from '../../reference/steel-critical.ts';
import { makeApi } from '../api-client.ts';
import { answerTo, codesOf } from './ask.ts';

describe('critical temperatures over the web', () => {
  it.each(CRITICAL_ROWS.slice(0, 8))(
    'meet the check values of $steel, whatever it is made of',
    async (row) => {
      // Source of the rows: Andrews 1965 and others, worked independently; see the reference file.
      const { ac1, ac3, opinions } = await answerTo('critical-temperatures', {
        composition: row.composition,
      });
      expect(ac1.value).toBeCloseTo(row.andrewsAc1, 0);
      expect(ac3.value).toBeCloseTo(Math.max(row.andrewsAc1, row.andrewsAc3), 0);
      expect(opinions.ac1.length).toBeGreaterThan(3);
    },
  );

  it('refuse a number where no formula speaks, answer by answer, and give the reason (D2)', async () => {
    const body = await answerTo('critical-temperatures', { steel: 'D2' });
    for (const name of ['ac1', 'ac3', 'ms', 'mf', 'ar1', 'ar3']) {
      expect(body[name], name).toMatchObject({
        value: null,
        shown: null,
        reason: { code: 'outside-validity' },
      });
    }
    expect(body.magnet.proves).toBe('nothing');
  });

  it('shift Ar1 with the cooling rate and never lift it above Ac1', async () => {
    const at = async (coolingCelsiusPerHour: number) =>
      answerTo('critical-temperatures', { steel: '1080', coolingCelsiusPerHour });
    const [slow, fast] = [await at(28), await at(3600)];
    // ASM Handbook vol. 4 (1991), from memory: Ar1 of 1080 at 28 °C/h is 695 °C.
    expect(slow.ar1.low).toBeLessThan(695);
    expect(slow.ar1.high).toBeGreaterThan(695);
    expect(fast.ar1.value).toBeLessThan(slow.ar1.value);
    expect(slow.ar1.value).toBeLessThan(slow.ac1.value);
  });
});

describe('the magnet', () => {
  it.each([
    ['1020', { composition: { C: 0.2, Mn: 0.45, Si: 0.2 } }],
    ['1045', { steel: '1045' }],
  ])('plus 100 °C comes to 860 to 870 °C for %s (common practice)', async (_name, steel) => {
    const { plus, offsetCelsius } = await answerTo('magnet', steel);
    expect(offsetCelsius).toBe(100);
    expect(plus.value).toBeGreaterThanOrEqual(860);
    expect(plus.value).toBeLessThanOrEqual(870);
  });
});

describe('what a quench leaves', () => {
  it('a few percent of austenite in 1045 (Koistinen-Marburger: exp(-0.011 · 308) = 0.0338)', async () => {
    const body = await answerTo('martensite', { steel: '1045' });
    expect(body.retainedAustenite.value).toBeCloseTo(0.0338, 3);
    expect(body.retainedAustenite.shown).toMatch(/^3.* % \(/);
    // ASTM A255 initial hardness polynomial at 0.45 % C: 58.9 HRC; its table for 50 % martensite: 45 HRC.
    expect(body.quenchedHardnessHrc.value).toBeCloseTo(58.9, 1);
    expect(body.halfMartensiteHrc.value).toBeCloseTo(45, 1);
    expect(body.carbonAssumed).toBe(false);
  });

  it('says that it assumed the dissolved carbon of 1095, and has no half-martensite number for it', async () => {
    const body = await answerTo('martensite', { steel: '1095' });
    expect(body).toMatchObject({ carbonAssumed: true, carbonInAustenitePercent: 0.68 });
    expect(codesOf(body.retainedAustenite)).toContain('dissolved-carbon-assumed');
    expect(body.halfMartensiteHrc).toMatchObject({ value: null, reason: { code: 'out-of-range' } });
  });

  it('gives the structures of Maynier 1978: 643 HV martensite for 4140 at 100 000 °C/h', async () => {
    const body = await answerTo('cooling-structures', { steel: '4140', coolingCelsiusPerHour: 1e5 });
    const [martensite] = body.hardnessHv;
    expect(martensite.hardness.value).toBeCloseTo(643, 0);
    const rates = body.limits.slice(0, 3).map((limit: { celsiusPerHour: number }) => limit.celsiusPerHour);
    expect(rates).toEqual(rates.toSorted((a: number, b: number) => b - a));
  });

  it('leaves 1045 cooled slowly 58 % pearlite by the lever rule', async () => {
    // (0.45 - 0.022) / (0.76 - 0.022) = 0.580: the textbook lever rule.
    const body = await answerTo('cooling-structures', { steel: '1045', coolingCelsiusPerHour: 100 });
    expect(body.slowCooled.pearlite).toBeCloseTo(0.58, 3);
    const iron = { composition: { C: 0.01 }, coolingCelsiusPerHour: 100 };
    expect((await answerTo('cooling-structures', iron)).slowCooled).toBeNull();
  });
});

describe('hardenability', () => {
  it('meets the worked example of ASTM A255, 1.95 in with its rounded factors', async () => {
    const composition = { C: 0.22, Mn: 0.8, Si: 0.18, Ni: 0.1, Cr: 0.43, Mo: 0.25, Cu: 0.1, V: 0.05 };
    const body = await answerTo('hardenability', { composition, shape: 'bar', thicknessMm: 25 });
    expect(Math.abs(body.idealDiameterMm.value / 25.4 - 1.95)).toBeLessThan(0.02);
    expect(body.factors.Mn).toBeCloseTo(3.667, 3);
    expect(body.media).toHaveLength(9);
  });

  it('hardens 25 mm of 4140 through in good oil and not of 1045 (common practice)', async () => {
    const section = { shape: 'cylinder', thicknessMm: 25, medium: 'good-oil' };
    const [alloy] = (await answerTo('hardenability', { steel: '4140', ...section })).media;
    const [plain] = (await answerTo('hardenability', { steel: '1045', ...section })).media;
    expect([alloy.hardensThrough, plain.hardensThrough]).toEqual(['yes', 'no']);
  });
});

describe('tempering', () => {
  it('makes a measured temper of an hour at 400 °C equal to a hold of an hour', async () => {
    // P = (400 + 273.15)(C + log 1), C = 21.3 - 5.8 · 0.8 for 1080.
    const minutes = Array.from({ length: 61 }, (_, i) => ({ atMs: i * 60_000, celsius: 400 }));
    const body = await answerTo('tempering', { steel: '1080', curve: minutes });
    expect(body.constant).toBeCloseTo(16.66, 9);
    expect(body.parameter).toBeCloseTo(673.15 * 16.66, 3);
    expect(body.equivalent.hours).toBeCloseTo(1, 6);
    expect(body.equivalent.longestGapMs).toBe(60_000);
  });

  it('draws a curve that never rises and holds the measured 1080 of Grange and Baughman 1956', async () => {
    const body = await answerTo('tempering-curve', { steel: '1080', hours: 1, fromCelsius: 205, points: 30 });
    const hardness: number[] = body.points.map((point: { hardnessHrc: { value: number } }) => {
      return point.hardnessHrc.value;
    });
    expect(hardness).toEqual(hardness.toSorted((a, b) => b - a));
    expect(hardness[0]).toBeLessThanOrEqual(body.quenchedHardnessHrc.high);
    // 1 h at 426.7 °C: 47.0 HRC measured.
    const near = body.points.find((point: { celsius: number }) => point.celsius > 420);
    expect(Math.abs(near.hardnessHrc.value - 47)).toBeLessThan(2);
  });
});

describe('the catalogue over the web', () => {
  it('lists every grade with limits and windows, each number with its standing', async () => {
    const { body } = await makeApi().call('GET', '/api/v1/steels');
    expect(body.length).toBeGreaterThan(15);
    for (const grade of body) {
      expect(grade.limitsFrom.source, grade.id).not.toBe('');
      expect(grade.quench.from.standing, grade.id).toBeTruthy();
      for (const { from, shown } of grade.windows) {
        expect(from.standing, grade.id).toBeTruthy();
        expect(shown, grade.id).toMatch(/^\d+( to \d+)? °C$/);
      }
    }
    // ASTM A576 and SAE J403: carbon of 1045 is 0.43 to 0.50 %.
    const medium = body.find((grade: { id: string }) => grade.id === '1045');
    expect(medium.limits.C).toEqual({ low: 0.43, high: 0.5 });
  });

  it('gives one grade with its measured tempering pairs', async () => {
    const { body } = await makeApi().call('GET', '/api/v1/steels/SAE-1080');
    const pairs = body.temperSets.flatMap((set: { pairs: object[] }) => set.pairs);
    // Grange & Baughman 1956: 1080, 24 h at 315.6 °C, 53.5 HRC.
    expect(pairs).toContainEqual({ celsius: 315.6, hours: 24, hrc: 53.5 });
  });

  it('reads a certificate against its grade and takes its windows only when it fits', async () => {
    const good = { steel: '1084', composition: { C: 0.83, Mn: 0.72, Si: 0.22 } };
    const fits = await answerTo('steel-windows', good);
    expect(fits.outsideLimits).toEqual([]);
    expect(fits.windows.some((window: { from: object }) => !isPractice(window))).toBe(true);
    const off = await answerTo('steel-windows', { ...good, composition: { C: 0.7, Mn: 0.72 } });
    expect(off.outsideLimits).toEqual([expect.objectContaining({ element: 'C', percent: 0.7 })]);
    expect(codesOf(off)).toEqual(['outside-grade-limits']);
    expect(off.windows.every(isPractice)).toBe(true);
  });
});

function isPractice(window: { from: { standing?: string } }): boolean {
  return window.from.standing === 'common-practice';
}
