import { describe, expect, it } from 'vitest';
import { claimed, pieceFacts } from '../../../dashboard/firings/piece-facts.ts';
import { coreSeries } from '../../../dashboard/firings/use-findings.ts';
import { airSaid } from '../../../dashboard/words/findings.ts';
import type { PieceFigure, RecordPiece } from '../../../hub/contract/firing-record-piece.ts';

const figure = (text: string, value: number | null): PieceFigure => ({
  kind: 'scale',
  nature: 'estimate',
  low: value,
  value,
  high: value,
  unit: 'mm',
  cautions: [],
  noClaim: null,
  source: '',
  text,
});

function piece(extra: Partial<RecordPiece> = {}): RecordPiece {
  return {
    pieceId: 'p1',
    mark: 'K-1',
    verdict: 'met',
    text: 'Met',
    reasons: [],
    basis: 'core',
    coreOf: null,
    segment: 1,
    heldCelsius: 850,
    soakSeconds: 1200,
    airSoakSeconds: 2400,
    peakCelsius: { low: 840, value: 851, high: 860 },
    surfacePeakCelsius: 853,
    window: null,
    secondsAboveWindow: null,
    coolingCelsiusPerHour: null,
    figures: [],
    curve: [],
    ...extra,
  };
}

const factOf = (of: RecordPiece, name: string, unit: 'Cel' | '[degF]' = 'Cel') =>
  pieceFacts(of, unit).find((fact) => fact.name === name)?.value;

describe('the facts of a piece', () => {
  it('stand in the unit that people read, with both clocks', () => {
    expect(factOf(piece(), 'Held at')).toMatch(/^850\s°C$/);
    expect(factOf(piece(), 'Held at', '[degF]')).toMatch(/^1\s?562\s°F$/);
    expect(factOf(piece(), 'Middle at heat')).toMatch(/^20\smin/);
    expect(factOf(piece(), 'Air at heat')).toMatch(/^40\smin/);
  });

  it('say that a thing is not known rather than nothing or zero', () => {
    const unknown = piece({ heldCelsius: null, soakSeconds: null, peakCelsius: null });
    expect(factOf(unknown, 'Held at')).toBe('not known');
    expect(factOf(unknown, 'Middle at heat')).toBe('not known');
    expect(factOf(unknown, 'Cooled at')).toBeUndefined();
  });

  it('put on one line only the figures that claim something', () => {
    const figures = [figure('Scale 0.1 mm', 0.1), figure('Grain: nothing is claimed', null)];
    expect(claimed(piece({ figures }))).toBe('Scale 0.1 mm');
  });
});

describe('the computed middles in the chart', () => {
  const curve = (celsius: number) => [0, 600_000].map((at) => ({ at, celsius, low: celsius, high: celsius }));

  it('are those of the slowest and the quickest piece, each once', () => {
    const load = [500, 700, 600].map((celsius) => piece({ mark: `K-${celsius}`, curve: curve(celsius) }));
    expect(coreSeries(load).map(({ label }) => label)).toEqual([
      'Middle of K-500, computed',
      'Middle of K-700, computed',
    ]);
    expect(coreSeries(load.slice(0, 1))).toHaveLength(1);
    expect(coreSeries([piece()])).toEqual([]);
  });
});

describe('carbon monoxide in words', () => {
  const air = {
    channel: 'co',
    label: 'Over the forge',
    peakPpm: 31,
    peakAt: 0,
    worstQuarterHourPpm: 4.3,
    meanPpm: 4.1,
    measuredSeconds: 3600,
    notMeasuredSeconds: 0,
  };

  it('tells what was measured and for how long nothing was', () => {
    expect(airSaid(air)).toMatch(/31 ppm at most at .*, worst 15 min 4\.3 ppm, mean 4\.1 ppm\.$/);
    expect(airSaid({ ...air, notMeasuredSeconds: 600 })).toMatch(/; for 10\smin nothing was measured\.$/);
    const silent = { ...air, peakPpm: null, meanPpm: null };
    expect(airSaid(silent)).toBe('Over the forge: carbon monoxide was not measured.');
    for (const text of [airSaid(air), airSaid(silent)]) expect(text).not.toMatch(/safe|clean|good/i);
  });
});
