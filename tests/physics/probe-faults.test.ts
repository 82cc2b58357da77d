import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  everyMs,
  faultsOf,
  findingsOf,
  from,
  healthy,
  heating,
  holding,
  lagging,
  type Probe,
  reversed,
  samplesOf,
  shorted,
  stuckFrom,
} from './probe-fault-curves.ts';

describe('one fault at a time, each told from the others', () => {
  it.each<readonly [string, string, Probe]>([
    ['open', 'burn-out drives it upscale', from(600, () => 1372)],
    ['open', 'burn-out drives it downscale', from(600, () => -270)],
    ['open', 'the channel gives no number', from(600, () => null)],
    ['open', 'the channel gives NaN', from(600, () => Number.NaN)],
    ['reversed', 'the legs are swapped', reversed],
    ['shorted', 'the pair is shorted at the terminals', shorted],
    ['stuck', 'the value stands still while the furnace heats', stuckFrom(400)],
    [
      'step',
      'it jumps by 300 °C and goes on',
      (moment) => (healthy(moment) ?? 0) + (moment.seconds >= 1200 ? 300 : 0),
    ],
    [
      'rate',
      'it runs away at 60 °C/s without a jump',
      from(1200, ({ chamber, seconds, wander }) => Math.min(1300, chamber + (seconds - 1198) * 60) + wander),
    ],
  ])('%s, when %s', (fault, _how, probe) => {
    expect(faultsOf(samplesOf(heating(), probe))).toEqual([fault]);
  });

  it.each([
    ['reversed', reversed],
    ['shorted', shorted],
    ['stuck', stuckFrom(400)],
  ] as const)('%s is told without knowing the cold junction', (fault, probe) => {
    const terminals = () => 22;
    expect(faultsOf(samplesOf(heating(), probe, { knowsJunction: false, terminals }))).toEqual([fault]);
  });

  it('says reversed from "the furnace is heating" alone', () => {
    const setting = { hasOther: false, heating: true };
    expect(faultsOf(samplesOf(heating(), reversed, setting))).toEqual(['reversed']);
    expect(faultsOf(samplesOf(heating(), healthy, setting))).toEqual([]);
    expect(faultsOf(samplesOf(heating(), shorted, setting))).toEqual([]);
  });
});

describe('readings that are in order', () => {
  it.each<readonly [string, ReturnType<typeof samplesOf>]>([
    ['a firing from cold', samplesOf(heating(), healthy)],
    ['a long hold', samplesOf(holding(860), healthy, { seconds: 7200 })],
    ['the core of a thick piece, an hour behind', samplesOf(heating(), lagging(3600), { seconds: 5400 })],
    ['a core very far behind', samplesOf(heating(), lagging(9000), { seconds: 7200 })],
    ['a cold furnace over two hours', samplesOf(() => 20, healthy, { seconds: 7200 })],
    ['a warm-up of the terminals alone', samplesOf(() => 20, shorted, { seconds: 7200 })],
    ['cooling in the furnace', samplesOf((s) => 20 + 880 * Math.exp(-s / 1500), healthy, { seconds: 7200 })],
    [
      'a cold probe put into a hot forge',
      samplesOf((s) => 1250 - 1230 * Math.exp(-Math.max(0, s - 60) / 33), healthy),
    ],
    ['a door opening', samplesOf((s) => 860 - 120 * Math.exp(-(((s - 900) / 20) ** 2)), healthy)],
  ])('%s raises nothing', (_name, samples) => {
    expect(faultsOf(samples)).toEqual([]);
  });

  it('raises nothing on any healthy ramp and hold', () => {
    const seeds = fc.integer({ min: 1, max: 10_000 });
    const tops = fc.integer({ min: 100, max: 1300 });
    fc.assert(
      fc.property(seeds, tops, fc.integer({ min: 30, max: 6000 }), (seed, top, timeConstant) => {
        const setting = { seed, seconds: 2400 };
        expect(faultsOf(samplesOf(heating(top), healthy, setting))).toEqual([]);
        expect(faultsOf(samplesOf(heating(top), lagging(timeConstant), setting))).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});

describe('open', () => {
  it('is said at the first bad sample and withdrawn at the first good one', () => {
    const probe: Probe = (moment) => (moment.seconds >= 600 && moment.seconds < 700 ? null : healthy(moment));
    const samples = samplesOf(heating(), probe);
    const findings = findingsOf(samples);
    const open = findings.map((finding) => finding?.fault === 'open');
    expect(open.indexOf(true)).toBe(600_000 / everyMs);
    expect(open.lastIndexOf(true)).toBe(700_000 / everyMs - 1);
    expect(findings.at(340)).toMatchObject({ sinceMs: samples[300]?.atMs, evidence: { rail: 'no-number' } });
  });

  it('names the rail', () => {
    const found = findingsOf(
      samplesOf(
        heating(),
        from(600, () => 1400),
      ),
    ).at(-1);
    expect(found?.evidence).toEqual({ rail: 'upscale' });
    const down = findingsOf(
      samplesOf(
        heating(),
        from(600, () => -300),
      ),
    ).at(-1);
    expect(down?.evidence).toEqual({ rail: 'downscale' });
  });

  it('is not said one step inside the rail', () => {
    const samples = samplesOf(holding(1371), ({ chamber }) => Math.min(1371.75, chamber));
    expect(faultsOf(samples).includes('open')).toBe(false);
  });
});

describe('reversed', () => {
  it('is said before the furnace is 100 °C, and stays when the reading runs off the low end', () => {
    const samples = samplesOf(heating(), reversed);
    const findings = findingsOf(samples);
    const first = findings.findIndex((finding) => finding?.fault === 'reversed');
    expect(samples[first]?.others?.control).toBeLessThan(100);
    expect(samples.at(-1)?.celsius).toBeNull();
    expect(findings.slice(first).every((finding) => finding?.fault === 'reversed')).toBe(true);
  });

  it('is withdrawn once the pair is put right', () => {
    const probe: Probe = (moment) => (moment.seconds < 400 ? reversed(moment) : healthy(moment));
    const findings = findingsOf(samplesOf(heating(), probe));
    expect(findings.at(199)?.fault).toBe('reversed');
    expect(findings.at(-1)).toBeNull();
  });

  it('gives way to open when the reading goes upscale', () => {
    const probe: Probe = (moment) => (moment.seconds < 1000 ? reversed(moment) : 1372);
    expect(faultsOf(samplesOf(heating(), probe))).toEqual(['reversed', 'open']);
  });

  it('is not said of one fall, such as a warm probe put into water', () => {
    const quenched: Probe = ({ seconds, wander }) => (seconds < 300 ? 45 : 23) + wander;
    expect(faultsOf(samplesOf(heating(), quenched, { seconds: 600 }))).toEqual([]);
  });

  it('is not said when the other probes see no heating, whatever the burner is said to do', () => {
    const falling: Probe = ({ seconds, wander }) => Math.max(-15, 22 - seconds * 0.1) + wander;
    const setting = { heating: true, seconds: 600 };
    expect(faultsOf(samplesOf(holding(300), falling, setting))).toEqual([]);
    expect(faultsOf(samplesOf(holding(300), falling, { ...setting, hasOther: false }))).toEqual(['reversed']);
  });

  it('is not said of a hot probe that cools while another heats', () => {
    const cooling: Probe = ({ seconds }) => 20 + 600 * Math.exp(-seconds / 900);
    expect(faultsOf(samplesOf(heating(), cooling))).not.toContain('reversed');
  });
});

describe('shorted', () => {
  it('waits until even the slowest piece would have warmed', () => {
    const first = findingsOf(samplesOf(heating(), shorted)).findIndex(
      (finding) => finding?.fault === 'shorted',
    );
    // From 120 s at 0.5 °C/s the exposure is 0.25·t²; 5 °C times 6 h is reached after 657 s, at 777 s.
    expect(first * (everyMs / 1000)).toBeGreaterThan(760);
    expect(first * (everyMs / 1000)).toBeLessThan(810);
  });

  it('stays while the furnace cools, until the probe sees heat again', () => {
    const furnace = (seconds: number) =>
      seconds < 1800 ? heating()(seconds) : 20 + 840 * Math.exp(-(seconds - 1800) / 300);
    const setting = { seconds: 3600 };
    expect(findingsOf(samplesOf(furnace, shorted, setting)).at(-1)?.fault).toBe('shorted');
    const mended: Probe = (moment) => (moment.seconds < 1000 ? shorted(moment) : healthy(moment));
    expect(findingsOf(samplesOf(heating(), mended)).at(-1)).toBeNull();
  });

  it('is not said while the others are only warm, however long', () => {
    const warm = (seconds: number) => Math.min(170, heating()(seconds));
    expect(faultsOf(samplesOf(warm, shorted, { seconds: 7200 }))).toEqual([]);
  });

  it('is not said when nothing else heats', () => {
    expect(faultsOf(samplesOf(() => 20, shorted, { seconds: 7200 }))).toEqual([]);
    expect(faultsOf(samplesOf(heating(), shorted, { hasOther: false }))).toEqual([]);
  });
});
