import type { FiringDetail, SegmentResult } from '../../hub/contract/firing.ts';
import type { DisplayUnit, Segment } from '../../hub/contract/schedule.ts';
import { segmentWords } from '../words/firings.ts';
import { degreesDifference, rate, temperature, unitNamed } from '../words/format.ts';
import { segmentName, segmentTerms } from '../words/segments.ts';
import { span } from '../words/span.ts';
import { duration } from '../words/time.ts';

/** One row of the table of segments: planned beside achieved, as text in the unit that people see. */
export interface SegmentRow {
  readonly key: string;
  readonly name: string;
  readonly terms: string;
  readonly achieved: string;
  readonly took: string;
  readonly soak: string;
  readonly span: string;
  readonly over: string;
  readonly rates: string;
  readonly blind: string;
  readonly verdict: SegmentResult['verdict'];
  readonly state: SegmentResult['state'];
  readonly reasons: readonly string[];
}

const { none } = segmentWords;

/** The rows of a firing. Its frozen schedule says what was planned, the judgement what came of it. */
export function segmentRows(
  firing: Pick<FiringDetail, 'schedule' | 'judgement'>,
  unit: DisplayUnit,
): SegmentRow[] {
  return firing.schedule.segments.map((segment, index) => {
    const result = firing.judgement.segments.find((candidate) => candidate.index === index);
    return result ? rowOf(segment, result, unit) : emptyRow(segment, index, unit);
  });
}

function rowOf(segment: Segment, result: SegmentResult, unit: DisplayUnit): SegmentRow {
  const begun = result.startedAt !== null;
  return {
    ...emptyRow(segment, result.index, unit),
    achieved: between(result.startCelsius, result.endCelsius, unit),
    took: begun ? duration(result.elapsedSeconds) : '',
    soak: soakText(segment, result, begun),
    span: between(result.lowestCelsius, result.peakCelsius, unit),
    over: overText(result, unit),
    rates: rateText(segment, result, unit),
    blind: begun ? span(result.blindSeconds) : none,
    verdict: result.verdict,
    state: result.state,
    reasons: result.reasons.map((reason) => reason.text),
  };
}

function emptyRow(segment: Segment, index: number, unit: DisplayUnit): SegmentRow {
  return {
    key: String(index),
    name: `${index + 1}. ${segmentName(segment, unit)}`,
    terms: segmentTerms(segment, unit),
    achieved: none,
    took: '',
    soak: none,
    span: none,
    over: none,
    rates: none,
    blind: none,
    verdict: 'pending',
    state: 'waiting',
    reasons: [],
  };
}

/** From where to where; only what is known of it. */
function between(from: number | null, to: number | null, unit: DisplayUnit): string {
  if (from !== null && to !== null) {
    return segmentWords.to(temperature(from, unit), temperature(to, unit));
  }
  if (from !== null) return segmentWords.from(temperature(from, unit));
  return to === null ? none : segmentWords.until(temperature(to, unit));
}

function soakText(segment: Segment, result: SegmentResult, begun: boolean): string {
  if (segment.kind !== 'soak' || !begun) return none;
  const planned = duration(segment.durationSeconds);
  const { soakSecondsCore: core, soakSecondsAir: air } = result;
  if (core !== null) return segmentWords.coreAndAir(span(core), span(air), planned);
  return segmentWords.ofPlan(span(result.soakSeconds), planned);
}

function overText(result: SegmentResult, unit: DisplayUnit): string {
  if (result.overshootCelsius === null) return none;
  const over = `${degreesDifference(result.overshootCelsius, unit)} ${unitNamed(unit).label}`;
  return result.overshootCelsius > 0 ? segmentWords.above(over, result.secondsAboveTolerance) : over;
}

/** A soak has no rate to speak of: noise over five minutes would read like one. */
function rateText(segment: Segment, result: SegmentResult, unit: DisplayUnit): string {
  const { meanRateCelsiusPerHour: mean, steepestRateCelsiusPerHour: steepest } = result;
  if (segment.kind === 'soak' || (mean === null && steepest === null)) return none;
  const say = (value: number | null) => (value === null ? none : rate(value, unit));
  return `${say(mean)} / ${say(steepest)}`;
}
