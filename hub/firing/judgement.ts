import type { FiringEvent, FiringJudgement } from '../contract/firing.ts';
import { words } from '../contract/words/words.ts';
import { isCounting } from './advance.ts';
import { currentRate, estimate } from './estimate.ts';
import { forecastOf } from './forecast/outlook.ts';
import { bandOf, inside } from './limits.ts';
import { isOnCore, loadOf } from './load/load.ts';
import { piecesOf } from './load/shown.ts';
import { nextMove } from './next-move.ts';
import { plannedAt, planOf } from './plan.ts';
import { SECONDS_PER_HOUR } from './rates.ts';
import { resultsOf } from './results.ts';
import { waitsForSmith } from './segments.ts';
import type { FiringCase, FiringState } from './types.ts';
import { overallVerdict } from './verdict.ts';
import { isUnwatched, type Measured, measure, viewOf } from './view.ts';

/** The judged state as people and programs get it. */

function shown(c: FiringCase, state: FiringState): Measured | null {
  const segment = c.schedule.segments[state.index];
  const view = viewOf(c, state);
  if (view.kind === 'seen') return view;
  return isUnwatched(c, segment) ? measure(c, state.channels, undefined, state.at) : null;
}

function eventsOf(c: FiringCase, state: FiringState): FiringEvent[] {
  const say = words(c.settings.language).event;
  return state.events.map((event) => ({ ...event, text: say(event, c.schedule) }));
}

/** What the soak clock listens to, in words. */
function clockText(c: FiringCase, state: FiringState): string {
  const slowest = loadOf(c)[0];
  return words(c.settings.language).soakClock({
    on: slowest === undefined ? 'coldest-thermocouple' : 'core',
    piece: slowest?.piece.mark ?? null,
    corrected: state.load?.correctedBy == null ? 0 : 1,
  });
}

/** Builds the judgement at the instant the state stands at. */
export function buildJudgement(c: FiringCase, state: FiringState, judgeVersion: string): FiringJudgement {
  const last = c.schedule.segments.length - 1;
  const index = Math.min(Math.max(state.index, 0), last);
  const segment = state.finishedAt === null ? c.schedule.segments[state.index] : undefined;
  const band = bandOf(segment);
  const measured = shown(c, state);
  const rate = currentRate(state);
  const plan = planOf(c, state);
  const segments = resultsOf(c, state);
  const { core, ...estimates } = estimate(c, state);
  const soakClockOn = isOnCore(c) ? 'core' : 'coldest-thermocouple';
  const pieces = piecesOf(c, state);
  const open = state.blindSince;
  return {
    judgedTo: state.at,
    judgeVersion,
    segmentIndex: index,
    segments,
    soakSeconds: segment?.kind === 'soak' ? (state.segments[index]?.soakMs ?? 0) / 1000 : null,
    soakClockOn,
    soakClockText: clockText(c, state),
    pieces,
    forecast: forecastOf(c, state, { core }),
    measuredCelsius: measured?.coldest ?? null,
    hottestCelsius: measured?.hottest ?? null,
    targetCelsius: segment?.targetCelsius ?? null,
    lowCelsius: band?.low ?? null,
    highCelsius: band?.high ?? null,
    plannedCelsius: segment === undefined ? null : plannedAt(plan, state.at),
    rateCelsiusPerHour: rate === null || measured === null ? null : rate * SECONDS_PER_HOUR,
    insideTolerance:
      isCounting(c, state) || (band !== null && measured !== null && inside(band, measured.coldest)),
    blindSince: open,
    ...estimates,
    nextMove: nextMove(c, state, { ...estimates, core }),
    waitsForConfirmation: waitsForSmith(c, state),
    verdict: overallVerdict(segments),
    plan,
    gaps: open !== null && state.at > open ? [...state.gaps, { from: open, to: state.at }] : [...state.gaps],
    events: eventsOf(c, state),
  };
}
