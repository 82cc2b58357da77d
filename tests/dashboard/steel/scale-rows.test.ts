import { describe, expect, it } from 'vitest';
import { scaleLayout } from '../../../dashboard/steel/scale-layout.ts';
import { inOrder, isPublished, scaleRows } from '../../../dashboard/steel/scale-rows.ts';
import { critical, known, stepWindow, unknown } from './answers.ts';

describe('the rows of the scale', () => {
  it('show Ac3 and Ar3 of a steel below the eutectoid, from cool to hot', () => {
    const { marks, refused } = scaleRows(critical());
    expect(marks.map(({ symbol }) => symbol)).toEqual([
      'Mf',
      'Ms',
      'Ar1',
      'Ar3',
      'Ac1',
      'Ac3',
      'Magnet',
      'Curie',
      'Magnet +',
    ]);
    expect(refused).toEqual([]);
  });

  it('show Acm in place of Ac3 and no Ar3 above the eutectoid', () => {
    const { marks } = scaleRows(critical({ carbonClass: 'hypereutectoid', acm: known(800) }));
    const symbols = marks.map(({ symbol }) => symbol);
    expect(symbols).toContain('Acm');
    expect(symbols).not.toContain('Ac3');
    expect(symbols).not.toContain('Ar3');
  });

  it('say the Curie point as 770 °C and from memory, also for a steel of which nothing else is known', () => {
    const none = unknown('no formula covers this steel');
    const magnet = { lost: none, cause: null, proves: 'nothing' as const, plus: none, meaning: [] };
    const all = { ac1: none, ac3: none, acm: none, ms: none, mf: none, ar1: none, ar3: none };
    const { marks, refused } = scaleRows(critical({ ...all, magnet }));
    expect(marks).toMatchObject([{ key: 'curie', band: { value: 770 }, standing: 'from-memory' }]);
    expect(refused.map(({ symbol }) => symbol)).toEqual(['Mf', 'Ms', 'Ar1', 'Ar3', 'Ac1', 'Ac3', 'Magnet']);
    expect(refused[0]?.reason).toBe('no formula covers this steel');
  });

  it('call only what is in print published', () => {
    expect(isPublished('published-primary')).toBe(true);
    expect(isPublished('published-secondary')).toBe(true);
    expect(isPublished('from-memory')).toBe(false);
    expect(isPublished('common-practice')).toBe(false);
    expect(isPublished('derived-here')).toBe(false);
  });
});

describe('the layout of the scale', () => {
  const { marks } = scaleRows(critical());
  const windows = [
    stepWindow({ step: 'forge', lowCelsius: 870, highCelsius: 1245, uncertaintyCelsius: 20 }),
    stepWindow(),
    stepWindow({ step: 'stress-relief', lowCelsius: 550, highCelsius: 650, uncertaintyCelsius: 20 }),
  ];

  it.each([346, 700, 1326])(
    'keeps everything inside %i px, marks at the left of the rod and windows at its right',
    (width) => {
      const layout = scaleLayout(width, marks, windows);
      const rodRight = layout.rod.x + layout.rod.width;
      for (const { x } of layout.marks) {
        expect(x).toBeGreaterThan(layout.markLabelX);
        expect(x).toBeLessThan(layout.rod.x);
      }
      for (const { x } of layout.bars) {
        expect(x).toBeGreaterThan(rodRight);
        expect(x).toBeLessThan(layout.barLabelX);
      }
      expect(layout.barLabelX).toBeLessThan(width);
    },
  );

  it('draws each band from its low to its high, tails beyond the ends of a window', () => {
    const layout = scaleLayout(1326, marks, windows);
    for (const { highY, y, lowY } of layout.marks.filter(({ isBelow }) => !isBelow)) {
      expect(highY).toBeLessThan(y);
      expect(y).toBeLessThan(lowY);
    }
    for (const { tailHighY, highY, lowY, tailLowY } of layout.bars) {
      expect(tailHighY).toBeLessThan(highY);
      expect(highY).toBeLessThan(lowY);
      expect(lowY).toBeLessThan(tailLowY);
    }
  });

  it('tells a mark that lies below the foot from one that stands on it', () => {
    const layout = scaleLayout(1326, marks, windows);
    expect(layout.marks.find(({ mark }) => mark.key === 'mf')?.isBelow).toBe(true);
    expect(layout.marks.find(({ mark }) => mark.key === 'ms')?.isBelow).toBe(false);
  });

  it('lays bars from the coolest to the hottest', () => {
    expect(inOrder(windows).map(({ step }) => step)).toEqual(['stress-relief', 'austenitise', 'forge']);
  });
});
