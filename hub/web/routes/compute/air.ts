import type { z } from 'zod';
import {
  CarboxyhaemoglobinAnswer,
  CarboxyhaemoglobinQuestion,
} from '../../../contract/compute/carboxyhaemoglobin.ts';
import { ExposureAnswer, ExposureQuestion } from '../../../contract/compute/exposure.ts';
import { DecayAnswer, DecayQuestion } from '../../../contract/compute/ventilation.ts';
import { workRateFrom } from '../../../physics/carbon-monoxide/carboxyhaemoglobin-constants.ts';
import { type CohbQuestion, cohbReport } from '../../../physics/carbon-monoxide/carboxyhaemoglobin-report.ts';
import type { CurveRules, GapFill, PpmSample } from '../../../physics/carbon-monoxide/curve.ts';
import { exposureReport } from '../../../physics/carbon-monoxide/exposure-report.ts';
import type { CustomLimits, ProfileId } from '../../../physics/carbon-monoxide/limits.ts';
import { decayReport } from '../../../physics/ventilation/decay-report.ts';
import { WatchError } from '../../../watch/errors.ts';
import { defined } from '../need.ts';
import { exposureAnswer, noticesOf } from './air-answers.ts';
import { computation } from './computation.ts';

interface Sample {
  readonly at: number;
  readonly ppm: number;
}

const samplesOf = (samples: readonly Sample[]): PpmSample[] =>
  samples.map(({ at, ppm }) => ({ atMs: at, ppm }));

const rulesOf = (asked: { readonly longestHoldSeconds: number; readonly gap: GapFill }): CurveRules => ({
  longestHoldMs: asked.longestHoldSeconds * 1000,
  gap: asked.gap,
});

export const carbonMonoxideExposure = computation({
  name: 'carbon-monoxide/exposure',
  summary: 'TWA, STEL, peak and coverage of a curve of carbon monoxide by the convention of a body',
  question: ExposureQuestion,
  answer: ExposureAnswer,
  run: ({ profile, samples, startAt: startMs, endAt: endMs, ...rules }) => {
    requireModestSpan(samples, startMs, endMs);
    const report = exposureReport({
      profile: profileOf(profile),
      samples: samplesOf(samples),
      rules: rulesOf(rules),
      ...defined({ startMs, endMs }),
    });
    return {
      profile: report.profile.id,
      convention: report.profile.convention,
      startAt: report.startMs,
      endAt: report.atMs,
      ...exposureAnswer(report),
      doseWarnings: report.doseWarnings.map(({ standard, atMs }) => ({
        standard,
        at: atMs === null ? null : Math.round(atMs),
      })),
      notices: noticesOf(['no-claim', 'gaps-are-held', 'alarm-is-no-evidence', 'not-a-safety-device']),
    };
  },
});

/** Two days: a longer curve would hold the hub's thread for more than about 0.2 s. */
const LONGEST_HOURS = 48;

function requireModestSpan(samples: readonly Sample[], startMs = samples[0]?.at, endMs = samples.at(-1)?.at) {
  const hours = ((endMs ?? 0) - (startMs ?? 0)) / 3_600_000;
  if (hours <= LONGEST_HOURS) return;
  throw new WatchError(
    'too-much-work',
    `this curve is ${Math.round(hours)} h long, the bound is ${LONGEST_HOURS} h: ask for a part of it`,
  );
}

function profileOf(asked: z.output<typeof ExposureQuestion>['profile']): ProfileId | CustomLimits {
  if (typeof asked === 'string') return asked;
  const { source, ...limits } = asked;
  return { source, ...defined(limits) };
}

export const carboxyhaemoglobin = computation({
  name: 'carbon-monoxide/carboxyhaemoglobin',
  summary: 'Carboxyhaemoglobin over time by the Coburn-Forster-Kane equation, linear and nonlinear',
  question: CarboxyhaemoglobinQuestion,
  answer: CarboxyhaemoglobinAnswer,
  run: (question) => {
    const { startPercent, workRate, constants } = question;
    const exposure = exposureOf(question);
    const report = cohbReport({ startPercent, workRate, constants: defined(constants), exposure });
    const notices = noticesOf(['estimate-for-an-adult', 'gaps-are-held', 'not-a-safety-device']);
    return { ...report, workRate, from: workRateFrom(workRate), notices };
  },
});

function exposureOf(question: z.output<typeof CarboxyhaemoglobinQuestion>): CohbQuestion['exposure'] {
  const { samples, endAt: endMs, ppm, minutes } = question;
  if (samples === undefined) {
    return { kind: 'constant', ppm: ppm ?? Number.NaN, minutes: minutes ?? Number.NaN };
  }
  return {
    kind: 'samples',
    samples: samplesOf(samples),
    rules: rulesOf(question),
    ...defined({ endMs }),
  };
}

export const ventilationDecay = computation({
  name: 'ventilation/decay',
  summary: 'Air changes an hour from a falling gas, with its confidence interval and the conditions',
  question: DecayQuestion,
  answer: DecayAnswer,
  run: ({ backgroundPpm, samples, otherPoints, room, ...known }) => {
    const report = decayReport({
      backgroundPpm,
      samples: samplesOf(samples),
      ...defined({ ...known, otherPoints: otherPoints?.map(samplesOf) }),
      ...(room === undefined ? {} : { room: roomOf(room) }),
    });
    return { ...report, notices: noticesOf(['holds-for-that-hour', 'no-claim', 'not-a-safety-device']) };
  },
});

type Room = NonNullable<z.output<typeof DecayQuestion>['room']>;

function roomOf({ volumeCubicMetres, limitPpm, mixingFactor }: Room) {
  return { volumeCubicMetres, limitPpm, ...defined({ mixingFactor }) };
}
