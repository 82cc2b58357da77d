import { describe, expect, it } from 'vitest';
import { firingGas } from '../../hub/gas/firing-gas.ts';
import { flowOf, jetBand, mostFlow } from '../../hub/gas/flow.ts';
import { startGas, stepGas } from '../../hub/gas/judge.ts';
import { lastsHours } from '../../hub/gas/lasts.ts';
import type { GasCell } from '../../hub/gas/types.ts';
import { BURNER, configFor } from './sim-kit.ts';

const PSI = 6894.757293168;
const STEP = 10_000;

function cell(n: number, values: Readonly<Record<string, number>>, more: Partial<GasCell> = {}): GasCell {
  const means = Object.entries(values).map(([id, mean]) => [id, { mean }] as const);
  return {
    from: n * STEP,
    to: (n + 1) * STEP,
    values: Object.fromEntries(means),
    firings: [],
    fills: [],
    afterClosing: null,
    ...more,
  };
}

describe('flow through the jet', () => {
  // Isentropic nozzle flow, textbook: 0.889 mm (0.035 inch), Cd 0.85, k 1.13, 15 °C; kg/h at psi gauge.
  it.each([
    [1, 0.301],
    [2, 0.422],
    [5, 0.648],
    [10, 0.88],
    [15, 1.059],
    [20, 1.237],
    [30, 1.594],
  ])('is at %d psi %d kg/h', (psi, kilogramsPerHour) => {
    expect(flowOf(BURNER, psi * PSI)).toBeCloseTo(kilogramsPerHour, 3);
    expect(flowOf({ ...BURNER, burners: 2 }, psi * PSI)).toBeCloseTo(2 * kilogramsPerHour, 2);
  });

  it('is none under what feeds a flame, and its range is 15 % either way', () => {
    expect(flowOf(BURNER, 1000)).toBe(0);
    expect(jetBand(1)).toEqual({ low: 0.85, value: 1, high: 1.15 });
    expect(mostFlow({ ...BURNER, highPascals: null })).toBeCloseTo(1.237, 3);
  });
});

describe('what is left', () => {
  const pressed = { 'supply-pressure': 15 * PSI };
  const fill = { at: 5000, supply: 'forge', kilograms: 9.07 };

  function heldAfter(cells: readonly GasCell[]) {
    const config = configFor('pressure');
    return cells.reduce((state, each) => stepGas(config, state, each), startGas(config, 0)).supplies[0];
  }

  it('is not known before a fill was noted', () => {
    expect(heldAfter([cell(0, pressed)])?.contents).toBeNull();
  });

  it('counts an hour at 15 psi down by 1.06 kg', () => {
    const cells = Array.from({ length: 361 }, (_, n) => cell(n, pressed, n === 0 ? { fills: [fill] } : {}));
    expect(heldAfter(cells)?.contents?.value).toBeCloseTo(9.07 - 1.059, 2);
  });

  it('takes an hour without a reading for anything from none to the most, and never for none alone', () => {
    const cells = Array.from({ length: 361 }, (_, n) =>
      cell(n, n < 2 ? pressed : {}, n === 0 ? { fills: [fill] } : {}),
    );
    const held = heldAfter(cells);
    expect(held?.byFlow?.unknownSeconds).toBeGreaterThan(3500);
    // What flowed last is taken to have gone on.
    expect(held?.contents?.value).toBeCloseTo(9.07 - 1.059, 1);
    expect((held?.contents?.high ?? 0) - (held?.contents?.low ?? 0)).toBeGreaterThan(1);
  });

  it('is weighed where there is a scale with its tare, and counted on from there when the scale falls silent', () => {
    const config = configFor('scale');
    const seen = stepGas(config, startGas(config, 0), cell(0, { ...pressed, 'cylinder-mass': 5 }));
    expect(seen.supplies[0]).toMatchObject({ contentsFrom: 'scale', contents: { value: 5 } });
    const silent = stepGas(config, seen, cell(1, pressed));
    expect(silent.supplies[0]?.contentsFrom).toBe('counted');
    expect(silent.supplies[0]?.contents?.value).toBeCloseTo(5, 2);
    const noTare = { ...config, tareKilograms: null };
    const blind = stepGas(noTare, startGas(noTare, 0), cell(0, { ...pressed, 'cylinder-mass': 13 }));
    expect(blind.supplies[0]?.contents).toBeNull();
  });
});

describe('how long it lasts', () => {
  it('is mass over flow, as a range that holds it', () => {
    const contents = { low: 9.07, value: 9.07, high: 9.07 };
    const asked = { contents, cylinderKilograms: null, cylinders: 1, airCelsius: null };
    // 9.07 kg at 15 kW net, 46.34 MJ/kg: 7.78 h (arithmetic).
    const report = lastsHours({ ...asked, kilogramsPerHour: (15 * 3.6) / 46.34 });
    expect(report?.value).toBeCloseTo(7.78, 2);
    expect(report?.low).toBeLessThan(7.78 / 1.15);
    expect(report?.high).toBeCloseTo(7.78 / 0.85, 1);
    expect(lastsHours({ ...asked, kilogramsPerHour: 0 })).toBeNull();
  });
});

describe('what a firing burned', () => {
  const config = configFor('scale');
  const [supply] = config.supplies;
  const [furnace] = supply?.furnaces ?? [];
  if (supply === undefined || furnace === undefined) throw new Error('a supply has its furnace');
  const about = { config, supply, furnace, pieces: [], pricePerKilogram: 3, currency: '€' };
  const hour = (values: (n: number) => Readonly<Record<string, number>>): GasCell[] =>
    Array.from({ length: 360 }, (_, n) => cell(n, values(n)));

  it('is added up by the jet: an hour at 15 psi is 1.06 kg, 13.6 kWh net, 14.8 gross', () => {
    const used = firingGas({ ...about, cells: hour(() => ({ 'supply-pressure': 15 * PSI })) });
    expect(used).toMatchObject({ method: 'jet', unknownSeconds: 0 });
    expect(used?.kilograms.value).toBeCloseTo(1.059, 3);
    expect(used?.kilograms.high).toBeCloseTo(1.218, 3);
    expect(used?.kilowattHoursNet.value).toBeCloseTo(13.63, 1);
    expect(used?.kilowattHoursGross.value).toBeCloseTo(14.81, 1);
    expect(used?.cost?.value).toBeCloseTo(3.18, 2);
  });

  it('is weighed where a scale saw begin and end, and not where it was touched', () => {
    const weighed = firingGas({
      ...about,
      cells: hour((n) => ({ 'supply-pressure': 15 * PSI, 'cylinder-mass': 9 - n / 360 })),
    });
    expect(weighed?.method).toBe('scale');
    expect(weighed?.kilograms.value).toBeCloseTo(359 / 360, 6);
    const changed = firingGas({
      ...about,
      cells: hour((n) => ({ 'supply-pressure': 15 * PSI, 'cylinder-mass': n < 180 ? 2 : 9 })),
    });
    expect(changed?.method).toBe('jet');
  });

  it('holds a gap for what flowed last, with a range from none to the most', () => {
    const used = firingGas({
      ...about,
      cells: hour((n) => (n < 180 ? { 'supply-pressure': 15 * PSI } : {})),
    });
    expect(used?.unknownSeconds).toBe(1770);
    expect(used?.kilograms.value).toBeCloseTo(1.059, 2);
    expect(used?.kilograms.low).toBeLessThan(0.46);
    expect(firingGas({ ...about, cells: hour(() => ({})) })).toBeNull();
  });

  it('is shared by mass, or alike where a mass is missing', () => {
    const cells = hour(() => ({ 'supply-pressure': 15 * PSI }));
    const piece = (mark: string, kilograms: number | null) => ({ pieceId: mark, mark, kilograms });
    const byMass = firingGas({ ...about, cells, pieces: [piece('A', 3), piece('B', 1)] });
    expect(byMass).toMatchObject({ sharedBy: 'mass', pieces: [{ share: 0.75 }, { share: 0.25 }] });
    expect(byMass?.pieces[1]?.cost).toBeCloseTo(0.794, 2);
    const alike = firingGas({ ...about, cells, pieces: [piece('A', 3), piece('B', null)] });
    expect(alike).toMatchObject({ sharedBy: 'count', pieces: [{ share: 0.5 }, { share: 0.5 }] });
  });
});
