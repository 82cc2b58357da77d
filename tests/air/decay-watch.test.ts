import { describe, expect, it } from 'vitest';
import { dayDecays } from '../../hub/air/day.ts';
import { seededNoise } from '../reference/seeded-noise.ts';
import { COLD, dayConfig, type Levels, LIT, runDay, sensor } from './day-kit.ts';

const PER_HOUR = 4;
const BACKGROUND = 2;
/** The box model: an excess falls by its air changes. Source: one-zone room, tests/physics/room-air. */
const falling = (from: number, startMinute: number, perHour = PER_HOUR): Levels => {
  const noise = seededNoise(3);
  return (minute) => {
    const excess = (from - BACKGROUND) * Math.exp((-perHour * (minute - startMinute)) / 60);
    return { ...COLD, chamber: 700, door: BACKGROUND + excess * (1 + 0.01 * noise()) };
  };
};
const quiet: Levels = () => ({ ...COLD, door: BACKGROUND });
const working: Levels = (minute) => ({ ...LIT, door: 50 + (Math.round(minute * 6) % 2) });

describe('ventilation by the way', () => {
  it('is measured from the fall after the gas has been shut, and holds its conditions as far as known', () => {
    const run = runDay().on(10, quiet).on(30, working).on(60, falling(50, 40), ['door open']);
    const [measured] = dayDecays(run.state);
    expect(measured?.fit.airChangesPerHour).toBeCloseTo(PER_HOUR, 1);
    expect(measured?.fit.low).toBeLessThan(PER_HOUR + 0.05);
    expect(measured?.fit.conditionsHeld).not.toBe(false);
    expect(measured?.tags).toEqual(['door open']);
    expect(measured?.backgroundPpm).toBeCloseTo(BACKGROUND, 6);
  });

  it('says that nobody told about the doors where no tag was ever set', () => {
    const run = runDay().on(10, quiet).on(30, working).on(90, falling(50, 40));
    const [measured] = dayDecays(run.state);
    const openings = measured?.fit.conditions.find(({ code }) => code === 'openings-unchanged');
    expect(openings?.held).toBeNull();
    expect(measured?.fit.conditionsHeld).toBeNull();
  });

  it('ends where somebody lights again, and what fell too little says so', () => {
    const run = runDay().on(10, quiet).on(30, working).on(8, falling(50, 40), []).on(5, working, []);
    const [measured] = dayDecays(run.state);
    expect(measured?.end).toBe('lit');
    const fall = measured?.fit.conditions.find(({ code }) => code === 'enough-fall');
    expect(fall?.held).toBe(false);
    expect(measured?.fit.conditionsHeld).toBe(false);
  });

  it('ends where somebody opens a door, so that no rate is of two rooms', () => {
    const run = runDay().on(10, quiet).on(30, working).on(20, falling(50, 40), []);
    run.on(1, falling(50, 40), ['door open']);
    const [measured] = dayDecays(run.state);
    expect(measured).toMatchObject({ end: 'changed', tags: [] });
  });

  it('measures nothing while the flame burns, from a level near the background, or of another source', () => {
    expect(dayDecays(runDay().on(10, quiet).on(120, working).state)).toEqual([]);
    expect(dayDecays(runDay().on(10, quiet).on(60, falling(10, 10)).state)).toEqual([]);
    const rising: Levels = (minute) => ({ ...COLD, door: BACKGROUND + minute });
    expect(dayDecays(runDay().on(10, quiet).on(80, rising).state)).toEqual([]);
  });

  it('begins anew at a silence instead of joining over it', () => {
    const run = runDay().on(10, quiet).on(30, working).on(5, falling(50, 40), []);
    run.on(4, () => COLD, []);
    expect(run.state.decays.door?.fall).toBeNull();
  });

  it('checks the mixing of the room where a second sensor saw the same fall', () => {
    const config = dayConfig({ channels: [sensor('door'), sensor('bench')] });
    const both =
      (levels: Levels): Levels =>
      (minute) => {
        const said = levels(minute);
        return { ...said, bench: (said.door ?? 0) * 0.95 + 0.1 };
      };
    const run = runDay(config)
      .on(10, both(quiet))
      .on(30, both(working))
      .on(60, both(falling(50, 40, 8)), []);
    const [measured] = dayDecays(run.state);
    expect(measured?.fit.conditions.find(({ code }) => code === 'mixed')?.held).toBe(true);
    expect(measured?.fit.conditionsHeld).toBe(true);
  });

  it('takes the air from outside for the background of a shop that was never seen at rest', () => {
    const run = runDay()
      .on(30, working)
      .on(60, falling(50, 30, 8), []);
    const [measured] = dayDecays(run.state);
    expect(measured?.backgroundPpm).toBe(0);
    expect(measured?.fit.conditions.find(({ code }) => code === 'background-steady')?.held).toBe(false);
    expect(measured?.fit.conditionsHeld).toBe(false);
  });

  it('takes carbon dioxide too, and leaves open whether people were in the room', () => {
    const config = dayConfig({ channels: [sensor('door', { gas: 'carbon-dioxide' })] });
    const high: Levels = () => ({ ...LIT, door: 3000 });
    const fall: Levels = (minute) => ({ ...COLD, door: 420 + 2580 * Math.exp((-3 * (minute - 40)) / 60) });
    const run = runDay(config)
      .on(10, () => ({ ...COLD, door: 420 }))
      .on(30, high)
      .on(120, fall, []);
    const [measured] = dayDecays(run.state);
    expect(measured?.fit.airChangesPerHour).toBeCloseTo(3, 1);
    expect(measured?.fit.conditions.find(({ code }) => code === 'source-off')?.held).toBeNull();
  });
});
