import type { z } from 'zod';
import {
  ProbeFaultsAnswer,
  ProbeFaultsQuestion,
  ProbeLimitAnswer,
  ProbeLimitQuestion,
  ProbeTimeAboveAnswer,
  ProbeTimeAboveQuestion,
  ProbeUncertaintyAnswer,
  ProbeUncertaintyQuestion,
} from '../../../contract/compute/probe.ts';
import { showPlusMinus, showTo } from '../../../contract/significant.ts';
import { defaultProbeFaultRules } from '../../../physics/probe-fault-rules.ts';
import { stepProbeFaults, untouchedProbe } from '../../../physics/probe-faults.ts';
import { recommendedUpperLimit } from '../../../physics/probe-limits.ts';
import { timeAbove } from '../../../physics/probe-time-above.ts';
import { channelUncertainty } from '../../../physics/probe-uncertainty.ts';
import { defined } from '../need.ts';
import { computation } from './computation.ts';

export const probeUncertainty = computation({
  name: 'probe-uncertainty',
  summary: 'Combined uncertainty of a thermocouple channel by GUM rules',
  question: ProbeUncertaintyQuestion,
  answer: ProbeUncertaintyAnswer,
  run: ({ type, celsius, coldJunctionCelsius, class: toleranceClass, ...known }) => {
    const facts = { type, hotCelsius: celsius, coldJunctionCelsius };
    const combined = channelUncertainty({ ...facts, ...defined({ toleranceClass, ...known }) });
    return {
      ...combined,
      shown: showPlusMinus(celsius, combined.expandedCelsius, '°C'),
      source: 'JCGM 100:2008 (GUM): rectangular limits, resolution step/√12, k = 2',
    };
  },
});

export const probeLimit = computation({
  name: 'probe-limit',
  summary: 'Recommended upper temperature of a probe by its size',
  question: ProbeLimitQuestion,
  answer: ProbeLimitAnswer,
  run: (probe) => {
    const limit = recommendedUpperLimit(probe);
    return { ...limit, shown: showTo(limit.celsius, 1, '°C') };
  },
});

export const probeTimeAbove = computation({
  name: 'probe-time-above',
  summary: 'Hours that a measured curve spent above a limit; gaps count as unknown',
  question: ProbeTimeAboveQuestion,
  answer: ProbeTimeAboveAnswer,
  run: ({ curve, limitCelsius, maximumGapSeconds }) => {
    const { peakCelsius, ...hours } = timeAbove(curve, limitCelsius, maximumGapSeconds * 1000);
    return { ...hours, peakCelsius: peakCelsius ?? null };
  },
});

type Faults = z.infer<typeof ProbeFaultsAnswer>['faults'];

export const probeFaults = computation({
  name: 'probe-faults',
  summary: 'Tell open, reversed, shorted, stuck, step and rate faults of a probe from its readings',
  question: ProbeFaultsQuestion,
  answer: ProbeFaultsAnswer,
  run: ({ type, samples }) => {
    const rules = defaultProbeFaultRules(type);
    const faults: Faults = [];
    let state = untouchedProbe;
    for (const { atMs, celsius, ...known } of samples) {
      state = stepProbeFaults(rules, state, { atMs, celsius, ...defined(known) });
      const { finding } = state;
      const open = faults.at(-1);
      if (open?.clearedMs === null && open.fault !== finding?.fault) open.clearedMs = atMs;
      if (finding === null || (open?.clearedMs === null && open.fault === finding.fault)) continue;
      const evidence = { ...finding.evidence };
      faults.push({ ...finding, evidence, recognisedMs: atMs, clearedMs: null });
    }
    return { faults };
  },
});
