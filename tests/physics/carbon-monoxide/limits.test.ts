import { describe, expect, test } from 'vitest';
import {
  milligramsPerCubicMetre,
  molarLitres,
  ppmOf,
} from '../../../hub/physics/carbon-monoxide/concentration.ts';
import type { LimitRow } from '../../../hub/physics/carbon-monoxide/limit-row.ts';
import {
  customProfile,
  limitProfile,
  PROFILE_IDS,
  workplaceLimit,
} from '../../../hub/physics/carbon-monoxide/limits.ts';
import { BIOLOGICAL_LIMITS, PUBLIC_LIMITS } from '../../../hub/physics/carbon-monoxide/limits-public.ts';
import { WORKPLACE_LIMITS } from '../../../hub/physics/carbon-monoxide/limits-workplace.ts';

type Expected = readonly [
  id: string,
  use: LimitRow['use'],
  ppm: number | null,
  milligrams: number | null,
  minutes: number,
  force: LimitRow['force'],
  standing: LimitRow['from']['standing'],
];
const SEEN = 'published-secondary';
const MEMORY = 'from-memory';

const ROWS: readonly Expected[] = [
  // SOURCE: 29 CFR 1910.1000 Table Z-1, via the NIOSH IDLH page
  ['osha-pel', 'twa', 50, 55, 480, 'in-force', SEEN],
  // SOURCE: 29 CFR 1917.24, quoted
  ['osha-maritime', 'twa', 50, null, 480, 'in-force', SEEN],
  ['osha-maritime-removal', 'removal', 100, null, 0, 'in-force', SEEN],
  // SOURCE: OSHA fact sheet on carbon monoxide, quoted
  ['osha-roll-on', 'ceiling', 200, null, 0, 'in-force', SEEN],
  // SOURCE: NIOSH IDLH page (1989 rule, vacated federally)
  ['osha-1989-twa', 'twa', 35, 40, 480, 'superseded', SEEN],
  ['osha-1989-ceiling', 'ceiling', 200, 229, 0, 'superseded', SEEN],
  // SOURCE: MIOSHA memorandum on the Coburn equation, 2014
  ['michigan-twa', 'twa', 35, null, 480, 'in-force', SEEN],
  ['michigan-ceiling', 'ceiling', 200, null, 5, 'in-force', SEEN],
  // SOURCE: NIOSH IDLH page; criteria document 1972
  ['niosh-rel', 'twa', 35, 40, 600, 'guideline', SEEN],
  ['niosh-ceiling', 'ceiling', 200, 229, 0, 'guideline', SEEN],
  ['niosh-idlh', 'idlh', 1200, null, 0, 'guideline', SEEN],
  // SOURCE: NIOSH IDLH page; OSHA sampling page
  ['acgih-tlv', 'twa', 25, 29, 480, 'guideline', SEEN],
  // SOURCE: ACGIH TLV introduction, from memory
  ['acgih-excursion', 'excursion', 75, null, 0, 'guideline', MEMORY],
  ['acgih-excursion-never', 'excursion', 125, null, 0, 'guideline', MEMORY],
  // SOURCE: ECHA list of Directive 2004/37/EC Annex III
  ['eu-twa', 'twa', 20, 23, 480, 'in-force', SEEN],
  ['eu-stel', 'stel', 100, 117, 15, 'in-force', SEEN],
  // SOURCE: EH40/2005 4th edition; numbers of Directive (EU) 2017/164
  ['uk-twa', 'twa', 20, 23, 480, 'in-force', SEEN],
  ['uk-stel', 'stel', 100, 117, 15, 'in-force', SEEN],
  ['uk-old-twa', 'twa', 30, 35, 480, 'superseded', SEEN],
  ['uk-old-stel', 'stel', 200, 232, 15, 'superseded', SEEN],
  // SOURCE: TRGS 900 January 2024, quoted in a text that cites BAuA
  ['germany-twa', 'twa', 20, 23, 480, 'in-force', SEEN],
  ['germany-stel', 'stel', 60, 70, 15, 'in-force', SEEN],
  // SOURCE: EPA criteria document abstract; 76 FR 54294
  ['naaqs-8h', 'ambient', 9, 10, 480, 'in-force', SEEN],
  ['naaqs-1h', 'ambient', 35, 40, 60, 'in-force', SEEN],
  // SOURCE: EEA note on 2008/50/EC
  ['eu-ambient-8h', 'ambient', null, 10, 480, 'in-force', SEEN],
  // SOURCE: WHO Air Quality Guidelines for Europe 2000, table restated in an open-access paper
  ['who-2000-15min', 'ambient', 90, 100, 15, 'guideline', SEEN],
  ['who-2000-30min', 'ambient', 50, 60, 30, 'guideline', SEEN],
  ['who-2000-1h', 'ambient', 25, 30, 60, 'guideline', SEEN],
  ['who-2000-8h', 'ambient', 10, 10, 480, 'guideline', SEEN],
  // SOURCE: WHO indoor air quality 2010, from memory
  ['who-2010-15min', 'ambient', 87, 100, 15, 'guideline', MEMORY],
  ['who-2010-1h', 'ambient', 31, 35, 60, 'guideline', MEMORY],
  ['who-2010-8h', 'ambient', 8.7, 10, 480, 'guideline', MEMORY],
  ['who-2010-24h', 'ambient', 6.1, 7, 1440, 'guideline', MEMORY],
  // SOURCE: WHO 2021, table quoted
  ['who-2021-24h', 'ambient', 3.5, 4, 1440, 'guideline', SEEN],
  // SOURCE: NRC EEGL 1987, via the NIOSH IDLH page
  ['eegl-10min', 'emergency', 1500, null, 10, 'guideline', SEEN],
  ['eegl-30min', 'emergency', 800, null, 30, 'guideline', SEEN],
  ['eegl-1h', 'emergency', 400, null, 60, 'guideline', SEEN],
  ['eegl-24h', 'emergency', 50, null, 1440, 'guideline', SEEN],
  // SOURCE: NRC AEGL volume 8 (2010), from memory; held to one blood level in aegl.test.ts
  ['aegl-2-10min', 'emergency', 420, null, 10, 'guideline', MEMORY],
  ['aegl-2-30min', 'emergency', 150, null, 30, 'guideline', MEMORY],
  ['aegl-2-1h', 'emergency', 83, null, 60, 'guideline', MEMORY],
  ['aegl-2-4h', 'emergency', 33, null, 240, 'guideline', MEMORY],
  ['aegl-2-8h', 'emergency', 27, null, 480, 'guideline', MEMORY],
  ['aegl-3-10min', 'emergency', 1700, null, 10, 'guideline', MEMORY],
  ['aegl-3-30min', 'emergency', 600, null, 30, 'guideline', MEMORY],
  ['aegl-3-1h', 'emergency', 330, null, 60, 'guideline', MEMORY],
  ['aegl-3-4h', 'emergency', 150, null, 240, 'guideline', MEMORY],
  ['aegl-3-8h', 'emergency', 130, null, 480, 'guideline', MEMORY],
];

const TABLE = [...WORKPLACE_LIMITS, ...PUBLIC_LIMITS];

describe('the table of limits', () => {
  test.each(ROWS)('%s stands as its body states it', (id, use, ppm, milligrams, minutes, force, standing) => {
    const row = TABLE.find((candidate) => candidate.id === id);
    expect(row).toMatchObject({ use, ppm, milligramsPerCubicMetre: milligrams, force });
    expect(row?.averagingSeconds).toBe(minutes * 60);
    expect(row?.from.standing).toBe(standing);
  });

  test('has no row beside those, and each names source and edition', () => {
    expect(new Set(TABLE.map((row) => row.id))).toEqual(new Set(ROWS.map(([id]) => id)));
    expect(TABLE).toHaveLength(ROWS.length);
    expect(TABLE.filter((row) => row.from.source.length < 3 || row.edition.length < 3)).toEqual([]);
  });

  test('holds the limits on blood and breath apart from those on air', () => {
    // SOURCE: ACGIH BEI, from memory; TRGS 903 quoted in a DGUV document
    expect(BIOLOGICAL_LIMITS.map(({ measured, value }) => [measured, value])).toEqual([
      ['carboxyhaemoglobin-percent', 3.5],
      ['exhaled-ppm', 20],
      ['carboxyhaemoglobin-percent', 5],
    ]);
  });
});

/** TWA, STEL, excursion, ceiling and IDLH by body. SOURCES: those of the rows above. */
const PROFILES: readonly (readonly [(typeof PROFILE_IDS)[number], (number | null)[]])[] = [
  ['eu', [20, 100, null, null, null]],
  ['uk', [20, 100, null, null, null]],
  ['germany', [20, 60, null, null, null]],
  ['osha', [50, null, null, null, null]],
  ['niosh', [35, null, null, 200, 1200]],
  ['acgih', [25, null, 125, null, null]],
  ['strictest', [20, 60, 125, 200, 1200]],
];

describe('a profile', () => {
  test.each(PROFILES)('%s has the limits that its body defines and no others', (id, expected) => {
    const { twa, stel, excursion, ceiling, idlh } = limitProfile(id);
    expect([twa, stel, excursion, ceiling, idlh].map((limit) => limit?.ppm ?? null)).toEqual(expected);
  });

  test('covers every id, and none is laxer than the strictest', () => {
    expect(new Set(PROFILES.map(([id]) => id))).toEqual(new Set(PROFILE_IDS));
    const strictest = limitProfile('strictest');
    for (const id of PROFILE_IDS) {
      const { twa, stel } = limitProfile(id);
      expect(twa?.ppm ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(strictest.twa?.ppm ?? 0);
      expect(stel?.ppm ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(strictest.stel?.ppm ?? 0);
    }
  });

  test('of the shop itself judges what was set and nothing else', () => {
    const own = customProfile({ twaPpm: 10, ceilingPpm: 50, source: 'the keeper' });
    expect(own.twa?.ppm).toBe(10);
    expect(own.ceiling?.averagingSeconds).toBe(0);
    expect([own.stel, own.excursion, own.idlh]).toEqual([null, null, null]);
  });

  test('refuses an empty or absurd one, and a row that is not there', () => {
    const badInput = expect.objectContaining({ code: 'bad-input' });
    expect(() => customProfile({ source: 'nobody' })).toThrowError(badInput);
    expect(() => workplaceLimit('moon-twa')).toThrowError(badInput);
    expect(() => customProfile({ twaPpm: 0, source: 'x' })).toThrowError(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});

describe('ppm and mg/m³', () => {
  // SOURCE: molar volume R T / p and 28.010 g/mol; the 25 °C basis is footnote (a) of OSHA Table Z-1.
  test.each([
    [0, 22.414, 1.2497, 0.8002],
    [20, 24.055, 1.1644, 0.8588],
    [25, 24.465, 1.1449, 0.8735],
  ])('at %d °C convert as the tables do', (celsius, litres, perPpm, perMilligram) => {
    expect(molarLitres(celsius)).toBeCloseTo(litres, 3);
    expect(milligramsPerCubicMetre(1, celsius)).toBeCloseTo(perPpm, 4);
    expect(ppmOf(1, celsius)).toBeCloseTo(perMilligram, 4);
  });

  test('50 ppm are 57.2 mg/m³ where the law prints 55', () => {
    expect(milligramsPerCubicMetre(50, 25)).toBeCloseTo(57.2, 1);
  });

  test.each(TABLE.filter((row) => row.ppm !== null && row.milligramsPerCubicMetre !== null))(
    '$id: both printed figures belong together within 5 % and rounding',
    ({ ppm, milligramsPerCubicMetre: printed }) => {
      const low = milligramsPerCubicMetre(ppm ?? 0, 25);
      const high = milligramsPerCubicMetre(ppm ?? 0, 20);
      expect(printed).toBeGreaterThan(low * 0.95 - 1);
      expect(printed).toBeLessThan(high * 1.05 + 1);
    },
  );
});
