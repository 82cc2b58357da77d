import { describe, expect, it } from 'vitest';
import { plannedAt } from '../../hub/firing/plan.ts';
import { at, caseOf, curve, judged, QUENCH, RAMP, type SegmentInput, soak, T0 } from './kit.ts';

const rated: SegmentInput = {
  kind: 'ramp',
  targetCelsius: 800,
  toleranceCelsius: 10,
  rateCelsiusPerHour: 3600,
};
const heats = (perSecond: number) => (s: number) => Math.min(800, 20 + s * perSecond);

describe('the plan', () => {
  it('starts where the furnace really was and rises at the planned rate, with its band', () => {
    const readings = curve('chamber', { from: 0, to: 10 }, heats(1));
    const { plan, plannedCelsius } = judged(caseOf([rated, soak(600)]), { readings, to: 10 });
    expect(plan.slice(0, 2)).toEqual([
      { at: T0, celsius: 20, low: 10, high: 30 },
      { at: at(780), celsius: 800, low: 790, high: 810 },
    ]);
    expect(plan.at(-1)?.at).toBe(at(780 + 600));
    expect(plannedCelsius).toBe(30);
  });

  it('is pinned to what has happened: a late ramp moves the soak and its end', () => {
    const readings = curve('chamber', { from: 0, to: 1600 }, heats(0.5));
    const { plan, segments } = judged(caseOf([rated, soak(600)]), { readings, to: 1600 });
    const arrived = segments[0]?.endedAt;
    expect(arrived).toBe(at(1540));
    expect(plan.map((point) => [point.at, point.celsius])).toEqual([
      [T0, 20],
      [at(780), 800],
      [at(1540), 800],
      [at(1540), 800],
      [at(2140), 800],
    ]);
  });

  it('of a ramp as fast as possible takes the measured rate, and a usual one before there is any', () => {
    const c = caseOf([RAMP, soak(600)], { furnaceKind: 'gas-forge' });
    const readings = curve('chamber', { from: 0, to: 300 }, heats(2));
    const early = judged(c, { readings, to: 10 }).plan[1];
    expect(early?.at).toBe(at((780 / 1800) * 3600));
    const later = judged(c, { readings, to: 300 }).plan[1];
    expect(((later?.at ?? 0) - T0) / 1000).toBeCloseTo(390, -1);
  });

  it('moves the end of a soak by as long as its clock stood still', () => {
    const readings = curve('chamber', { from: 0, to: 400 }, (s) => (s >= 100 && s < 200 ? 780 : 800));
    const { plan, endsAt } = judged(caseOf([soak(600)]), { readings, to: 400 });
    expect(plan.at(-1)?.at).toBe(at(700));
    expect(endsAt).toBe(at(700));
  });

  it('stays small and in order, with a quench as well', () => {
    const c = caseOf([
      rated,
      soak(60),
      QUENCH,
      { ...RAMP, targetCelsius: 200 } as SegmentInput,
      { ...soak(600), targetCelsius: 200 } as SegmentInput,
    ]);
    const { plan } = judged(c, { readings: curve('chamber', { from: 0, to: 900 }, heats(1)), to: 900 });
    expect(plan.length).toBeLessThanOrEqual(15);
    expect(plan.every((point, i) => i === 0 || point.at >= (plan[i - 1]?.at ?? 0))).toBe(true);
  });

  it('says nothing outside itself', () => {
    const plan = [
      { at: 0, celsius: 0, low: 0, high: 0 },
      { at: 100, celsius: 50, low: 0, high: 0 },
    ];
    expect(plannedAt(plan, 50)).toBe(25);
    expect(plannedAt(plan, 101)).toBeNull();
    expect(plannedAt([], 50)).toBeNull();
  });
});

describe('the estimates', () => {
  const c = caseOf([RAMP, soak(600)]);

  it('tell the arrival from the measured rate, and with it the end', () => {
    const readings = curve('chamber', { from: 0, to: 400 }, heats(1));
    const result = judged(c, { readings, to: 400 });
    expect(((result.arrivalAt ?? 0) - at(770)) / 1000).toBeCloseTo(0, 3);
    expect(result.endsAt).toBe(result.arrivalAt);
    expect(((result.firingEndsAt ?? 0) - at(1370)) / 1000).toBeCloseTo(0, 3);
    expect(result.nextMove.text).toBe('Heat to 800 °C: 7 min to go');
  });

  it('are silent when it does not come nearer, or nobody can see', () => {
    const flat = curve('chamber', { from: 0, to: 400 }, () => 500);
    expect(judged(c, { readings: flat, to: 400 })).toMatchObject({
      arrivalAt: null,
      endsAt: null,
      firingEndsAt: null,
    });
    const gone = curve('chamber', { from: 0, to: 300 }, heats(1));
    expect(judged(c, { readings: gone, to: 400 }).arrivalAt).toBeNull();
  });

  it('count the soak down to its exact end', () => {
    const readings = curve('chamber', { from: 0, to: 1000 }, heats(1));
    const result = judged(c, { readings, to: 890.5 });
    expect(result.endsAt).toBe(at(770 + 600));
    expect(result.nextMove.text).toBe('Hold: 8 min to go');
  });
});

describe('a schedule in °F', () => {
  it('is judged in °C and spoken in °F', () => {
    const c = caseOf([RAMP, soak(600)]);
    const fahrenheit = { ...c, schedule: { ...c.schedule, displayUnit: '[degF]' as const } };
    const readings = curve('chamber', { from: 0, to: 400 }, heats(1));
    const result = judged(fahrenheit, { readings, to: 400 });
    expect(result.nextMove.text).toBe('Heat to 1472 °F: 7 min to go');
    expect(result.events[0]?.text).toBe('Ramp to 1472 °F: started');
    expect({ ...result, nextMove: null, events: null }).toEqual({
      ...judged(c, { readings, to: 400 }),
      nextMove: null,
      events: null,
    });
  });
});
