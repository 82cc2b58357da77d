import { describe, expect, it } from 'vitest';
import { stepProbeFaults, untouchedProbe } from '../../hub/physics/probe-faults.ts';
import {
  faultsOf,
  findingsOf,
  healthy,
  heating,
  holding,
  type Probe,
  rules,
  samplesOf,
  stuckFrom,
} from './probe-fault-curves.ts';

describe('stuck', () => {
  it('is told from a short at ambient by terminals that moved away from it', () => {
    const stuckCold: Probe = () => 22;
    const warming = (seconds: number) => 22 + 15 * Math.min(1, seconds / 600);
    expect(faultsOf(samplesOf(heating(), stuckCold, { terminals: warming }))).toEqual(['stuck']);
    const still = () => 22;
    expect(faultsOf(samplesOf(heating(), stuckCold, { terminals: still }))).toEqual(['shorted']);
  });

  it('is not said while the others stand still too', () => {
    const steady: Probe = () => 860;
    expect(faultsOf(samplesOf(holding(860), steady, { seconds: 7200 }))).toEqual([]);
  });

  it('is not said of a coarse digitiser whose step hides the wander', () => {
    const coarse = { ...rules, stuck: { ...rules.stuck, stepCelsius: 5, noiseCelsius: 0.2 } };
    let state = untouchedProbe;
    for (const sample of samplesOf(heating(), stuckFrom(400))) {
      state = stepProbeFaults(coarse, state, sample);
      expect(state.finding).toBeNull();
    }
  });

  it('counts readings as well as time: few slow ones prove nothing', () => {
    const slow = samplesOf(heating(), stuckFrom(400)).filter((_, index) => index % 10 === 0);
    const first = findingsOf(slow).findIndex((finding) => finding?.fault === 'stuck');
    // From 400 s on every 20 s: 120 s are over after 6 readings, the ordinary run only after more than 15.
    expect(first).toBeGreaterThan(400 / 20 + 15);
    expect(first).toBeLessThan(400 / 20 + 30);
  });

  it('does not count across a gap', () => {
    const samples = samplesOf(heating(), stuckFrom(400));
    const afterGap = samples.filter((_, index) => index < 210 || index >= 500);
    const findings = findingsOf(afterGap);
    expect(findings.slice(0, 210 + 59).every((finding) => finding === null)).toBe(true);
    expect(findings.at(210 + 70)?.fault).toBe('stuck');
  });

  it('is withdrawn at the first different value', () => {
    const stuck = stuckFrom(400);
    const probe: Probe = (moment) => (moment.seconds < 1000 ? stuck(moment) : healthy(moment));
    const findings = findingsOf(samplesOf(heating(), probe));
    expect(findings.at(499)?.fault).toBe('stuck');
    expect(findings.slice(501).every((finding) => finding === null)).toBe(true);
  });
});
