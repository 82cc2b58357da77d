import { describe, expect, it } from 'vitest';
import { afterClosing, secondsToClosing, wallClock } from '../../hub/gas/closing.ts';
import { gasFindings } from '../../hub/gas/findings.ts';
import { startGas, stepGas } from '../../hub/gas/judge.ts';
import type { FiringNow, GasCell } from '../../hub/gas/types.ts';
import { configFor } from './sim-kit.ts';

/** Against curves made by hand: what the simulated shop cannot do, and what must not be told. */

type Values = Readonly<Record<string, number>>;
type At = (second: number) => Values;

const HEATS: FiringNow = {
  firingId: 'f',
  furnaceId: 'forge',
  wanted: true,
  targetCelsius: 860,
  heatEndsAt: null,
};

/** Kinds that stand after so many minutes, and every kind that was told on the way. */
function judged(
  minutes: number,
  at: At,
  more: Partial<GasCell> = {},
): { told: string[]; standing: string[] } {
  const config = configFor('scale');
  let state = startGas(config, 0);
  const told = new Set<string>();
  let standing: string[] = [];
  for (let n = 0; n < minutes * 6; n += 1) {
    const means = Object.entries(at(n * 10)).map(([id, mean]) => [id, { mean }] as const);
    const cell = { from: n * 10_000, to: (n + 1) * 10_000, values: Object.fromEntries(means) };
    state = stepGas(config, state, { ...cell, firings: [], fills: [], afterClosing: null, ...more });
    standing = gasFindings(config, state).map(({ kind }) => kind);
    for (const kind of standing) told.add(kind);
  }
  return { told: [...told], standing };
}

const firing = { firings: [HEATS] };
/** Lost without a flame from the fifth minute on: a tenth of the excess a minute. */
const cooling = (second: number): number =>
  second < 300 ? 860 : 20 + 840 * Math.exp((-0.1 * (second - 300)) / 60);

describe('gas on and nothing hot', () => {
  it('is told when pressure stands for three minutes and the chamber stays cold', () => {
    const cold = judged(5, () => ({ 'supply-pressure': 40_000, chamber: 18 }));
    expect(cold.standing).toEqual(['gas-on-cold']);
  });

  it('is not told of a forge that was lit, however slowly it begins', () => {
    const lit = judged(6, (s) => ({ 'supply-pressure': 40_000, chamber: 18 + (s / 60) * 4 }));
    expect(lit.told).toEqual([]);
  });

  it('is not told of a hose under pressure where a scale sees nothing flow', () => {
    const still = judged(8, () => ({ 'supply-pressure': 40_000, chamber: 18, 'cylinder-mass': 8 }));
    expect(still.told).toEqual([]);
  });

  it('ends when the gas is closed', () => {
    const closed = judged(8, (s) => ({ 'supply-pressure': s < 300 ? 40_000 : 0, chamber: 18 }));
    expect(closed).toEqual({ told: ['gas-on-cold'], standing: [] });
  });
});

describe('flame-out', () => {
  it('is told when the chamber falls with the pressure unchanged', () => {
    const out = judged(8, (s) => ({ 'supply-pressure': 42_000, chamber: cooling(s) }), firing);
    expect(out.standing).toEqual(['gas-flame-out']);
  });

  it('is not told when the gas was turned down and the chamber follows', () => {
    const down = judged(
      12,
      (s) => ({
        'supply-pressure': s < 300 ? 90_000 : 20_000,
        chamber: s < 300 ? 1100 : 860 + 240 * Math.exp(-(s - 300) / 400),
      }),
      firing,
    );
    expect(down.told).toEqual([]);
  });

  it('is not told of a door that was open, nor of cold steel laid in', () => {
    const dip = (s: number): number =>
      s < 300 || s > 360 ? 860 : 860 - 60 * Math.sin(((s - 300) / 60) * Math.PI);
    expect(judged(10, (s) => ({ 'supply-pressure': 42_000, chamber: dip(s) }), firing).told).toEqual([]);
  });

  it('is not told of a probe that jumps: no chamber loses so much in ten seconds', () => {
    const jump = judged(
      10,
      (s) => ({ 'supply-pressure': 42_000, chamber: s < 300 ? 860 : 560 - s / 60 }),
      firing,
    );
    expect(jump.told).not.toContain('gas-flame-out');
  });

  it('stands while nobody sees the chamber any more', () => {
    const blind = judged(
      10,
      (s) => ({ 'supply-pressure': 42_000, ...(s < 480 ? { chamber: cooling(s) } : {}) }),
      firing,
    );
    expect(blind.standing).toEqual(['gas-flame-out']);
  });
});

describe('the band of the furnace', () => {
  it.each([
    ['above', 120_000, ['gas-off-band']],
    ['below', 3500, ['gas-off-band']],
    ['inside', 50_000, []],
    ['closed, which is another matter', 0, []],
  ])('%s', (_where, pascals, kinds) => {
    const values = (s: number): Values => ({ 'supply-pressure': pascals, chamber: 300 + s / 2 });
    expect(judged(4, values, firing).told).toEqual(kinds);
    expect(judged(4, values).told).toEqual([]);
  });
});

describe('closing time', () => {
  const utc = wallClock('UTC');
  const at = (hours: number, minutes = 0): number => Date.UTC(2026, 2, 2, hours, minutes);

  it('is on the clock of the shop, and the night belongs to it', () => {
    expect(afterClosing('18:30', utc, at(18, 29))).toBe(false);
    expect(afterClosing('18:30', utc, at(18, 30))).toBe(true);
    expect(afterClosing('18:30', utc, at(4, 29))).toBe(true);
    expect(afterClosing('18:30', utc, at(4, 30))).toBe(false);
    expect(afterClosing(null, utc, at(20))).toBeNull();
    // Berlin is an hour ahead of UTC in winter.
    expect(afterClosing('18:30', wallClock('Europe/Berlin'), at(17, 30))).toBe(true);
    expect(secondsToClosing('18:30', utc, at(17))).toBe(5400);
    expect(secondsToClosing('18:30', utc, at(19))).toBeNull();
  });

  it('tells pressure that stands after it, and none that stands before', () => {
    const values = (): Values => ({ 'supply-pressure': 30_000, chamber: 18, 'cylinder-mass': 8 });
    expect(judged(8, values, { afterClosing: true }).standing).toEqual(['gas-left-on']);
    expect(judged(8, values, { afterClosing: false }).told).toEqual([]);
    expect(judged(8, () => ({ 'supply-pressure': 0, chamber: 300 }), { afterClosing: true }).told).toEqual(
      [],
    );
  });
});
