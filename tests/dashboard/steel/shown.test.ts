import { describe, expect, it } from 'vitest';
import {
  bandText,
  rangeText,
  uncertaintyText,
  valueText,
  windowText,
} from '../../../dashboard/steel/shown.ts';
import { howTo } from '../../../dashboard/steel/windows.tsx';
import { stepWindow } from './answers.ts';

describe('temperatures of steel in words', () => {
  it('carry no more figures than their band allows', () => {
    expect(bandText({ low: 133.35, value: 203.818, high: 238.15 }, 'Cel')).toBe('200 °C (130 to 240)');
    expect(valueText({ low: 699.25, value: 722.25, high: 745.25 }, 'Cel')).toBe('722 °C');
  });

  it('turn into °F as a whole, the width of the band with them', () => {
    // 722.25 °C is 1332.05 °F; ± 23 °C is ± 41.4 °F, which leaves one figure: tens.
    expect(bandText({ low: 699.25, value: 722.25, high: 745.25 }, '[degF]')).toBe('1330 °F (1290 to 1370)');
  });

  it('have a true minus sign', () => {
    expect(bandText({ low: -112, value: -87, high: -62 }, 'Cel')).toBe('−87 °C (−112 to −62)');
  });

  it('say a window of one temperature once', () => {
    expect(windowText(stepWindow({ lowCelsius: 845, highCelsius: 845 }), 'Cel')).toBe('845 °C');
    expect(
      windowText(stepWindow({ lowCelsius: 672.25, highCelsius: 702.25, uncertaintyCelsius: 20 }), 'Cel'),
    ).toBe('672 to 702 °C');
    expect(rangeText(700, 700, 'Cel')).toBe('700 °C');
  });

  it('scale an uncertainty without the offset of °F', () => {
    expect(uncertaintyText(20, '[degF]')).toBe('± 36 °F');
  });
});

describe('how a step is done', () => {
  it('names hold, cooling and remark', () => {
    const window = stepWindow({
      step: 'spheroidise',
      holdHours: [8, 16],
      maxCoolingCelsiusPerHour: 28,
      coolToCelsius: 650,
      note: 'hold long',
    });
    const text = howTo(window, 'Cel').replaceAll('\u00a0', ' ');
    expect(text).toBe('hold 8 to 16 h; cool at 28 °C/h at most, down to 650 °C; hold long');
  });

  it('turns a rate of cooling into °F without the offset', () => {
    const text = howTo(stepWindow({ maxCoolingCelsiusPerHour: 28 }), '[degF]').replaceAll('\u00a0', ' ');
    expect(text).toBe('cool at 50 °F/h at most');
  });
});
