import { describe, expect, it } from 'vitest';
import { furnaceOf, heatOf, isFarFromFit } from '../../../dashboard/heat/furnace.ts';
import { FURNACE_KINDS, type Furnace } from '../../../hub/contract/shop.ts';
import { usualFurnace } from '../../../hub/physics/heat/usual-furnace.ts';

const FIT = {
  effectiveEmissivity: 0.95,
  filmWattsPerSquareMetreKelvin: 20,
  residualCelsius: 4,
  separated: false,
  loadLowCelsius: 300,
  loadHighCelsius: 850,
  fittedAt: 0,
  from: null,
};
const OVEN: Furnace = {
  id: 'oven',
  name: 'Oven',
  kind: 'electric-oven',
  ratedCelsius: 1150,
  note: '',
  fit: null,
  gas: null,
  archived: false,
  createdAt: 0,
};

describe('how a furnace heats', () => {
  it.each(FURNACE_KINDS)('is for %s what the hub itself takes of a furnace that nobody fitted', (kind) => {
    const { emissivity, filmWM2K } = usualFurnace(kind);
    const { weak, usual, strong } = heatOf({ kind, fit: null });
    expect([weak.emissivity, usual.emissivity, strong.emissivity]).toEqual([
      emissivity.low,
      emissivity.value,
      emissivity.high,
    ]);
    expect([weak, usual, strong].map((one) => one.filmWattsPerSquareMetreKelvin)).toEqual([
      filmWM2K.low,
      filmWM2K.value,
      filmWM2K.high,
    ]);
  });

  it('is what was fitted to it where there is a fit, with a tenth to either side and never over 1', () => {
    const { usual, weak, strong, fit } = heatOf({ kind: 'gas-forge', fit: FIT });
    expect(fit).toBe(FIT);
    expect(usual).toEqual({ emissivity: 0.95, filmWattsPerSquareMetreKelvin: 20 });
    expect(weak.filmWattsPerSquareMetreKelvin).toBeCloseTo(18);
    expect(strong.emissivity).toBe(1);
  });

  it('is doubted far from the heat of a run that could not tell radiation from convection', () => {
    expect(isFarFromFit(FIT, 850)).toBe(false);
    expect(isFarFromFit(FIT, 1000)).toBe(true);
    expect(isFarFromFit({ ...FIT, separated: true }, 1000)).toBe(false);
  });
});

describe('the furnace that is chosen', () => {
  it('is one of the shop, or any of a kind', () => {
    expect(furnaceOf('oven', [OVEN]).name).toBe('Oven');
    expect(furnaceOf('kind:salt-bath', [OVEN])).toMatchObject({ kind: 'salt-bath', name: '' });
  });

  it('is no furnace of the shop once that is gone', () => {
    expect(furnaceOf('oven', [])).toMatchObject({ name: '', ratedCelsius: null });
  });
});
