import { describe, expect, it } from 'vitest';
import { findGrade, GRADES } from '../../../hub/physics/steel/catalogue.ts';
import { outsideOf, requireComposition } from '../../../hub/physics/steel/composition.ts';
import { derivedWindows, windowsOf } from '../../../hub/physics/steel/derived-windows.ts';
import { describeProvenance } from '../../../hub/physics/steel/estimate.ts';
import type { Grade, StepName } from '../../../hub/physics/steel/grade.ts';

function grade(id: string): Grade {
  const found = findGrade(id);
  if (found === null) throw new Error(`no grade ${id}`);
  return found;
}

function ends(id: string, step: StepName): readonly number[] {
  const found = grade(id).windows.find((item) => item.step === step);
  return found === undefined ? [] : [found.lowCelsius, found.highCelsius];
}

describe('the catalogue', () => {
  it('holds 24 grades, each id once', () => {
    expect(GRADES).toHaveLength(24);
    expect(new Set(GRADES.map(({ id }) => id)).size).toBe(24);
  });

  it.each(GRADES)('$id: nominal lies inside its limits and is a composition', (item) => {
    expect(outsideOf(item.nominal, item.limits)).toEqual([]);
    expect(requireComposition(item.nominal)).toEqual(item.nominal);
  });

  it.each(GRADES)('$id: every window says where it comes from and how far to trust it', (item) => {
    expect(item.windows.length).toBeGreaterThanOrEqual(3);
    for (const { lowCelsius, highCelsius, uncertaintyCelsius, from } of windowsOf(item)) {
      expect(lowCelsius).toBeLessThanOrEqual(highCelsius);
      expect(uncertaintyCelsius).toBe(from.standing.startsWith('published') ? 10 : 20);
      expect(describeProvenance(from)).toMatch(/^(published|from memory|common practice)/);
    }
    for (const from of [
      item.limitsFrom,
      item.quench.from,
      item.quenched.from,
      ...item.names.map((name) => name.from),
    ]) {
      expect(describeProvenance(from).length).toBeGreaterThan(10);
    }
  });

  it.each(GRADES)('$id: forging stops above where it hardens from, and never above its start', (item) => {
    const [stop, start] = ends(item.id, 'forge');
    const [harden] = ends(item.id, 'austenitise');
    expect(stop).toBeLessThan(start ?? 0);
    expect(harden).toBeLessThan(start ?? 0);
  });

  it('is copied right: windows by hand from the tables', () => {
    // Sources stand beside the rows in the catalogue.
    expect(ends('1045', 'austenitise')).toEqual([820, 860]);
    expect(ends('1095', 'normalise')).toEqual([855, 855]);
    expect(ends('O1', 'austenitise')).toEqual([790, 815]);
    expect(ends('D2', 'full-anneal')).toEqual([870, 900]);
    expect(ends('4340', 'normalise')).toEqual([870, 925]);
    expect(ends('15N20', 'austenitise')).toEqual([790, 815]);
  });

  it('carries the slow cooling of each anneal', () => {
    // Published: 28 °C/h for 10xx, 22 for O1 and A2, 14 for S7, 11 for 5160, 6 to spheroidise 52100.
    const rate = (id: string, step: StepName) =>
      grade(id).windows.find((item) => item.step === step)?.maxCoolingCelsiusPerHour;
    expect(['1045', 'O1', 'A2', 'S7', '5160'].map((id) => rate(id, 'full-anneal'))).toEqual([
      28, 22, 22, 14, 11,
    ]);
    expect(rate('52100', 'spheroidise')).toBe(6);
  });

  it('does not offer to normalise air-hardening steel', () => {
    for (const id of ['A2', 'D2', 'S7', 'H13']) {
      expect(grade(id).notRecommended).toContain('normalise');
      expect(windowsOf(grade(id)).map((item) => item.step)).not.toContain('normalise');
    }
  });

  it('says common practice where that is all there is', () => {
    const window = grade('26C3').windows.find((item) => item.step === 'austenitise');
    expect(window === undefined ? '' : describeProvenance(window.from)).toBe('common practice, no source');
  });
});

describe('findGrade', () => {
  it('finds a grade by any of its names, however written', () => {
    expect(findGrade('AISI 1045')?.id).toBe('1045');
    expect(findGrade('sae-4140')?.id).toBe('4140');
    expect(findGrade('42CrMo4')?.id).toBe('4140');
    expect(findGrade('1.2379')?.id).toBe('D2');
    expect(findGrade('75ni8')?.id).toBe('15N20');
  });

  it('prefers the grade whose own name it is over a near equivalent', () => {
    expect(findGrade('1.1545')?.id).toBe('C105W1');
    expect(findGrade('C105U')?.id).toBe('C105W1');
  });

  it('finds nothing rather than something like it', () => {
    expect(findGrade('1046')).toBeNull();
    expect(findGrade('')).toBeNull();
  });
});

describe('derived windows', () => {
  const comparable = GRADES.filter((item) => derivedWindows(item.nominal).length > 0);

  it.each(comparable)('$id: the derived hardening window comes within 10 °C of the listed one', (item) => {
    const listed = ends(item.id, 'austenitise');
    const derived = derivedWindows(item.nominal).find((window) => window.step === 'austenitise');
    expect((derived?.highCelsius ?? 0) + 10).toBeGreaterThanOrEqual(listed[0] ?? Number.NaN);
    expect((derived?.lowCelsius ?? 9999) - 10).toBeLessThanOrEqual(listed[1] ?? Number.NaN);
  });

  it('keep out of high-alloy steel, where carbides rule', () => {
    for (const id of ['A2', 'D2', 'S7', 'H13']) expect(derivedWindows(grade(id).nominal)).toEqual([]);
  });

  it('stay below Ac1 for sub-critical steps and fill what the row leaves open', () => {
    const steps = windowsOf(grade('1045')).map((item) => item.step);
    expect(steps).toEqual(expect.arrayContaining(['sub-critical-anneal', 'stress-relief', 'spheroidise']));
    expect(new Set(steps).size).toBe(steps.length);
    const sub = windowsOf(grade('1045')).find((item) => item.step === 'sub-critical-anneal');
    expect(sub?.highCelsius).toBeCloseTo(722.2 - 20, 0);
  });
});
