import { describe, expect, it } from 'vitest';
import { transformingSteel } from '../../../hub/physics/heat/transforming-steel.ts';
import {
  AUSTENITE_D,
  DECARBURISED,
  FERRITE_D,
  GRAIN_NUMBERS,
  LEE_LEE,
  SCALE,
} from '../../reference/diffusion-values.ts';
import { loadRecord } from '../../reference/load-records.ts';
import { answerTo } from './ask.ts';

describe('carbon over the web', () => {
  it('diffuses in austenite as Tibbetts 1980 has it, inside the band of four forms', async () => {
    for (const [celsius, tibbetts, , slycke] of AUSTENITE_D) {
      const body = await answerTo('carbon-diffusion', { celsius, carbonPercent: 0.8 });
      const { value, low, high } = body.diffusivitySquareMetresPerSecond;
      expect(value / tibbetts).toBeCloseTo(1, 2);
      const form = body.forms.find((each: { form: string }) => each.form === 'slycke-ericsson');
      expect(form.squareMetresPerSecond / slycke).toBeCloseTo(1, 1);
      expect(low <= form.squareMetresPerSecond && form.squareMetresPerSecond <= high).toBe(true);
    }
  });

  it('diffuses in ferrite as Budke and Herzig 1991 measured it', async () => {
    for (const [kelvin, m2s] of FERRITE_D.slice(1, 8)) {
      const asked = { phase: 'ferrite', celsius: kelvin - 273.15 };
      const { diffusivitySquareMetresPerSecond: band } = await answerTo('carbon-diffusion', asked);
      expect(band.value / m2s).toBeCloseTo(1, 2);
    }
  });

  it('is slowed by chromium, by the factor of Neumann and Person 1968', async () => {
    // 1 - (0.13 - 0.0055 · 1) · 1 = 0.8755 for 1 % Cr.
    const body = await answerTo('carbon-diffusion', { celsius: 900, alloy: { Cr: 1 } });
    expect(body.alloyFactor).toBeCloseTo(0.8755, 9);
  });

  it.each(DECARBURISED)('leaves by %d °C for %d h: %d µm to 90 %%, %d µm to 50 %%', async (...row) => {
    const [celsius, hours, to90, to50] = row;
    const body = await answerTo('decarburisation', { composition: { C: 0.8 }, celsius, hours });
    expect(Math.abs((body.depthTo90Metres.value * 1e6) / to90 - 1)).toBeLessThan(0.006);
    expect(Math.abs((body.depthTo50Metres.value * 1e6) / to50 - 1)).toBeLessThan(0.008);
    // A hold that was asked for has no gap that somebody failed to measure.
    expect(body.cautions).not.toContain('long-gap');
  });

  it('warns of the gaps of a measured curve', async () => {
    const curve = [0, 30, 60].map((minute) => ({ atMs: minute * 60_000, celsius: 900 }));
    const body = await answerTo('decarburisation', { composition: { C: 0.8 }, curve });
    expect(body.cautions).toContain('long-gap');
    expect(body.secondsCounted).toBe(3600);
  });
});

describe('scale and grain over the web', () => {
  it.each(SCALE)('an hour at %d °C: scale within the two laws, %d mm by kp', async (...row) => {
    const [celsius, fromKp, , fromKw, metal] = row;
    const { thicknessMetres, metalLossMetres } = await answerTo('scale', { celsius, hours: 1 });
    const [least, most] = [Math.min(fromKp, fromKw), Math.max(fromKp, fromKw)];
    expect(thicknessMetres.value * 1000).toBeGreaterThan(least * 0.98);
    expect(thicknessMetres.value * 1000).toBeLessThan(most * 1.02);
    expect(metal / 1000).toBeGreaterThan(metalLossMetres.low);
    expect(metal / 1000).toBeLessThan(metalLossMetres.high);
  });

  it.each(LEE_LEE)('%d %% C an hour at %d °C: %d µm by Lee and Lee 2008', async (...row) => {
    const [C, celsius, micrometres] = row;
    const body = await answerTo('grain-growth', { composition: { C }, celsius, hours: 1 });
    expect((body.sizeMetres.value * 1e6) / micrometres).toBeCloseTo(1, 2);
  });

  it('gives the ASTM number of a grain: 40 µm is 6 (E112, from memory)', async () => {
    const [, , , [micrometres, number] = [0, 0]] = GRAIN_NUMBERS;
    expect([micrometres, number]).toEqual([40, 6]);
    const body = await answerTo('grain-growth', { composition: { C: 0.4 }, celsius: 900, hours: 1 });
    expect(body.sizeMetres.value * 1e6).toBeCloseTo(micrometres, 0);
    expect(body.astmGrainNumber).toBeCloseTo(number, 1);
  });

  it('shows what was measured, and nothing outside it', async () => {
    const hour = { composition: { C: 1 }, hours: 1 };
    const sets = (await answerTo('grain-growth', { ...hour, celsius: 900 })).measured;
    const o1 = (found: readonly { id: string; sizeMetres: number | null }[]) =>
      found.find((set) => set.id === 'o1')?.sizeMetres ?? null;
    // O1, an hour at 900 °C: 15.8 µm (public compilation of grain-growth data).
    expect(o1(sets)).toBeCloseTo(15.8e-6, 9);
    expect(o1((await answerTo('grain-growth', { ...hour, celsius: 1150 })).measured)).toBeNull();
    expect((await answerTo('grain-growth', { ...hour, celsius: 700 })).sizeMetres).toBeNull();
  });
});

describe('arrests over the web', () => {
  const record = loadRecord({
    material: transformingSteel(),
    startCelsius: 20,
    chamber: () => 850,
    seconds: 3000,
    withChamber: true,
  });

  it('finds decalescence with the 82 J/g of Hagel, Pound and Mehl 1956', async () => {
    const { arrests } = await answerTo('arrests', { record });
    expect(arrests).toHaveLength(1);
    expect(arrests[0].kind).toBe('decalescence');
    expect(Math.abs(arrests[0].heatJoulesPerGram - 82)).toBeLessThan(8);
    expect(arrests[0].shown).toMatch(/^7\d\d.* °C \(7/);
  });

  it('rejects one beside a door, and says so', async () => {
    const [found] = (await answerTo('arrests', { record })).arrests;
    const disturbances = [{ atMs: found.fromMs, kind: 'door' }];
    const { arrests, rejected } = await answerTo('arrests', { record, disturbances });
    expect(arrests).toEqual([]);
    expect(rejected[0]).toMatchObject({ kind: 'decalescence', reason: 'door' });
  });
});
