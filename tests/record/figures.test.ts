import { describe, expect, it } from 'vitest';
import { computed, figure, judged, planPiece, points, soak } from './kit.ts';

const held = (celsius: number, hours: number, band = 0) =>
  computed(
    points(
      [
        [0, celsius],
        [hours, celsius],
      ],
      band,
    ),
  );
const SCHEDULE = { segments: [soak(900, 60)] };

describe('the figures of a piece', () => {
  it('have the scale of an hour at 900 °C that Paidassi gives, a factor of two either way', () => {
    // Paidassi: x² = kp t, kp = 6.1 exp(-169452/RT) cm²/s (quoted by Chen and Yuen 2003; from memory).
    const centimetres = Math.sqrt(6.1 * Math.exp(-169_452 / (8.314 * 1173.15)) * 3600);
    const piece = judged({ plan: planPiece('1045', 'normalise'), schedule: SCHEDULE, curves: held(900, 1) });
    const scale = figure(piece, 'scale');
    expect(scale.value ?? 0).toBeGreaterThan(centimetres * 10 * 0.8);
    expect(scale.value ?? 0).toBeLessThan(centimetres * 10 * 1.25);
    expect(scale.low ?? 1).toBeLessThan((scale.value ?? 0) / 1.9);
    expect(scale.cautions).toContain('air-no-flame');
  });

  it('have a decarburised depth that grows with the root of time, as diffusion does', () => {
    const plan = planPiece('1084', 'normalise');
    const depth = (hours: number) =>
      figure(judged({ plan, schedule: SCHEDULE, curves: held(950, hours) }), 'decarburised-depth');
    expect((depth(4).value ?? 0) / (depth(1).value ?? 1)).toBeCloseTo(2, 6);
    expect(depth(1)).toMatchObject({ nature: 'upper-bound', unit: 'mm', noClaim: null });
    expect(depth(1).low ?? 1).toBeLessThan((depth(1).value ?? 0) * 0.95);
  });

  it('widen by what the furnace may have been', () => {
    const plan = planPiece('1084', 'normalise');
    const [sure, unsure] = [0, 20].map((band) =>
      figure(judged({ plan, schedule: SCHEDULE, curves: held(900, 1, band) }), 'scale'),
    );
    expect(unsure?.value).toBe(sure?.value);
    expect(unsure?.high ?? 0).toBeGreaterThan((sure?.high ?? 0) * 1.1);
    expect(unsure?.low ?? 1).toBeLessThan((sure?.low ?? 0) * 0.9);
  });

  it('claim nothing outside the range of their formulas', () => {
    const plan = planPiece('1084', 'stress-relief');
    const piece = judged({ plan, schedule: SCHEDULE, curves: held(600, 2) });
    expect(figure(piece, 'decarburised-depth')).toMatchObject({ value: null, noClaim: 'never-austenite' });
    expect(figure(piece, 'scale')).toMatchObject({ value: null, noClaim: 'never-hot-enough' });
    expect(figure(piece, 'grain')).toMatchObject({ value: null, noClaim: 'never-hot-enough' });
    const hot = judged({ plan, schedule: SCHEDULE, curves: held(1250, 0.1) });
    expect(figure(hot, 'decarburised-depth').cautions).toContain('above-range');
  });

  it('say that a long gap was bridged', () => {
    const piece = judged({ plan: planPiece('1084', 'harden'), schedule: SCHEDULE, curves: held(830, 2) });
    expect(figure(piece, 'decarburised-depth').cautions).toContain('long-gap');
  });
});

describe('the temper of a piece', () => {
  const plan = planPiece('1095', 'temper');
  const wanted = (wantedHrc: number) => ({
    segments: [soak(200, 7200)],
    basis: {
      madeAt: 0,
      step: 'temper',
      steel: { id: '1095', title: '1095', composition: { C: 0.95 } },
      section: { shape: 'plate' as const, thicknessMm: 6 },
      furnace: 'Oven',
      reasons: [
        {
          path: '/segments/1/targetCelsius',
          value: 200,
          code: 'target-for-hardness' as const,
          params: { wantedHrc },
          text: '',
          from: { standing: 'common-practice' as const, source: '' },
        },
      ],
      uncertainty: [],
      askTheDataSheet: [],
    },
  });

  it('has the Hollomon-Jaffe parameter of a plain hold: T (C + log10 hours), C = 21.3 - 5.8 % C', () => {
    // Hollomon and Jaffe 1945, constant for hours in transcription: see hub/physics/steel/hollomon-jaffe.ts.
    const carbon = plan.steel.composition.C;
    const piece = judged({ plan, schedule: wanted(60), curves: held(200, 2) });
    expect(figure(piece, 'temper-parameter').value).toBeCloseTo(
      473.15 * (21.3 - 5.8 * carbon + Math.log10(2)),
      1,
    );
    expect(figure(piece, 'temper-hours').value).toBeCloseTo(2, 3);
  });

  it('is as wanted, too hard or too soft by the band of the hardness that it leaves', () => {
    const verdict = (hrc: number) =>
      judged({ plan, schedule: wanted(hrc), curves: held(200, 2) }).reasons.map(({ code }) => code);
    expect(verdict(62)).toContain('temper-as-wanted');
    expect(verdict(45)).toContain('temper-too-hard');
    expect(verdict(69)).toContain('temper-too-soft');
  });

  it('is not known where the piece came above what tempering is', () => {
    const piece = judged({ plan, schedule: wanted(60), curves: held(780, 1) });
    expect(piece.reasons.map(({ code }) => code)).toContain('temper-not-known');
    expect(figure(piece, 'temper-hardness')).toMatchObject({ value: null, noClaim: 'steel-not-covered' });
  });
});
