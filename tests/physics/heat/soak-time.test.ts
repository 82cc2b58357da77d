import { describe, expect, it } from 'vitest';
import { makeBody } from '../../../hub/physics/heat/body.ts';
import { alongPoints, heatCurve } from '../../../hub/physics/heat/heat-curve.ts';
import { type Material, structuralSteel } from '../../../hub/physics/heat/material.ts';
import { startPiece } from '../../../hub/physics/heat/piece.ts';
import { soakNeeded, timeToTolerance } from '../../../hub/physics/heat/soak-time.ts';
import { HEATING_MINUTES } from '../../reference/heat-values.ts';

/** EN steel that conducts so well that it is equally hot throughout, as the reference table takes it. */
const LUMPED: Material = { ...structuralSteel(), conductivity: () => 1e4 };

function cold(mm: number, material: Material = structuralSteel()) {
  return startPiece(makeBody({ shape: 'plate', sectionMetres: mm / 1000, material }), 20);
}

function arrival(mm: number, material: Material, furnace: number, target: number) {
  const film = { emissivity: 0.8, film: 10 };
  const from = cold(mm, material);
  return timeToTolerance({
    from,
    surroundings: furnace,
    ...film,
    targetCelsius: target,
    toleranceCelsius: 5,
  });
}

describe('time to come to heat', () => {
  it.each(HEATING_MINUTES)(
    'a %d mm plate takes %d min to 805 °C, %d min to 195 °C',
    (mm, hardening, tempering) => {
      const harden = arrival(mm, LUMPED, 815, 810).seconds / 60;
      const temper = arrival(mm, LUMPED, 200, 200).seconds / 60;
      // Printed to 0.1 min; first order in time leaves up to 2 %.
      expect(Math.abs(harden - hardening)).toBeLessThan(0.06 + 0.02 * hardening);
      expect(Math.abs(temper - tempering)).toBeLessThan(0.06 + 0.02 * tempering);
    },
  );

  it('the core of a thick plate arrives later than the lumped table says, by its lag', () => {
    const lumped = arrival(50, LUMPED, 815, 810).seconds;
    const real = arrival(50, structuralSteel(), 815, 810);
    expect(real.seconds).toBeGreaterThan(lumped + 60);
    expect(real.state.surfaceCelsius).toBeGreaterThan(real.state.coreCelsius);
  });

  it('does not leap over a band much narrower than its steps', () => {
    const question = { from: cold(6), surroundings: 1200, emissivity: 0.8, film: 10 };
    const narrow = timeToTolerance({ ...question, targetCelsius: 500, toleranceCelsius: 0.1 });
    expect(narrow.state.coreCelsius).toBeGreaterThan(499.9);
    expect(narrow.state.coreCelsius).toBeLessThan(506);
  });

  it('finds a cooling piece from above as well', () => {
    const hot = startPiece(cold(12).body, 850);
    const air = { from: hot, surroundings: 20, emissivity: 0.8, film: 10 };
    const cooled = timeToTolerance({ ...air, targetCelsius: 500, toleranceCelsius: 10 });
    expect(cooled.state.coreCelsius).toBeLessThanOrEqual(510);
    expect(cooled.seconds).toBeGreaterThan(100);
  });

  it('says that the skin is beyond the band when a hot furnace rushes a thick piece', () => {
    const question = { from: cold(60), surroundings: 1150, emissivity: 0.8, film: 10 };
    const rushed = timeToTolerance({ ...question, targetCelsius: 800, toleranceCelsius: 10 });
    expect(rushed.surfaceBeyondBand).toBe(true);
    const careful = timeToTolerance({
      ...question,
      surroundings: 805,
      targetCelsius: 800,
      toleranceCelsius: 10,
    });
    expect(careful.surfaceBeyondBand).toBe(false);
  });

  it('refuses to promise what the furnace cannot reach', () => {
    const question = { from: cold(3), surroundings: 700, emissivity: 0.8, film: 10 };
    const impossible = () =>
      timeToTolerance({ ...question, targetCelsius: 800, toleranceCelsius: 10, limitSeconds: 7200 });
    expect(impossible).toThrow(expect.objectContaining({ code: 'no-solution' }));
  });
});

describe('soak needed', () => {
  it('is the arrival of the core plus the time asked for', () => {
    const question = {
      from: cold(25),
      surroundings: 815,
      emissivity: 0.8,
      film: 10,
      targetCelsius: 810,
      toleranceCelsius: 5,
    };
    const soak = soakNeeded(question, 20 * 60);
    expect(soak.totalSeconds).toBe(soak.arrivalSeconds + 1200);
    expect(soak.arrivalSeconds / 60).toBeGreaterThan(34);
    expect(soak.lagCelsius).toBeGreaterThan(0);
    expect(() => soakNeeded(question, -1)).toThrow(expect.objectContaining({ code: 'out-of-range' }));
  });
});

describe('heat curve', () => {
  const plan = {
    body: cold(12).body,
    startCelsius: 20,
    surroundings: 815,
    emissivity: 0.8,
    film: 10,
    seconds: 1000,
    everySeconds: 60,
  } as const;

  it('has its first point at the start and its last at the end', () => {
    const curve = heatCurve(plan);
    expect(curve.length).toBe(18);
    expect(curve[0]).toMatchObject({ atSeconds: 0, coreCelsius: 20, surfaceCelsius: 20 });
    expect(curve.at(-1)?.atSeconds).toBe(1000);
  });

  it('follows a chamber given in straight pieces', () => {
    const chamber = alongPoints([
      { atSeconds: 0, celsius: 20 },
      { atSeconds: 500, celsius: 820 },
      { atSeconds: 800, celsius: 820 },
    ]);
    const curve = heatCurve({ ...plan, surroundings: chamber });
    expect(chamber(250)).toBeCloseTo(420, 9);
    expect(curve[5]?.surroundingsCelsius).toBeCloseTo(500, 9);
    expect(curve.at(-1)?.surroundingsCelsius).toBe(820);
    expect(curve.every((p) => p.coreCelsius <= p.surroundingsCelsius + 1e-6)).toBe(true);
  });

  it('refuses more points than a screen can use, and time that does not rise', () => {
    expect(() => heatCurve({ ...plan, everySeconds: 0.01 })).toThrow(
      expect.objectContaining({ code: 'out-of-range' }),
    );
    const twice = { atSeconds: 5, celsius: 1 };
    expect(() => alongPoints([twice, twice])).toThrow(expect.objectContaining({ code: 'bad-input' }));
    expect(() => alongPoints([])).toThrow(expect.objectContaining({ code: 'bad-input' }));
  });
});
