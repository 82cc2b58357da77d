import { describe, expect, it } from 'vitest';
import { COHB_HEAVY, COHB_LIGHT, COHB_MINUTES, COHB_REST } from '../../reference/carboxyhaemoglobin-table.ts';
import { answerTo } from './ask.ts';

const HOUR = 3_600_000;
const MINUTE = 60_000;
const at = (hours: number, ppm: number) => ({ at: hours * HOUR, ppm });
const EXPOSURE = 'carbon-monoxide/exposure';
const COHB = 'carbon-monoxide/carboxyhaemoglobin';

describe('exposure over the web', () => {
  it('makes 81.25 ppm of 150 ppm for 2 h, 75 for 2 h and 50 for 4 h', async () => {
    // 29 CFR 1910.1000(d)(1), worked example.
    const samples = [at(0, 150), at(2, 75), at(4, 50)];
    const asked = { profile: 'osha', samples, endAt: 8 * HOUR, longestHoldSeconds: 14_400 };
    const body = await answerTo(EXPOSURE, asked);
    expect(body.twa).toMatchObject({ ppm: 81.25, coverage: 1, gapSeconds: 0 });
    expect(body.limits).toHaveLength(1);
    expect(body.limits[0]).toMatchObject({ kind: 'twa', standing: 'above', limit: { ppm: 50 } });
    expect(body.peak).toEqual({ at: 0, ppm: 150 });
  });

  it('peaks at 113.3 ppm over 15 min when 5 min of 300 ppm fall into 20 ppm', async () => {
    // Computed: (5 x 300 + 10 x 20) / 15; above the EU limit of 100 ppm with 10 min of 15 at 20 ppm.
    const ppm = (minute: number) => (minute >= 30 && minute < 35 ? 300 : 20);
    const samples = Array.from({ length: 61 }, (_, i) => ({ at: i * MINUTE, ppm: ppm(i) }));
    const body = await answerTo(EXPOSURE, { profile: 'eu', samples });
    expect(body.highestStel.ppm).toBeCloseTo(113.33, 1);
    expect(body.highestStel.at).toBeLessThanOrEqual(45 * MINUTE);
    expect(body.stel.ppm).toBeCloseTo(20, 6);
  });

  it('keeps the conventions apart: 12 h at 30 ppm are 45 ppm summed over 8 h, 36 by the day of 10 h', async () => {
    // OSHA divides by 8 whatever the shift (29 CFR 1910.1000); the REL is for up to 10 h (NIOSH). Computed.
    const asked = { samples: [at(0, 30)], endAt: 12 * HOUR, longestHoldSeconds: 43_200 };
    expect((await answerTo(EXPOSURE, { ...asked, profile: 'osha' })).twa.ppm).toBeCloseTo(45, 9);
    const niosh = await answerTo(EXPOSURE, { ...asked, profile: 'niosh' });
    expect(niosh.twa.ppm).toBeCloseTo(36, 9);
    expect(niosh.convention).toEqual({ kind: 'mean-of-shift', leastHours: 8, mostHours: 10 });
  });

  it('never fills 2 of 8 h with zero: held, at a worst case of 60 ppm, or unknown', async () => {
    // Computed for 6 h at 40 ppm: zero-fill would be 30, mean-fill 40, worst-case fill 45.
    const samples = Array.from({ length: 73 }, (_, i) => ({ at: i * 5 * MINUTE, ppm: 40 }));
    const asked = { profile: 'eu', samples, endAt: 8 * HOUR };
    const worst = { kind: 'level', ppm: 60 };
    const held = await answerTo(EXPOSURE, asked);
    expect(held.twa.ppm).toBeCloseTo(40, 6);
    expect(held.coverage).toBeCloseTo((6 * 60 + 5) / 480, 9);
    const ppm = (await answerTo(EXPOSURE, { ...asked, gap: worst })).twa.ppm;
    expect(ppm).toBeCloseTo((40 * 365 + 60 * 115) / 480, 6);
    const unknown = await answerTo(EXPOSURE, { ...asked, gap: { kind: 'unknown' } });
    expect(unknown.twa.ppm).toBeNull();
    expect(unknown.twa.atLeastPpm).toBeCloseTo((40 * 365) / 480, 6);
  });

  it('is judged by the strictest limits when nobody chooses: 20, 60, 125, 200 and 1200 ppm', async () => {
    // EU and TRGS 900 January 2024; ACGIH five times the TLV; NIOSH ceiling and IDLH.
    const { limits, profile } = await answerTo(EXPOSURE, { samples: [at(0, 5)] });
    expect(profile).toBe('strictest');
    const found = limits.map((each: { kind: string; limit: { ppm: number } }) => [each.kind, each.limit.ppm]);
    expect(Object.fromEntries(found)).toEqual({
      twa: 20,
      stel: 60,
      excursion: 125,
      ceiling: 200,
      idlh: 1200,
    });
  });

  it('says when an alarm of a standard would have warned: 300 ppm within 3 min of EN 50291-1', async () => {
    // EN 50291-1 row: 300 ppm, alarm by 3 min; UL 2034 has 400 ppm by 15 min. Public summaries.
    const samples = Array.from({ length: 21 }, (_, i) => ({ at: i * MINUTE, ppm: 300 }));
    const { doseWarnings } = await answerTo(EXPOSURE, { samples });
    const [en, ul] = doseWarnings as { standard: string; at: number }[];
    expect(en).toMatchObject({ standard: 'en-50291-1' });
    expect(en?.at).toBeLessThanOrEqual(3 * MINUTE);
    expect(ul?.at).toBeGreaterThan(3 * MINUTE);
  });
});

describe('carboxyhaemoglobin over the web', () => {
  // Coburn-Forster-Kane equation integrated independently (DOP853, rtol 1e-11); see tests/reference.
  it.each([
    ['rest', COHB_REST],
    ['light', COHB_LIGHT],
    ['heavy', COHB_HEAVY],
  ] as const)('follows the table of %s, nonlinear and linear', async (workRate, table) => {
    for (const [ppm, nonlinear, linear] of table.filter((_, i) => i % 3 === 0)) {
      for (const [column, minutes] of COHB_MINUTES.entries()) {
        const { last } = await answerTo(COHB, { startPercent: 0.75, workRate, ppm, minutes });
        expect(Math.abs(last.nonlinearPercent - (nonlinear[column] ?? Number.NaN))).toBeLessThan(0.0051);
        const straight = linear[column] ?? null;
        if (straight === null) expect(last.linearPercent).toBeGreaterThan(100);
        else expect(Math.abs(last.linearPercent - straight)).toBeLessThan(0.0051);
      }
    }
  });

  it('puts the outer limits of UL 2034 on one line of about 10 % for heavy work, linear', async () => {
    // UL 2034 windows (public summaries); 10.08, 9.87 and 9.56 % computed.
    const ends = [
      [70, 240, 10.08],
      [150, 50, 9.87],
      [400, 15, 9.56],
    ] as const;
    for (const [ppm, minutes, percent] of ends) {
      const { last } = await answerTo(COHB, { ppm, minutes });
      expect(last.linearPercent).toBeCloseTo(percent, 2);
    }
  });

  it('takes every constant from who asks: half-lives of the US Army form', async () => {
    // MIL-HDBK-759 form, from memory: time constants 425, 241, 175, 134, 109 min; re-computed from DL and VA.
    const sets = [
      [30, 6, 424.8],
      [35, 12, 241.0],
      [40, 18, 174.9],
      [50, 24, 134.2],
      [60, 30, 108.9],
    ] as const;
    const standard = (litres: number) => litres * 1000 * (713 / 760) * (273.15 / 310.15);
    for (const [diffusionMlPerMinMmHg, litres, tau] of sets) {
      const constants = { diffusionMlPerMinMmHg, ventilationMlPerMin: standard(litres) };
      const body = await answerTo(COHB, { constants, ppm: 50, minutes: 60 });
      expect(body.linearHalfLifeMinutes / Math.LN2).toBeCloseTo(tau, 1);
    }
  });

  it.each([
    ['haldaneRatio', 250],
    ['endogenousMlPerMin', 0.02],
    ['bloodMl', 4000],
    ['oxygenCapacityMlPerMl', 0.15],
    ['capillaryOxygenMmHg', 60],
    ['barometricMmHg', 600],
    ['waterVapourMmHg', 0],
    ['diffusionMlPerMinMmHg', 20],
    ['ventilationMlPerMin', 6000],
  ])('is moved by %s, and says what it used', async (name, value) => {
    const asked = { ppm: 50, minutes: 120 };
    const [usual, changed] = [
      await answerTo(COHB, asked),
      await answerTo(COHB, { ...asked, constants: { [name]: value } }),
    ];
    expect(changed.constants).toEqual({ ...usual.constants, [name]: value });
    expect(Math.abs(changed.last.nonlinearPercent - usual.last.nonlinearPercent)).toBeGreaterThan(0.01);
  });

  it('falls at rest in clean air from 10 to 5 % in 4 h, stepped over a curve', async () => {
    // Computed with the nonlinear form: 242 min from 10 to 5 %.
    const asked = { startPercent: 10, workRate: 'rest', longestHoldSeconds: 18_000 };
    const body = await answerTo(COHB, { ...asked, samples: [at(0, 0)], endAt: 242 * MINUTE });
    expect(body.last.nonlinearPercent).toBeCloseTo(5, 1);
    const samples = Array.from({ length: 243 }, (_, i) => ({ at: i * MINUTE, ppm: 0 }));
    const stepped = await answerTo(COHB, { ...asked, samples });
    expect(stepped.last.nonlinearPercent).toBeCloseTo(body.last.nonlinearPercent, 9);
    expect(stepped.points).toHaveLength(243);
  });
});

describe('a decay over the web', () => {
  const SERIES = [180, 152, 131, 111, 95, 82, 70].map((ppm, i) => ({ at: i * 5 * MINUTE, ppm }));
  const DECAY = 'ventilation/decay';

  it('gives 1.9718 air changes an hour, 1.943 to 2.001, and says what it could not check', async () => {
    // Worked series, computed by least squares: standard error 0.0113, 95 % interval.
    const body = await answerTo(DECAY, { backgroundPpm: 5, samples: SERIES });
    expect(body.airChangesPerHour).toBeCloseTo(1.9718, 4);
    expect([body.low, body.high].map((each: number) => each.toFixed(3))).toEqual(['1.943', '2.001']);
    expect(body.standardError).toBeCloseTo(0.0113, 4);
    expect(body.conditionsHeld).toBeNull();
  });

  it('holds the conditions of ASTM E741 when told and measured, and breaks with the source on', async () => {
    const told = { backgroundPpm: 5, backgroundAfterPpm: 5, openingsUnchanged: true, samples: SERIES };
    const other = SERIES.map(({ at: when, ppm }) => ({ at: when, ppm: 5 + (ppm - 5) * 0.9 }));
    const good = await answerTo(DECAY, { ...told, sourceOff: true, otherPoints: [other] });
    expect(good.conditionsHeld).toBe(true);
    expect((await answerTo(DECAY, { ...told, sourceOff: false })).conditionsHeld).toBe(false);
  });

  it('finds 2.845 an hour from 120 to 35 ppm over 8 ppm in 30 min', async () => {
    // Two-point form ln(112/27)/0.5 h; a curve on that line has the same slope. Computed.
    const ppm = (minutes: number) => 8 + 112 * (27 / 112) ** (minutes / 30);
    const samples = [0, 5, 10, 15, 20, 25, 30].map((m) => ({ at: m * MINUTE, ppm: ppm(m) }));
    const room = { volumeCubicMetres: 100, limitPpm: 20, mixingFactor: 1 };
    const body = await answerTo(DECAY, { backgroundPpm: 8, samples, room });
    expect(body.airChangesPerHour).toBeCloseTo(2.845, 3);
    // Highest source A V (L - Cb): 284.5 m³/h x 12 ppm.
    expect(body.highestSourceCubicMetresPerHour.value).toBeCloseTo(284.5 * 12e-6, 6);
    expect(body.secondsUntilBelow.value).toBeCloseTo((Math.log(27 / 12) / 2.845) * 3600, 0);
  });
});
