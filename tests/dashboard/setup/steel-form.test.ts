import { describe, expect, it } from 'vitest';
import { checkFit, fitText, loadChannels, residualText } from '../../../dashboard/setup/fit-form.ts';
import {
  certificateTexts,
  checkCertificate,
  checkSteel,
  EMPTY_WINDOW,
  steelTexts,
} from '../../../dashboard/setup/steel-form.ts';
import { steelFieldName } from '../../../dashboard/setup/steel-names.ts';
import type { FurnaceFit } from '../../../hub/contract/furnace-fit.ts';
import { MillCertificate, OwnSteel } from '../../../hub/contract/own-steel.ts';
import { channel } from '../mock-shop.ts';

const NEEDED = 'Needed: please fill this in.';
const WINDOW = {
  step: 'austenitise',
  lowCelsius: 830,
  highCelsius: 860,
  from: "maker's data sheet",
  maxCoolingCelsiusPerHour: 30,
  coolToCelsius: 650,
  note: 'kept as it was',
} as const;
const SPRING = OwnSteel.parse({
  id: 's',
  name: 'Spring',
  composition: { C: 0.6, Si: 1.8 },
  windows: [WINDOW],
  archived: false,
  createdAt: 0,
  updatedAt: 0,
});

describe('an own steel as it is typed', () => {
  it.each(['Cel', '[degF]'] as const)('comes back unchanged when nothing is typed, in %s', (unit) => {
    const { value, faults } = checkSteel(steelTexts(SPRING, unit), unit);
    expect(faults).toEqual({});
    expect(value).toMatchObject({ name: 'Spring', composition: { C: 0.6, Si: 1.8 } });
    const { lowCelsius, highCelsius, coolToCelsius, ...rest } = value?.windows[0] ?? WINDOW;
    expect([lowCelsius, highCelsius, coolToCelsius].map((each) => Math.round(each ?? 0))).toEqual([
      830, 860, 650,
    ]);
    expect(rest).toMatchObject({ step: 'austenitise', from: WINDOW.from, note: WINDOW.note });
  });

  it('wants a name and carbon, and says a slip of the keyboard beside its element', () => {
    expect(checkSteel(steelTexts(null, 'Cel'), 'Cel').faults).toEqual({
      name: NEEDED,
      'composition.C': 'Carbon must be named: every formula needs it.',
    });
    const slip = { ...steelTexts(SPRING, 'Cel'), percents: { C: '0.6', Mn: 'o.7' } };
    expect(Object.keys(checkSteel(slip, 'Cel').faults)).toEqual(['composition.Mn']);
  });

  it('wants both ends of a step and where they come from, the ends the right way round', () => {
    const texts = steelTexts(SPRING, 'Cel');
    const empty = checkSteel({ ...texts, windows: [EMPTY_WINDOW] }, 'Cel').faults;
    expect(empty).toEqual({
      'windows.0.lowCelsius': NEEDED,
      'windows.0.highCelsius': NEEDED,
      'windows.0.from': NEEDED,
    });
    const crossed = { ...EMPTY_WINDOW, low: '900', high: '800', from: 'sheet' };
    const faults = checkSteel({ ...texts, windows: [crossed] }, 'Cel').faults;
    expect(faults['windows.0.highCelsius']).toContain('below its lower end');
    const hot = { ...crossed, high: '2600' };
    expect(checkSteel({ ...texts, windows: [hot] }, '[degF]').faults).toEqual({
      // 1350 °C is 2462 °F by definition.
      'windows.0.highCelsius': 'At most 2462 °F.',
    });
  });

  it('calls its fields by the words beside them', () => {
    expect(steelFieldName('windows.1.lowCelsius')).toBe('Step 2, From');
    expect(steelFieldName('composition.C')).toBe('C');
    expect(steelFieldName('name')).toBe('Name');
  });
});

describe('a mill certificate as it is typed', () => {
  it('comes back unchanged, and an empty date is none', () => {
    const kept = MillCertificate.parse({
      id: 'c',
      steel: '1084',
      heatNumber: 'A 4711',
      date: '2026-01-31',
      composition: { C: 0.83, P: 0.011 },
      archived: false,
      createdAt: 0,
      updatedAt: 0,
    });
    const texts = certificateTexts(kept);
    expect(checkCertificate(texts).value).toEqual({
      heatNumber: 'A 4711',
      date: '2026-01-31',
      note: '',
      composition: { C: 0.83, P: 0.011 },
    });
    expect(checkCertificate({ ...texts, date: ' ' }).value?.date).toBeNull();
  });

  it('wants a heat number, a date of the calendar and carbon', () => {
    const texts = { ...certificateTexts(null), date: '31.1.2026' };
    const { value, faults } = checkCertificate(texts);
    expect(value).toBeNull();
    expect(new Set(Object.keys(faults))).toEqual(new Set(['composition.C', 'date', 'heatNumber']));
  });
});

describe('a fit as it is asked and shown', () => {
  const FIT: FurnaceFit = {
    effectiveEmissivity: 0.6234,
    filmWattsPerSquareMetreKelvin: 17.8,
    residualCelsius: 3.44,
    separated: true,
    loadLowCelsius: 20,
    loadHighCelsius: 840,
    fittedAt: 0,
    from: null,
  };
  const texts = { firingId: 'f', shape: 'bar', thickness: '20', loadAt: 'core', loadChannel: '' } as const;

  it('asks with the size in millimetres, and wants it', () => {
    expect(checkFit(texts).value).toMatchObject({ firingId: 'f', thicknessMm: 20, loadChannel: null });
    expect(checkFit({ ...texts, thickness: '' }).faults).toEqual({ thicknessMm: NEEDED });
    expect(checkFit({ ...texts, thickness: 'x' }).faults.thicknessMm).toContain('not a number');
  });

  it('always shows the residual, as a difference in the unit of the shop', () => {
    expect(fitText(FIT, 'Cel')).toBe('emissivity 0.62, film 18 W/(m² K), leaves 3.4 °C (rms)');
    // NIST SP 811 B.9: 3.44 K are 6.19 °F.
    expect(residualText(3.44, '[degF]')).toBe('6.2 °F');
    expect(residualText(14.6, 'Cel')).toBe('15 °C');
    expect(fitText(null, 'Cel')).toBe('usual values of its kind');
  });

  it('learns only from thermocouples in the work of this furnace', () => {
    const all = [
      channel({ id: 'a', quantity: 'temperature', role: 'load', furnaceId: 'oven' }),
      channel({ id: 'b', quantity: 'temperature', role: 'load', furnaceId: 'forge' }),
      channel({ id: 'c', quantity: 'temperature', role: 'chamber', furnaceId: 'oven' }),
      channel({ id: 'd', quantity: 'temperature', role: 'load', furnaceId: 'oven', adopted: false }),
    ];
    expect(loadChannels(all, 'oven').map(({ id }) => id)).toEqual(['a']);
  });
});
