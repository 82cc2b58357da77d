import { describe, expect, it } from 'vitest';
import { makeBody } from '../../hub/physics/heat/body.ts';
import { heatCurve } from '../../hub/physics/heat/heat-curve.ts';
import { transformingSteel } from '../../hub/physics/heat/transforming-steel.ts';
import { CHAMBER, caseOf, curve, judged, LOAD, type SegmentInput } from './kit.ts';

/** Arrests in the course of a firing. The steel turns at 725 to 745 °C on heating, as the model is told. */

const plan: SegmentInput[] = [{ kind: 'ramp', targetCelsius: 850, toleranceCelsius: 10 }];
const chamberAt = (s: number) => Math.min(900, 20 + s * 0.5);
const body = makeBody({ shape: 'bar', sectionMetres: 0.02, material: transformingSteel() });
const points = heatCurve({
  body,
  startCelsius: 20,
  surroundings: chamberAt,
  emissivity: 0.8,
  film: 10,
  seconds: 3000,
  everySeconds: 1,
});
const steel = (s: number) => points[Math.round(s)]?.coreCelsius ?? 20;

describe('an arrest on heating', () => {
  const c = caseOf(plan, { furnaceKind: 'electric-oven', watched: [CHAMBER, LOAD] });
  const chamber = curve('chamber', { from: 0, to: 3000 }, chamberAt);

  it('is told once, where the steel turned, at the time it did, among the other events in order', () => {
    const load = curve('load', { from: 0, to: 3000 }, steel);
    const { events } = judged(c, { readings: [...chamber, ...load], to: 3000 });
    const arrests = events.filter(({ kind }) => kind === 'arrest');
    expect(arrests).toHaveLength(1);
    expect(arrests[0]?.params).toMatchObject({ direction: 'heating', channel: 'load' });
    expect(Number(arrests[0]?.params.celsius)).toBeGreaterThan(720);
    expect(Number(arrests[0]?.params.celsius)).toBeLessThan(750);
    expect(events.map(({ at }) => at)).toEqual([...events.map(({ at }) => at)].sort((a, b) => a - b));
  });

  it('is none in the air of the chamber, nor in a probe that rises evenly', () => {
    const even = curve('load', { from: 0, to: 3000 }, (s) => Math.min(860, 20 + s * 0.4));
    const { events } = judged(c, { readings: [...chamber, ...even], to: 3000 });
    expect(events.filter(({ kind }) => kind === 'arrest')).toEqual([]);
  });
});
