import { describe, expect, it } from 'vitest';
import { its90Points } from '../../reference/its90-points.ts';
import { answerTo } from './ask.ts';

describe('thermocouples over the web', () => {
  it('meet every printed table point to half of its last digit', async () => {
    // NIST SRD 60, printed to 0.001 mV.
    for (const [type, celsius, millivolts] of its90Points) {
      const body = await answerTo('thermocouple', { type, celsius });
      expect(Math.abs(body.millivolts - millivolts), `${type} ${celsius}`).toBeLessThan(0.00051);
    }
  });

  it('go there and back within 0.001 °C, with the junction anywhere in the shop', async () => {
    for (const type of ['E', 'J', 'K', 'N', 'R', 'S', 'T']) {
      const there = await answerTo('thermocouple', { type, celsius: 371.5, coldJunctionCelsius: 31 });
      const { millivolts } = there;
      const back = await answerTo('thermocouple', { type, millivolts, coldJunctionCelsius: 31 });
      expect(Math.abs(back.celsius - 371.5)).toBeLessThan(0.001);
    }
  });

  it('state a class as a band, and null where it does not reach', async () => {
    // IEC 60584-1 as reprinted: K class 1 at 1000 °C ± 4.0 °C; it ends there.
    const inside = await answerTo('thermocouple', { type: 'K', celsius: 1000, class: 'iec-1' });
    expect(inside.tolerance.halfWidthCelsius).toBeCloseTo(4, 9);
    expect(inside.shown).toEqual({ celsius: '1000 °C', millivolts: '41.276 mV' });
    const beyond = await answerTo('thermocouple', { type: 'K', celsius: 1100, class: 'iec-1' });
    expect(beyond.tolerance).toBeNull();
    expect(beyond.tolerances.map((band: { class: string }) => band.class)).not.toContain('iec-1');
    expect(beyond.tolerances.length).toBeGreaterThan(0);
  });

  it('know their sensitivity: K has 39.0 µV/°C at 1000 °C', async () => {
    // Computed from NIST SRD 60; the printed table gives 41.276 and 41.315 mV at 1000 and 1001 °C.
    const body = await answerTo('thermocouple', { type: 'K', celsius: 1000 });
    expect(body.sensitivityMicrovoltsPerCelsius).toBeCloseTo(39, 0);
  });

  it('undo the straight line of a digitiser that assumes 41.276 µV/°C (Maxim 19-5793)', async () => {
    // At 500 °C with terminals at 25 °C: (20.644 - 1.000) mV / 0.041276 + 25 = 500.9 °C would be reported.
    const reportedCelsius = 25 + (20.644 - 1.0) / 0.041276;
    const asked = { type: 'K', reportedCelsius, coldJunctionCelsius: 25 };
    const body = await answerTo('thermocouple-straight-line', asked);
    expect(Math.abs(body.celsius - 500)).toBeLessThan(0.02);
    expect(body.slopeMillivoltsPerCelsius).toBe(0.041276);
  });
});

describe('probes over the web', () => {
  it('combine class and junction by the GUM: 4/√3 and 1.04 · 2/√3 °C', async () => {
    // K class 1 at 1000 °C ± 4.0 °C (IEC 60584-1); ratio of sensitivities 1.04 (computed from NIST SRD 60).
    const body = await answerTo('probe-uncertainty', {
      type: 'K',
      celsius: 1000,
      class: 'iec-1',
      junctionHalfWidthCelsius: 2,
    });
    const expected = Math.hypot(4 / Math.sqrt(3), (1.0395 * 2) / Math.sqrt(3));
    expect(body.standardCelsius).toBeCloseTo(expected, 3);
    expect(body.expandedCelsius).toBe(2 * body.standardCelsius);
    expect(body.shown).toBe('1000 ± 5 °C');
  });

  it('give the limit of a wire by its size: 0.81 mm of type K, 980 °C', async () => {
    // ASTM E230 Table 6 as reprinted by two sensor makers (AWG 20).
    const body = await answerTo('probe-limit', { type: 'K', construction: 'protected-wire', millimetres: 1 });
    expect(body).toMatchObject({ celsius: 980, listedMillimetres: 0.81, shown: '980 °C' });
    expect(body.from.standing).toBe('published-secondary');
  });

  it('count hours above a limit, and a gap as unknown', async () => {
    const curve = [0, 1, 2, 5].map((hour) => ({ atMs: hour * 3_600_000, celsius: hour < 2 ? 1000 : 1200 }));
    const asked = { curve, limitCelsius: 1100, maximumGapSeconds: 3600 };
    const body = await answerTo('probe-time-above', asked);
    expect(body).toEqual({ hoursAbove: 0.5, hoursUnknown: 3, peakCelsius: 1200 });
  });

  it('tell an open probe from one that stepped, and when each was over', async () => {
    const readings = [800, 801, null, null, 802, 803, 1203, 1204, 1205];
    const samples = readings.map((celsius, i) => ({ atMs: i * 1000, celsius }));
    const { faults } = await answerTo('probe-faults', { type: 'K', samples });
    expect(faults.map((fault: { fault: string }) => fault.fault)).toEqual(['open', 'step']);
    expect(faults[0]).toMatchObject({ sinceMs: 2000, recognisedMs: 2000, clearedMs: 4000 });
    expect(faults[1]).toMatchObject({ sinceMs: 6000, clearedMs: 7000 });
    const quiet = { type: 'K', samples: samples.slice(0, 2) };
    expect((await answerTo('probe-faults', quiet)).faults).toEqual([]);
  });

  it('name the colour of a heat: cherry red from 815 °C', async () => {
    // Chapman, Workshop Technology part 1 (5th ed. 1972).
    const { glow, scale } = await answerTo('glow', { celsius: 815 });
    expect(glow).toMatchObject({ name: 'cherry red', lowCelsius: 815, uncertaintyCelsius: 60 });
    expect(scale.length).toBeGreaterThan(8);
  });
});
