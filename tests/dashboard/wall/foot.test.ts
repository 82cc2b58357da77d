import { describe, expect, it } from 'vitest';
import { applyMessage } from '../../../dashboard/feed/state.ts';
import { airCell, airLevel, footOf } from '../../../dashboard/wall/foot.ts';
import { freshnessOf } from '../../../dashboard/wall/freshness.ts';
import { footWords } from '../../../dashboard/words/wall.ts';
import { channel, good, NOW, settings, snapshot } from '../mock-shop.ts';

const LIMITS = settings();
const co = (id: string, latest: Parameters<typeof channel>[0]['latest'] = null) =>
  channel({ id, quantity: 'carbon-monoxide', label: id, staleAfterSeconds: 30, latest: latest ?? null });

describe('the air along the foot', () => {
  it('shows the worst sensor, whichever it is', () => {
    const cell = airCell([co('door', good(NOW, 4)), co('bench', good(NOW, 33))], LIMITS, NOW);
    expect(cell).toEqual({
      kind: 'measured',
      ppm: 33,
      label: 'bench',
      level: 'over-first',
      silent: 0,
      sensors: 2,
    });
  });

  it('counts the sensors that are silent, and does not take their old values', () => {
    const cell = airCell([co('door', good(NOW, 4)), co('bench', good(NOW - 30_001, 300))], LIMITS, NOW);
    expect(cell).toMatchObject({ ppm: 4, silent: 1, sensors: 2 });
  });

  it('is blind when no sensor has a reading that holds, and shows the worst that was last known', () => {
    const old = [co('door', good(NOW - 60_000, 4)), co('bench', good(NOW - 90_000, 41)), co('new')];
    expect(airCell(old, LIMITS, NOW)).toEqual({ kind: 'blind', last: { ppm: 41, at: NOW - 90_000 } });
    expect(airCell([co('new')], LIMITS, NOW)).toEqual({ kind: 'blind', last: null });
    expect(airCell([], LIMITS, NOW)).toEqual({ kind: 'no-sensor' });
  });

  it('counts a reading at a limit as over it', () => {
    // 20 ppm: Directive 2004/37/EC Annex III, 8 h; 60 ppm: TRGS 900, 15 min; the shop's defaults.
    expect([19.9, 20, 59.9, 60].map((ppm) => airLevel(ppm, LIMITS))).toEqual([
      'under-first',
      'over-first',
      'over-first',
      'over-second',
    ]);
  });

  it('never says that the air is good', () => {
    const said = [
      ...Object.values(footWords).filter((word) => typeof word === 'string'),
      footWords.limits('20', '60'),
      footWords.overFirst('20'),
      footWords.overSecond('60'),
      footWords.silent(1, 2),
    ];
    expect(said.length).toBeGreaterThan(10);
    for (const words of said) expect(words).not.toMatch(/\b(safe|ok|okay|good|fine|clear|normal|healthy)\b/i);
  });
});

describe('the gas along the foot', () => {
  it('stands with pressures before cylinders, each with what it is worth', () => {
    const { state } = applyMessage(null, snapshot());
    if (state === null) throw new Error('a snapshot gives a state');
    const { supplies } = footOf(state, NOW + 40_000);
    expect(
      supplies.map(({ channel: { id }, freshness, furnaceName }) => [id, freshness.kind, furnaceName]),
    ).toEqual([
      ['forge-gas', 'old', 'Forge'],
      ['cylinder', 'fresh', null],
    ]);
  });
});

describe('what a reading is worth', () => {
  const at = (latest: Parameters<typeof freshnessOf>[0]['latest']) =>
    freshnessOf({ latest, staleAfterSeconds: 20 }, NOW).kind;

  it('keeps never, old, doubtful and fresh apart', () => {
    expect(at(null)).toBe('never');
    expect(at(good(NOW - 20_000, 1))).toBe('fresh');
    expect(at(good(NOW - 20_001, 1))).toBe('old');
    expect(at({ at: NOW + 90_000, value: 1, quality: 'uncertain', reason: 'future' })).toBe('doubtful');
    expect(at({ at: NOW, value: 9999, quality: 'bad', reason: 'out-of-range' })).toBe('doubtful');
  });
});
