import { describe, expect, it } from 'vitest';
import { makeBody } from '../../../hub/physics/heat/body.ts';
import { sensibleEnthalpy, structuralSteel } from '../../../hub/physics/heat/material.ts';
import {
  austeniteShare,
  heatContentJKg,
  type PieceState,
  startPiece,
  stepPiece,
} from '../../../hub/physics/heat/piece.ts';
import { type Transformation, transformingSteel } from '../../../hub/physics/heat/transforming-steel.ts';

function thinStrip(options: Partial<Transformation> = {}): PieceState {
  const material = transformingSteel(options);
  return startPiece(makeBody({ shape: 'plate', sectionMetres: 0.004, material, intervals: 4 }), 20);
}

/** One second a step towards a temperature; every state on the way. */
function hold(from: PieceState, surroundingsCelsius: number, seconds: number): PieceState[] {
  const way = [from];
  for (let i = 0; i < seconds; i++) {
    const last = way.at(-1) ?? from;
    way.push(stepPiece(last, { seconds: 1, surroundingsCelsius, emissivity: 0.8, film: 10 }));
  }
  return way;
}

/** Seconds that the core spends between two temperatures. */
function dwell(way: readonly PieceState[], low: number, high: number): number {
  return way.filter((state) => state.coreCelsius >= low && state.coreCelsius < high).length;
}

describe('steel that transforms', () => {
  it('takes up 82 J/g between Ac1 and the end of transformation, EN puts 84.8 in its peak', () => {
    const steel = transformingSteel();
    const latent = steel.enthalpy(745, 1) - sensibleEnthalpy(745);
    expect(latent).toBeCloseTo(82_000, 3);
    const en = structuralSteel().enthalpy(900, 0) - sensibleEnthalpy(900);
    expect(en / 1000).toBeCloseTo(84.8, 0);
  });

  it('lingers at Ac1 on heating and at Ar1 on cooling, and at neither the other way', () => {
    const up = hold(thinStrip(), 850, 900);
    const hot = up.at(-1) ?? thinStrip();
    const down = hold(hot, 20, 300);
    expect(austeniteShare(hot)).toBe(1);
    expect(dwell(up, 725, 745)).toBeGreaterThan(3 * dwell(up, 700, 720));
    expect(dwell(down, 675, 690)).toBeGreaterThan(3 * dwell(down, 725, 740));
    expect(austeniteShare(down.at(-1) ?? hot)).toBe(0);
  });

  it('turned half way it comes back half way: nothing happens between Ar1 and Ac1', () => {
    const up = hold(thinStrip(), 850, 900);
    const half = up.find((state) => austeniteShare(state) >= 0.5) ?? thinStrip();
    const cooled = hold(half, 695, 400).at(-1) ?? half;
    expect(austeniteShare(cooled)).toBeCloseTo(austeniteShare(half), 1);
    expect(cooled.coreCelsius).toBeLessThan(700);
  });

  it('undercooled austenite re-heats the strip when it goes: recalescence', () => {
    const strip = thinStrip({ undercoolingCelsius: 30, coolingSeconds: 8 });
    const hot = hold(strip, 850, 900).at(-1) ?? strip;
    const down = hold(hot, 20, 200);
    const rises = down.filter((s, i) => i > 0 && s.coreCelsius > (down[i - 1]?.coreCelsius ?? 0) + 0.5);
    expect(rises.length).toBeGreaterThan(1);
    expect(rises.every((s) => s.coreCelsius > 640 && s.coreCelsius < 692)).toBe(true);
  });

  it('gives back on cooling all that it took on heating', () => {
    const strip = thinStrip({ undercoolingCelsius: 20, coolingSeconds: 30 });
    const cold = hold(hold(strip, 900, 1200).at(-1) ?? strip, 20, 8000).at(-1) ?? strip;
    expect(cold.coreCelsius).toBeLessThan(25);
    expect(Math.abs(heatContentJKg(cold) - cold.heatInJKg)).toBeLessThan(1e-2);
  });

  it('refuses bands that are empty, out of order or implausible', () => {
    const bad = (options: Partial<Transformation>) => () => transformingSteel(options);
    const refused = (code: string) => expect.objectContaining({ code });
    expect(bad({ coolingFromCelsius: 740 })).toThrow(refused('bad-input'));
    expect(bad({ heatingToCelsius: 725 })).toThrow(refused('out-of-range'));
    expect(bad({ latentJoulesPerKg: 0 })).toThrow(refused('out-of-range'));
    expect(bad({ heatingFromCelsius: 500 })).toThrow(refused('out-of-range'));
  });
});
