import { describe, expect, it } from 'vitest';
import { blindCauses, probeFindings } from '../../hub/probes/findings.ts';
import { startProbes, stepProbes } from '../../hub/probes/judge.ts';
import { rulesOf } from '../../hub/probes/rules.ts';
import { type Curve, channel, config, FIRING, live, probeOf, run, T0 } from './kit.ts';

const pair = config([channel('chamber'), channel('load')]);
/** 20 °C, then up 30 °C a minute to 900 °C. */
const heating = (second: number) => Math.min(900, 20 + second * 0.5);
const ambient = live(() => 22);
const warm = live(heating);
const stuckAt =
  (celsius: number, from: number): Curve =>
  (second) =>
    second < from ? warm(second) : celsius;
const end = { quality: 'bad', reason: 'out-of-range' } as const;

describe('where a fault matters', () => {
  it('on a channel that a running firing watches', () => {
    const { findings } = run(pair, { chamber: stuckAt(220, 400), load: warm }, 900);
    expect(findings).toMatchObject([
      {
        kind: 'probe-fault',
        subject: 'chamber',
        params: { fault: 'stuck', firingId: 'firing', furnaceName: 'Big forge', measuredCelsius: 220 },
      },
    ]);
    expect(findings[0]?.since).toBe(T0 + 400_000);
  });

  it('in the chamber of a furnace that is hot, though no firing runs, but not on what was taken out of it', () => {
    const two = config([channel('chamber'), channel('chamber-2'), channel('load')]);
    const curves = { chamber: ambient, 'chamber-2': warm, load: ambient };
    expect(run(two, curves, 1800, []).told).toEqual(['chamber: shorted']);
  });

  it('nowhere while the furnace is cold', () => {
    const still = { chamber: () => 20, load: live(() => 22) };
    expect(run(pair, still, 3600, []).told).toEqual([]);
  });

  it('not in another furnace: its heat says nothing of this one', () => {
    const apart = config([channel('chamber'), channel('load', { furnaceId: 'g' })]);
    expect(run(apart, { chamber: stuckAt(220, 400), load: warm }, 1800).told).toEqual([]);
  });
});

describe('ordinary work', () => {
  it('quenching a piece with a probe on it is no fault, but a chamber does not fall so', () => {
    const quenched = live((second) => (second < 600 ? 815 : 20 + 795 * Math.exp(-(second - 600) / 5)));
    const hot = live(() => 815);
    expect(run(pair, { chamber: hot, load: quenched }, 700).told).toEqual([]);
    expect(run(pair, { chamber: quenched, load: hot }, 700).told).toEqual(['chamber: step']);
  });

  it('putting a thin probe into a hot furnace is no fault, but the same jump from a hot value is', () => {
    const jump = (from: number) => live((second) => (second < 600 ? from : 1200));
    const hot = live(() => 1200);
    expect(run(pair, { chamber: jump(25), load: hot }, 700).told).toEqual([]);
    expect(run(pair, { chamber: jump(400), load: hot }, 700).told).toEqual(['chamber: step']);
  });

  it('a piece that cools on the bench while the furnace heats up again is not a reversed pair', () => {
    const oven = live((second) => 60 + second / 6);
    const cooling = live((second) => 20 + 29 * Math.exp(-second / 400));
    expect(run(pair, { chamber: oven, load: cooling }, 900).told).toEqual([]);
  });

  it('a device that shows whole degrees repeats them: it takes much longer to be called stuck', () => {
    const whole = (second: number): number =>
      Math.round(second < 600 ? heating(second) : 320.1 + 0.3 * Math.sin(second / 700));
    const door = live((second) => (second < 600 ? heating(second) : 320 + 60 * Math.sin(second / 200)));
    expect(run(pair, { chamber: door, load: whole }, 1500).told).toEqual([]);
    const told = config([
      channel('chamber'),
      channel('load', { probe: probeOf({ digitiserStepCelsius: 0.25 }) }),
    ]);
    expect(run(told, { chamber: door, load: whole }, 1500).told).toEqual(['load: stuck']);
  });
});

describe('a jump of one reading', () => {
  const jumped = live((second) => (second < 600 ? 400 : 800));
  const hot = live(() => 800);

  it('is told for a minute, so that somebody can see it', () => {
    const at = (second: number) => run(pair, { chamber: jumped, load: hot }, second).findings.length;
    expect([598, 600, 660, 662].map(at)).toEqual([0, 1, 1, 0]);
  });

  it('tells from where to where', () => {
    const [finding] = run(pair, { chamber: jumped, load: hot }, 602).findings;
    expect(Number(finding?.params.fromCelsius)).toBeCloseTo(400, 0);
    expect(Number(finding?.params.toCelsius)).toBeCloseTo(800, 0);
  });
});

describe('a probe without usable readings', () => {
  const openAt =
    (from: number): Curve =>
    (second) =>
      second < from ? warm(second) : { value: 2047.75, ...end };

  it('is left to blindness, which is given the cause', () => {
    const { told, state } = run(pair, { chamber: openAt(600), load: warm }, 610);
    expect(told).toEqual([]);
    expect([...blindCauses(pair, state)]).toEqual([['chamber', 'open']]);
  });

  it('has no cause that is known once it is silent, or when its last word was in order', () => {
    const silent: Curve = (second) => (second < 610 ? openAt(600)(second) : null);
    expect([...blindCauses(pair, run(pair, { chamber: silent, load: warm }, 640).state)]).toEqual([]);
    const mute: Curve = (second) => (second < 600 ? warm(second) : null);
    expect([...blindCauses(pair, run(pair, { chamber: mute, load: warm }, 640).state)]).toEqual([]);
  });

  it('is not told as stuck once its readings are old', () => {
    const mute: Curve = (second) => (second < 900 ? stuckAt(220, 400)(second) : null);
    expect(run(pair, { chamber: mute, load: warm }, 890).findings).toHaveLength(1);
    expect(run(pair, { chamber: mute, load: warm }, 930).findings).toEqual([]);
  });

  it('is told itself where a good reading lies at the end of its type', () => {
    const typed = config([channel('chamber', { probe: probeOf() }), channel('load')]);
    const atEnd: Curve = (second) => (second < 600 ? warm(second) : 1372);
    expect(run(typed, { chamber: atEnd, load: warm }, 602).told).toEqual(['chamber: open']);
  });

  it('says nothing while it is merely out of the range that was set for it', () => {
    const narrow: Curve = (second) => (second < 600 ? warm(second) : { value: 1310, ...end });
    const { told, state } = run(pair, { chamber: narrow, load: warm }, 640);
    expect(told).toEqual([]);
    expect([...blindCauses(pair, state)]).toEqual([]);
  });
});

describe('a reversed pair', () => {
  /** About what type K shows near room temperature with its legs swapped. */
  const backwards = live((second) => Math.max(-55, 44 - heating(second)));

  it('is told once it reads below what its terminals can be', () => {
    expect(run(pair, { chamber: backwards, load: warm }, 240).told).toEqual(['chamber: reversed']);
  });

  it('is held against its own terminals where they are known', () => {
    const known = config([channel('chamber', { junction: 'terminals' }), channel('load')], ['terminals']);
    const curves = { terminals: live(() => 28), chamber: backwards, load: warm };
    expect(run(known, curves, 240).told).toEqual(['chamber: reversed']);
  });
});

describe('the figures for a channel', () => {
  it('end where the type ends, moved by the correction, and never above a cold shop', () => {
    const rails = (probe: object | null) =>
      rulesOf(channel('c', { probe: probe === null ? null : probeOf(probe) }), null).rails;
    expect(rails({})).toEqual({ lowCelsius: -270, highCelsius: 1372 });
    expect(rails({ type: 'B' })).toEqual({ lowCelsius: -60, highCelsius: 1820 });
    const correction = { offsetCelsius: -4, standardUncertaintyCelsius: 1 };
    expect(rails({ type: 'J', correction }).highCelsius).toBe(1196);
    expect(rails(null).highCelsius).toBe(1820);
  });

  it('take the step that was said, else the finest that was seen', () => {
    const step = (probe: object | null, seen: number | null) =>
      rulesOf(channel('c', { probe: probe === null ? null : probeOf(probe) }), seen).stuck.stepCelsius;
    expect(step({ digitiserStepCelsius: 0.0625 }, 1)).toBe(0.0625);
    expect(step(null, 0.25)).toBe(0.25);
    expect(step(null, null)).toBe(1);
    expect(step({}, 1e-9)).toBe(0.01);
  });
});

describe('the judge', () => {
  const reading = (value: number, at: number) => ({
    kind: 'reading' as const,
    reading: { channel: 'chamber', at, value, quality: 'good' as const },
  });

  it('does not go back in time', () => {
    const state = stepProbes(pair, startProbes(T0), reading(20, T0 + 1000));
    expect(() => stepProbes(pair, state, reading(20, T0))).toThrow(
      expect.objectContaining({ code: 'time-runs-back' }),
    );
  });

  it('takes a second word about the same instant for nothing new', () => {
    const once = stepProbes(pair, startProbes(T0), reading(20, T0 + 1000));
    const twice = stepProbes(pair, once, reading(900, T0 + 1000));
    expect(twice.probes).toEqual(once.probes);
    expect(probeFindings(pair, twice, [FIRING])).toEqual([]);
  });

  it('lets readings of other channels pass', () => {
    const state = stepProbes(pair, startProbes(T0), {
      kind: 'reading',
      reading: { channel: 'gas', at: T0 + 1, value: 5, quality: 'good' },
    });
    expect(state.probes).toEqual({});
  });
});
