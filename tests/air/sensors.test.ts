import { describe, expect, it } from 'vitest';
import { COLD, dayConfig, type Levels, LIT, MINUTE, runDay, START, sensor } from './day-kit.ts';

const PAIR = dayConfig({ channels: [sensor('door'), sensor('forge')] });
/** One step up and down, as real air. */
const wiggle = (minute: number) => Math.round(minute * 6) % 3;
const kindsOf = (run: ReturnType<typeof runDay>) => run.findings().map(({ kind }) => kind);

describe('a sensor that does not move', () => {
  it('is told where air cannot be still: the same 25 ppm for half an hour', () => {
    const still: Levels = () => ({ ...LIT, door: 14 });
    const run = runDay().on(29, still);
    expect(kindsOf(run)).toEqual([]);
    run.on(2, still);
    expect(kindsOf(run)).toEqual(['air-sensor-flat']);
    expect(run.findings()[0]).toMatchObject({ subject: 'door', params: { why: 'still', ppm: 14 } });
  });

  it('is told sooner when another sensor of the gas moves meanwhile, and the two are not said to disagree', () => {
    const run = runDay(PAIR).on(14, (minute) => ({
      ...LIT,
      door: 3,
      forge: 2 + 2 * minute + wiggle(minute),
    }));
    expect(kindsOf(run)).toEqual(['air-sensor-flat']);
    expect(run.findings()[0]).toMatchObject({ subject: 'door', params: { why: 'others-move' } });
    run.on(11, (minute) => ({ ...LIT, door: 3, forge: 50 + wiggle(minute) }));
    expect(kindsOf(run)).not.toContain('air-sensors-disagree');
  });

  it('is told after an hour of flame when it used to move under one', () => {
    const lively: Levels = (minute) => ({ ...LIT, door: 2 + wiggle(minute) });
    const run = runDay()
      .on(30, lively)
      .on(59, () => ({ ...LIT, door: 2 }));
    expect(kindsOf(run)).toEqual([]);
    run.on(3, () => ({ ...LIT, door: 2 }));
    expect(run.findings()[0]?.params.why).toBe('used-to-move');
    run.on(3, lively);
    expect(kindsOf(run)).toEqual([]);
  });

  it('is not told of clean air: nothing at all for a night, and none that never moved', () => {
    expect(kindsOf(runDay().on(12 * 60, () => ({ ...COLD, door: 0 })))).toEqual([]);
    expect(kindsOf(runDay().on(4 * 60, () => ({ ...LIT, door: 0 })))).toEqual([]);
  });

  it('is not told of one that is silent: that is for the judge of blindness', () => {
    const run = runDay()
      .on(10, () => ({ ...LIT, door: 14 }))
      .on(60, () => LIT);
    expect(kindsOf(run)).toEqual([]);
  });
});

describe('two sensors that disagree', () => {
  const apart: Levels = (minute) => ({ ...LIT, door: 4 + wiggle(minute), forge: 45 + wiggle(minute) });

  it('are told after ten minutes, the higher first', () => {
    const run = runDay(PAIR).on(9, apart);
    expect(kindsOf(run)).not.toContain('air-sensors-disagree');
    run.on(2, apart);
    const [told] = run.findings().filter(({ kind }) => kind === 'air-sensors-disagree');
    expect(told?.params).toMatchObject({ channel: 'forge', other: 'door' });
    expect(told?.subject).toBe('door forge');
  });

  it('are not told of the difference of two places, nor of a short burst at one', () => {
    const near: Levels = (minute) => ({ ...LIT, door: 12 + wiggle(minute), forge: 28 + wiggle(minute) });
    expect(kindsOf(runDay(PAIR).on(40, near))).not.toContain('air-sensors-disagree');
    const same: Levels = (minute) => ({ ...LIT, door: 4 + wiggle(minute), forge: 5 + wiggle(minute) });
    expect(kindsOf(runDay(PAIR).on(8, apart).on(10, same))).not.toContain('air-sensors-disagree');
  });

  it('end when they agree again, and silence of one ends nothing', () => {
    const run = runDay(PAIR)
      .on(12, apart)
      .on(10, () => ({ ...LIT, door: 5 }));
    expect(kindsOf(run)).toContain('air-sensors-disagree');
    run.on(8, (minute) => ({ ...LIT, door: 4 + wiggle(minute), forge: 6 + wiggle(minute) }));
    expect(kindsOf(run)).not.toContain('air-sensors-disagree');
  });
});

describe('a sensor past its date', () => {
  const dated = (calibrationDueAt: number | null, endOfLifeAt: number | null) =>
    runDay(dayConfig({ channels: [sensor('door', { calibrationDueAt, endOfLifeAt })] }));
  const calm: Levels = (minute) => ({ ...COLD, door: 1 + wiggle(minute) });

  it('is told from the day its calibration is due', () => {
    const run = dated(START + 5 * MINUTE, null).on(4, calm);
    expect(kindsOf(run)).toEqual([]);
    run.on(2, calm);
    expect(run.findings()[0]).toMatchObject({ kind: 'air-sensor-overdue', params: { what: 'calibration' } });
  });

  it('is told as dead when its life is over, whatever its calibration', () => {
    const run = dated(START - MINUTE, START - 3 * 86_400_000).on(1, calm);
    expect(run.findings()).toHaveLength(1);
    expect(run.findings()[0]?.params).toMatchObject({ what: 'end-of-life' });
  });

  it('is not told where nobody set a date', () => {
    expect(kindsOf(dated(null, null).on(10, calm))).toEqual([]);
  });
});

describe('another source', () => {
  const rising: (fire: object) => Levels = (fire) => (minute) => ({
    ...fire,
    door: minute < 15 ? 1 + wiggle(minute) * 0.2 : Math.min(18, 1 + (minute - 15)),
  });

  it('is told when carbon monoxide rises by 10 ppm with every furnace cold', () => {
    const run = runDay().on(40, rising(COLD));
    expect(kindsOf(run)).toEqual(['air-other-source']);
    expect(run.findings()[0]?.params).toMatchObject({ channel: 'door' });
    run.on(5, () => ({ ...COLD, door: 3 }));
    expect(kindsOf(run)).toEqual([]);
  });

  it('is not told with a furnace hot, nor while nobody knows whether one is', () => {
    expect(kindsOf(runDay().on(40, rising(LIT)))).toEqual([]);
    expect(kindsOf(runDay().on(40, rising({})))).toEqual([]);
    expect(kindsOf(runDay(dayConfig({ furnaces: [] })).on(40, rising({})))).toEqual([]);
  });

  it('is not told of what a furnace leaves behind: a level that falls', () => {
    const fall: Levels = (minute) => ({ ...COLD, door: 17 * Math.exp(-minute / 30) });
    const run = runDay()
      .on(1, () => ({ ...LIT, door: 17 }))
      .on(90, fall);
    expect([...run.told.keys()]).toEqual([]);
  });

  it('stays told when the furnace is lit afterwards, until the level is down', () => {
    const run = runDay()
      .on(40, rising(COLD))
      .on(5, () => ({ ...LIT, door: 18 }));
    expect(kindsOf(run)).toContain('air-other-source');
  });
});
