import { describe, expect, it } from 'vitest';
import { makeBody, type Shape } from '../../../hub/physics/heat/body.ts';
import {
  type CoolingPoint,
  coolingCurves,
  coolingTime85,
  secondsBetween,
} from '../../../hub/physics/heat/cooling.ts';
import { closedFurnaceCooling, coolingRateAt, judgeCooling } from '../../../hub/physics/heat/cooling-rule.ts';
import { type HeatPoint, heatCurve } from '../../../hub/physics/heat/heat-curve.ts';
import { type Material, plainMaterial, structuralSteel } from '../../../hub/physics/heat/material.ts';
import { filmFromSeverity, MEDIUM_IDS, mediumOf } from '../../../hub/physics/heat/media.ts';
import { STILL_AIR } from '../../reference/heat-values.ts';
import { seededNoise } from '../../reference/seeded-noise.ts';

const LUMPED_650 = plainMaterial({ densityKgM3: 7850, specificHeatJKgK: 650, conductivityWmK: 1e4 });

function body(mm: number, material: Material = structuralSteel(), shape: Shape = 'plate') {
  return makeBody({ shape, sectionMetres: mm / 1000, material });
}

function core(points: readonly HeatPoint[]): CoolingPoint[] {
  return points.map(({ atSeconds, coreCelsius }) => ({ atSeconds, celsius: coreCelsius }));
}

/** A straight fall at a rate, one point a minute, in steps of a quarter degree as a digitiser gives. */
function straight(from: number, to: number, celsiusPerHour: number): CoolingPoint[] {
  const count = Math.ceil(((from - to) / celsiusPerHour) * 60) + 2;
  return Array.from({ length: count }, (_, i) => {
    const celsius = Math.round((from - (celsiusPerHour * i) / 60) * 4) / 4;
    return { atSeconds: i * 60, celsius };
  });
}

describe('cooling in still air', () => {
  it.each(STILL_AIR)('a %d mm plate cools by the table', (mm, rates, t85) => {
    const start = { body: body(mm, LUMPED_650), startCelsius: 950, medium: 'still-air' };
    const curve = core(coolingCurves({ ...start, untilCelsius: 480 }).typical);
    expect(Math.abs(coolingTime85(curve) - t85) / t85).toBeLessThan(0.015);
    for (const [i, rate] of rates.entries()) {
      const computed = coolingRateAt(curve, 900 - 100 * i) / 3600;
      // The table prints two or three figures.
      expect(Math.abs(computed - rate) / rate, `${900 - 100 * i} °C`).toBeLessThan(0.05);
    }
  });

  it('EN steel takes longer than the table: the transformation gives heat back', () => {
    const curve = core(
      coolingCurves({ body: body(12), startCelsius: 900, medium: 'still-air', untilCelsius: 450 }).typical,
    );
    expect(coolingTime85(curve)).toBeGreaterThan(1.3 * 254);
  });
});

describe('cooling media', () => {
  it('every medium has a band around its value, and says where it comes from', () => {
    for (const id of MEDIUM_IDS) {
      const { filmWM2K, source } = mediumOf(id);
      expect(filmWM2K.low, id).toBeLessThan(filmWM2K.value);
      expect(filmWM2K.high, id).toBeGreaterThan(filmWM2K.value);
      expect(source.length, id).toBeGreaterThan(10);
    }
  });

  it('severity 1/in is 2150 W/(m² K) by its definition H = h/(2k), k 27.3', () => {
    expect(filmFromSeverity(1)).toBeCloseTo((2 * 27.3) / 0.0254, 6);
    expect(mediumOf('still-oil').filmWM2K.value).toBeCloseTo(filmFromSeverity(0.3), 6);
  });

  it('air is slower than oil, oil than water, water than brine; the band brackets the curve', () => {
    const seconds = ['still-air', 'moving-air', 'still-oil', 'moving-oil', 'still-water', 'still-brine'].map(
      (medium) => {
        const plan = {
          body: body(20, structuralSteel(), 'bar'),
          startCelsius: 850,
          medium,
          untilCelsius: 300,
        };
        const { typical, slowest, fastest } = coolingCurves(plan);
        const ends = [fastest, typical, slowest].map((points) => coolingTime85(core(points)));
        expect(ends).toEqual(ends.toSorted((a, b) => a - b));
        return ends[1] ?? Number.NaN;
      },
    );
    expect(seconds).toEqual(seconds.toSorted((a, b) => b - a));
  });

  it('refuses a medium it does not know, and an end that is never reached', () => {
    const plan = { body: body(6), startCelsius: 850, medium: 'still-air', untilCelsius: 100 };
    expect(() => coolingCurves({ ...plan, medium: 'mercury' })).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
    expect(() => coolingCurves({ ...plan, untilCelsius: 21 })).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
  });
});

describe('time between two temperatures', () => {
  it('is read off a straight fall exactly', () => {
    expect(secondsBetween(straight(820, 480, 300), 800, 500)).toBeCloseTo(3600, -1);
  });

  it('counts from the last time above, so that a re-heat starts the count again', () => {
    const curve = [820, 790, 810, 650, 480].map((celsius, i) => ({ atSeconds: 100 * i, celsius }));
    // 800 °C is passed at 206.25 s for the last time, 500 °C at 388.24 s.
    expect(coolingTime85(curve)).toBeCloseTo(388.235 - 206.25, 2);
  });

  it('refuses a curve that does not pass both', () => {
    expect(() => coolingTime85(straight(790, 480, 100))).toThrow(
      expect.objectContaining({ code: 'not-applicable' }),
    );
    expect(() => secondsBetween(straight(850, 400, 100), 500, 800)).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    );
  });
});

describe('the rule of an anneal', () => {
  const rule = { fromCelsius: 800, toCelsius: 650, mostCelsiusPerHour: 28 };

  it('800 to 650 °C at 28 °C an hour takes 5.36 h, 790 to 540 at 22 takes 11.4 h', () => {
    expect(judgeCooling(straight(810, 640, 28), rule)).toMatchObject({ met: true });
    expect(judgeCooling(straight(810, 640, 28), rule).hours).toBeCloseTo(5.36, 1);
    const toolSteel = { fromCelsius: 790, toCelsius: 540, mostCelsiusPerHour: 22 };
    expect(judgeCooling(straight(800, 530, 22), toolSteel).ruleHours).toBeCloseTo(11.4, 1);
  });

  it('a fall that is right on the whole but once too fast is not met, and says where', () => {
    const curve = straight(810, 640, 20);
    const dropAt = curve.findIndex((point) => point.celsius <= 720);
    const dropped = curve.map((point, i) => (i < dropAt ? point : { ...point, celsius: point.celsius - 15 }));
    const verdict = judgeCooling(dropped, rule);
    expect(verdict.meanCelsiusPerHour).toBeLessThan(28);
    expect(verdict.met).toBe(false);
    expect(Math.abs(verdict.worstAtCelsius - 720)).toBeLessThanOrEqual(10);
  });

  it('a degree of noise neither fails a good fall nor passes a bad one', () => {
    const noise = seededNoise(5);
    const noisy = (rate: number): CoolingPoint[] =>
      straight(812, 640, rate).map((p) => ({ ...p, celsius: p.celsius + noise() }));
    expect(judgeCooling(noisy(25), rule).met).toBe(true);
    expect(judgeCooling(noisy(40), rule).met).toBe(false);
  });

  it('still air is nowhere near it', () => {
    const curve = core(
      coolingCurves({ body: body(25), startCelsius: 850, medium: 'still-air', untilCelsius: 600 }).typical,
    );
    const verdict = judgeCooling(curve, rule);
    expect(verdict.met).toBe(false);
    expect(verdict.worstCelsiusPerHour).toBeGreaterThan(1000);
  });

  it('refuses a range too short to judge and a record that ends early', () => {
    const short = { ...rule, toCelsius: 795 };
    expect(() => judgeCooling(straight(810, 640, 28), short)).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
    expect(() => judgeCooling(straight(810, 700, 28), rule)).toThrow(
      expect.objectContaining({ code: 'not-applicable' }),
    );
  });
});

describe('a closed furnace left alone', () => {
  it('falls by 150 °C an hour at 800 and 50 at 500, as shops report', () => {
    const chamber = closedFurnaceCooling(850);
    const curve = Array.from({ length: 280 }, (_, i) => ({ atSeconds: i * 60, celsius: chamber(i * 60) }));
    expect(coolingRateAt(curve, 800)).toBeCloseTo(150, -1);
    expect(coolingRateAt(curve, 500)).toBeCloseTo(50, -1);
  });

  it('carries a piece down with it, and makes no claim below 450 °C', () => {
    const chamber = closedFurnaceCooling(850);
    const film = { emissivity: 0.8, film: 10 };
    const plan = {
      body: body(12),
      startCelsius: 850,
      surroundings: chamber,
      ...film,
      seconds: 7200,
      everySeconds: 120,
    };
    const last = heatCurve(plan).at(-1);
    expect(last?.coreCelsius ?? 0).toBeGreaterThan(last?.surroundingsCelsius ?? 0);
    expect(() => chamber(10 * 3600)).toThrow(expect.objectContaining({ code: 'not-applicable' }));
  });
});
