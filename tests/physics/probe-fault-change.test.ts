import { describe, expect, it } from 'vitest';
import { stepProbeFaults, untouchedProbe } from '../../hub/physics/probe-faults.ts';
import {
  faultsOf,
  findingsOf,
  from,
  healthy,
  heating,
  holding,
  type Probe,
  rules,
  samplesOf,
  shorted,
} from './probe-fault-curves.ts';
import { codeOf } from './thermocouple-support.ts';

describe('step and rate', () => {
  it('says a step once, at the sample that jumped', () => {
    const findings = findingsOf(
      samplesOf(
        holding(860),
        from(600, ({ chamber }) => chamber - 400),
      ),
    );
    const steps = findings.flatMap((finding, index) => (finding?.fault === 'step' ? [index] : []));
    expect(steps).toEqual([300]);
    expect(findings[300]?.evidence.fromCelsius).toBeGreaterThan(855);
  });

  it('says both edges of a spike', () => {
    const spike: Probe = (moment) => (moment.seconds === 600 ? 1200 : healthy(moment));
    const findings = findingsOf(samplesOf(holding(700), spike));
    expect(
      findings.flatMap((finding, index) => (finding === null ? [] : [`${finding.fault} ${index}`])),
    ).toEqual(['step 300', 'step 301']);
  });

  it('does not call a change across a gap a step', () => {
    const samples = samplesOf(
      holding(860),
      from(600, ({ chamber }) => chamber - 400),
    );
    const gap = samples.filter(
      (sample) => !(sample.atMs >= (samples[285]?.atMs ?? 0) && sample.atMs < (samples[302]?.atMs ?? 0)),
    );
    expect(faultsOf(gap)).toEqual([]);
  });

  it('does not count a step as the beginning of a rate', () => {
    const jumpThenTwo: Probe = (moment) => {
      const intervals = Math.max(0, Math.min(3, (moment.seconds - 600) / 2 + 1));
      return (healthy(moment) ?? 0) + (intervals >= 1 ? 300 : 0) + Math.max(0, intervals - 1) * 100;
    };
    expect(faultsOf(samplesOf(holding(500), jumpThenTwo))).toEqual(['step']);
  });

  it('does not call two fast intervals, or fast ones to and fro, a rate', () => {
    const two: Probe = (moment) =>
      (healthy(moment) ?? 0) + Math.min(2, Math.max(0, (moment.seconds - 600) / 2)) * 100;
    expect(faultsOf(samplesOf(holding(500), two))).toEqual([]);
    const toAndFro: Probe = (moment) => (healthy(moment) ?? 0) + (moment.seconds % 4 === 0 ? 100 : 0);
    expect(faultsOf(samplesOf(holding(500), toAndFro, { seconds: 60 }))).toEqual([]);
  });
});

describe('order and replay', () => {
  it('refuses a sample that is not later than the one before', () => {
    const sample = { atMs: 1000, celsius: 20 };
    const state = stepProbeFaults(rules, untouchedProbe, sample);
    expect(codeOf(() => stepProbeFaults(rules, state, sample))).toBe('bad-input');
    expect(codeOf(() => stepProbeFaults(rules, state, { ...sample, atMs: 999 }))).toBe('bad-input');
    expect(codeOf(() => stepProbeFaults(rules, state, { ...sample, atMs: Number.NaN }))).toBe('bad-input');
  });

  it('gives the same findings when replayed, and never alters an earlier state', () => {
    const samples = samplesOf(heating(), shorted);
    const state = Object.freeze(
      stepProbeFaults(rules, untouchedProbe, samples[0] ?? { atMs: 0, celsius: 0 }),
    );
    const before = JSON.stringify(state);
    stepProbeFaults(rules, state, samples[1] ?? { atMs: 1, celsius: 0 });
    expect(JSON.stringify(state)).toBe(before);
    expect(findingsOf(samples)).toEqual(findingsOf(samples));
  });

  it('remembers the same amount after an hour as after a minute', () => {
    const sizeAfter = (seconds: number) => {
      let state = untouchedProbe;
      for (const sample of samplesOf(holding(860), healthy, { seconds }))
        state = stepProbeFaults(rules, state, sample);
      return JSON.stringify(state).length;
    };
    expect(sizeAfter(3600)).toBeLessThan(sizeAfter(60) + 100);
  });
});
