import { describe, expect, it } from 'vitest';
import { type CurveChannel, cellsOf, drawCurve, gapsOf, within } from '../../../dashboard/air/curve.ts';
import type { AirView } from '../../../hub/contract/air.ts';
import { good, NOW } from '../mock-shop.ts';

const HOUR = 3_600_000;
const WINDOW = { from: NOW - HOUR, to: NOW };

/** A reading every ten seconds from one instant to another. */
function steady(from: number, to: number, ppm: number) {
  return Array.from({ length: (to - from) / 10_000 }, (_, index) => good(from + index * 10_000, ppm));
}

function sensor(
  readings: ReturnType<typeof good>[],
  gaps: { from: number; to: number }[] = [],
): CurveChannel {
  const series = {
    channel: 'co',
    unit: '[ppm]',
    from: WINDOW.from,
    to: NOW,
    total: readings.length,
    thinned: false,
    readings,
    gaps,
  };
  return { id: 'co', label: 'By the forge', staleAfterSeconds: 30, series };
}

function limit(kind: AirView['limits'][number]['kind'], ppm: number): AirView['limits'][number] {
  return {
    kind,
    limit: {
      id: kind,
      body: 'test',
      ppm,
      milligramsPerCubicMetre: null,
      averagingSeconds: 0,
      edition: '',
      force: 'in-force',
      from: { standing: 'common-practice', source: 'test' },
    },
  };
}
// TRGS 900 and Directive 2004/37/EC Annex III, NIOSH: the strictest of each kind.
const LIMITS = [limit('twa', 20), limit('stel', 60), limit('ceiling', 200), limit('idlh', 1200)];

describe('the curve of carbon monoxide', () => {
  it('keeps a peak that lasted for one reading', () => {
    const readings = steady(WINDOW.from, NOW, 5).map((one, index) =>
      index === 100 ? { ...one, value: 180 } : one,
    );
    const cells = cellsOf(sensor(readings), WINDOW, NOW);
    expect(Math.max(...cells.map((value) => value ?? 0))).toBe(180);
    expect(cells.every((value) => value !== null)).toBe(true);
  });

  it('is broken by a gap and never drawn on through it', () => {
    const [quiet, back] = [NOW - 40 * 60_000, NOW - 20 * 60_000];
    const readings = [...steady(WINDOW.from, quiet, 5), ...steady(back, NOW, 8)];
    const cells = cellsOf(sensor(readings, [{ from: quiet, to: back }]), WINDOW, NOW);
    const at = (instant: number) => cells[Math.floor(((instant - WINDOW.from) / HOUR) * cells.length)];
    expect(at(NOW - 30 * 60_000)).toBeNull();
    expect(at(NOW - 50 * 60_000)).toBe(5);
    expect(at(NOW - 10 * 60_000)).toBe(8);
  });

  it('ends where a sensor fell silent, although nobody has listed that gap yet', () => {
    const quiet = NOW - 10 * 60_000;
    const cells = cellsOf(sensor(steady(WINDOW.from, quiet, 5)), WINDOW, NOW);
    expect(cells.at(-1)).toBeNull();
    expect(gapsOf(sensor(steady(WINDOW.from, quiet, 5)), WINDOW, NOW)).toEqual([
      { from: quiet - 10_000, to: NOW },
    ]);
  });

  it('is nothing at all, not zero, before the readings have come', () => {
    const waiting = { ...sensor([]), series: null };
    expect(cellsOf(waiting, WINDOW, NOW).every((value) => value === null)).toBe(true);
    expect(gapsOf(waiting, WINDOW, NOW)).toEqual([WINDOW]);
    expect(drawCurve([waiting], LIMITS, WINDOW, NOW).highestPpm).toBeNull();
  });

  it('takes no point from a reading that is not believed', () => {
    const bad = { at: NOW - 60_000, value: 9999, quality: 'bad' as const };
    const cells = cellsOf(sensor([...steady(WINDOW.from, NOW, 5), bad]), WINDOW, NOW);
    expect(Math.max(...cells.map((value) => value ?? 0))).toBe(5);
  });
});

describe('the limits in the picture', () => {
  it('are lines as far as the level goes, and the two lowest always', () => {
    const { picture, beyond } = drawCurve([sensor(steady(WINDOW.from, NOW, 5))], LIMITS, WINDOW, NOW);
    expect(picture.lines.map(({ words }) => words)).toEqual(['The day 20 ppm', 'Short 60 ppm', '']);
    expect(beyond).toBe('Ceiling 200 ppm, Danger to life 1200 ppm');
  });

  it('come into it as the level climbs', () => {
    const { picture, beyond } = drawCurve([sensor(steady(WINDOW.from, NOW, 190))], LIMITS, WINDOW, NOW);
    expect(picture.lines.map(({ words }) => words)).toContain('Ceiling 200 ppm');
    expect(beyond).toBe('Danger to life 1200 ppm');
  });
});

describe('stretches under the curve', () => {
  it('are cut to the window, and one that goes on reaches its end', () => {
    const hot = [
      { from: WINDOW.from - HOUR, to: WINDOW.from - 1 },
      { from: WINDOW.from - HOUR, to: WINDOW.from + 1000 },
      { from: NOW - 5000, to: null },
    ];
    expect(within(hot, WINDOW)).toEqual([
      { from: WINDOW.from, to: WINDOW.from + 1000 },
      { from: NOW - 5000, to: NOW },
    ]);
  });
});
