import { describe, expect, it } from 'vitest';
import { BLOOD_LIMIT_PERCENT } from '../../hub/air/dose.ts';
import { customProfile, limitProfile, type ProfileId } from '../../hub/physics/carbon-monoxide/limits.ts';
import { COLD, dayConfig, LIT, MINUTE, runDay, START, sensor } from './day-kit.ts';

/** Moves a little, as real air does, so that no sensor counts as flat. */
const alive = (ppm: number) => (minute: number) => ({
  ...LIT,
  door: ppm + (Math.round(minute * 6) % 2) * 0.2,
});
const atLevel = (ppm: number, minutes: number) => runDay().on(minutes, alive(ppm));
const toldAt = (ppm: number, minutes: number, kind: string) => atLevel(ppm, minutes).told.get(kind) ?? null;

describe('the dose gate of two alarm standards', () => {
  // EN 50291-1, public summaries: no alarm before, alarm by, in minutes.
  it.each([
    [50, 60, 90],
    [100, 10, 40],
    [300, 0, 3],
  ])('warns at %d ppm not before %d and by %d min (EN 50291-1)', (ppm, notBefore, by) => {
    const at = toldAt(ppm, by, 'unsafe-air-dose');
    expect(at).toBeGreaterThanOrEqual(notBefore);
    expect(at).toBeLessThanOrEqual(by);
  });

  // UL 2034 and CSA 6.19-01, public summaries. The European gate is the quicker: what is told comes no later.
  it.each([
    [70, 240],
    [150, 50],
    [400, 15],
  ])('has warned at %d ppm by %d min (UL 2034)', (ppm, by) => {
    expect(toldAt(ppm, by, 'unsafe-air-dose')).toBeLessThanOrEqual(by);
  });

  it('keeps the must-not row of 30 ppm for 120 min: the gate is quiet, other limits still speak', () => {
    const run = atLevel(30, 180);
    expect(run.told.has('unsafe-air-dose')).toBe(false);
    expect(atLevel(65, 30).told.has('unsafe-air-short-mean')).toBe(true);
  });

  it('lets go when the level does, and not before', () => {
    const run = atLevel(300, 5).on(1, alive(300));
    expect(run.findings().map(({ kind }) => kind)).toContain('unsafe-air-dose');
    run.on(3, alive(2));
    expect(run.findings().map(({ kind }) => kind)).not.toContain('unsafe-air-dose');
  });
});

describe('means by the profile of the shop', () => {
  const passes = (id: ProfileId, ppm: number, minutes: number, kind: string) =>
    runDay(dayConfig({ profile: limitProfile(id) }))
      .on(minutes, alive(ppm))
      .told.has(kind);

  // TRGS 900 January 2024: 60 ppm over 15 min; EU and UK 100 ppm; OSHA, NIOSH and ACGIH set none.
  it.each([
    ['germany', 61, true],
    ['germany', 59, false],
    ['strictest', 61, true],
    ['eu', 61, false],
    ['eu', 101, true],
    ['uk', 99, false],
    ['uk', 101, true],
    ['osha', 190, false],
    ['niosh', 190, false],
    ['acgih', 120, false],
  ] as const)('%s at %d ppm for 20 min: short mean %s', (id, ppm, told) => {
    expect(passes(id, ppm, 20, 'unsafe-air-short-mean')).toBe(told);
  });

  // 8 h limits: EU, UK, Germany 20; ACGIH 25; NIOSH 35; OSHA 50 ppm.
  it.each([
    ['eu', 20.5, true],
    ['eu', 19.5, false],
    ['uk', 20.5, true],
    ['germany', 20.5, true],
    ['acgih', 24.5, false],
    ['acgih', 25.5, true],
    ['niosh', 34.5, false],
    ['niosh', 35.5, true],
    ['osha', 49.5, false],
    ['osha', 50.5, true],
  ] as const)('%s at %d ppm for 8 h: day mean %s', (id, ppm, told) => {
    expect(passes(id, ppm, 481, 'unsafe-air-day-mean')).toBe(told);
  });

  it('sums a long day over 8 h where the body does: 14 ppm for 12 h pass 20 ppm, 10 ppm do not', () => {
    // OSHA and EU convention: sum(Ci Ti)/8, 14 x 12 / 8 = 21 ppm.
    expect(passes('eu', 14, 12 * 60, 'unsafe-air-day-mean')).toBe(true);
    expect(passes('eu', 10, 12 * 60, 'unsafe-air-day-mean')).toBe(false);
  });

  it('tells the body, the mean and how much of it was measured', () => {
    const found = runDay().on(16, alive(80)).findings();
    const mean = found.find(({ kind }) => kind === 'unsafe-air-short-mean');
    expect(mean?.params).toMatchObject({ limitPpm: 60, body: 'Germany', label: 'At door' });
    expect(Number(mean?.params.ppm)).toBeCloseTo(80.1, 1);
    expect(mean?.params.coverage).toBeCloseTo(1, 6);
  });

  it('judges by the shop’s own limits and by nothing else', () => {
    const profile = customProfile({ stelPpm: 40, source: 'the keeper' });
    const run = runDay(dayConfig({ profile })).on(20, alive(41));
    expect(run.told.has('unsafe-air-short-mean')).toBe(true);
    expect(run.told.has('unsafe-air-day-mean')).toBe(false);
  });
});

describe('the blood', () => {
  it('warns before the day’s limit does: 35 ppm at heavy work', () => {
    // Coburn-Forster-Kane, heavy work: 2.92 % after 60 min, 4.05 % after 120 (computed); 20 ppm of 8 h at 274 min.
    const run = atLevel(35, 300);
    const blood = run.told.get('unsafe-air-blood') ?? Number.NaN;
    expect(blood).toBeGreaterThan(60);
    expect(blood).toBeLessThan(120);
    expect(run.told.get('unsafe-air-day-mean')).toBeGreaterThan(blood);
  });

  it('is a band from light to heavy work, and its top is what warns', () => {
    const [blood] = atLevel(35, 120)
      .findings()
      .filter(({ kind }) => kind === 'unsafe-air-blood');
    // Computed table: 3.30 % light and 4.05 % heavy after 120 min at 35 ppm.
    expect(Number(blood?.params.lowPercent)).toBeCloseTo(3.3, 1);
    expect(Number(blood?.params.highPercent)).toBeCloseTo(4.06, 1);
    expect(blood?.params.limitPercent).toBe(BLOOD_LIMIT_PERCENT);
  });

  it('takes nothing back: where it is low the limits speak as they would without it', () => {
    const run = atLevel(65, 16);
    expect(run.told.has('unsafe-air-blood')).toBe(false);
    expect(run.told.has('unsafe-air-short-mean')).toBe(true);
  });

  it('is no trouble at a good day’s level: 9 ppm for 8 h raise nothing at all', () => {
    expect([...atLevel(9, 481).told.keys()]).toEqual([]);
  });
});

describe('a gap', () => {
  it('holds the last level: a sensor that goes silent at 80 ppm fills the quarter of an hour', () => {
    const run = runDay()
      .on(4, alive(80))
      .on(20, () => LIT);
    const [mean] = run.findings().filter(({ kind }) => kind === 'unsafe-air-short-mean');
    expect(Number(mean?.params.ppm)).toBeCloseTo(80, 0);
    expect(Number(mean?.params.coverage)).toBeLessThan(0.05);
  });

  it('never ends an alarm, and clean readings afterwards do', () => {
    const run = runDay()
      .on(20, alive(80))
      .on(60, () => LIT);
    expect(run.findings().map(({ kind }) => kind)).toContain('unsafe-air-short-mean');
    run.on(20, alive(1));
    expect(run.findings().map(({ kind }) => kind)).not.toContain('unsafe-air-short-mean');
  });

  it('of a whole night begins the day anew instead of breathing last evening’s air', () => {
    const run = runDay()
      .on(30, alive(70))
      .on(10 * 60, () => ({}));
    run.on(5, alive(2));
    const dose = run.state.doses.door;
    expect(dose?.cohb.band.heavy).toBeLessThan(1);
    expect(run.state.shiftStart).toBe(START + (30 + 10 * 60) * MINUTE);
    expect(run.findings()).toEqual([]);
  });

  it('of a night with readings keeps the last hours and the last day, and begins the day’s sum anew', () => {
    const cold = (minute: number) => ({ ...COLD, door: 3 + (Math.round(minute * 6) % 2) * 0.2 });
    const run = runDay().on(60, alive(18));
    run.on(7 * 60, cold).on(10, alive(3));
    const { shiftStart, lastShift, doses } = run.state;
    expect((shiftStart - START) / MINUTE).toBe(60 + 7 * 60);
    expect(doses.door?.exposure.shift.measuredMs).toBe(10 * MINUTE);
    expect(doses.door?.exposure.day.whole.measuredMs).toBeGreaterThan(6 * 60 * MINUTE);
    expect(lastShift).toMatchObject({ from: START, to: START + 60 * MINUTE });
    expect(lastShift?.exposures.door?.peak?.ppm).toBeCloseTo(18.2, 6);
  });

  it('of furnaces counts no day, and the last eight hours do: 25 ppm with nothing ever lit', () => {
    const cold = (minute: number) => ({ ...COLD, door: 25 + (Math.round(minute * 6) % 2) });
    const run = runDay().on(8 * 60 + 5, cold);
    expect(run.state.lastShift).toBeNull();
    expect(run.told.get('unsafe-air-day-mean')).toBeGreaterThan(6 * 60);
    const week = (minute: number) => ({ ...COLD, door: 12 + (Math.round(minute * 6) % 2) });
    expect(
      runDay()
        .on(26 * 60, week)
        .told.has('unsafe-air-day-mean'),
    ).toBe(false);
  });
});

it('tells the worst of two sensors, once', () => {
  const config = dayConfig({ channels: [sensor('door'), sensor('forge')] });
  const both = (minute: number) => ({ ...alive(70)(minute), forge: 75 + (Math.round(minute * 6) % 2) * 0.2 });
  const told = runDay(config)
    .on(20, both)
    .findings()
    .filter(({ kind }) => kind === 'unsafe-air-short-mean');
  expect(told).toHaveLength(1);
  expect(told[0]?.params.channel).toBe('forge');
});
