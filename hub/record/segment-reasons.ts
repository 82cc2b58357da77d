import type { Params } from '../contract/alarm.ts';
import type { SegmentResult } from '../contract/firing.ts';
import { highestBetween } from './achieved.ts';
import { curveOf, type PieceHeat } from './heat.ts';
import { doubt, type Reason, type RecordQuestion, wrong } from './types.ts';

/** What the verdicts of the segments mean for one piece. */

/** Reasons about the time at heat: where a piece has a core of its own, that core is asked instead. */
const ABOUT_SOAK: ReadonlySet<string> = new Set([
  'core-short',
  'core-cold',
  'core-unsure',
  'moved-on-early',
  'finished-early',
]);
/** Reasons that only colour a verdict: they cannot make a segment not met. */
const NEVER_A_FAULT: ReadonlySet<string> = new Set([
  'short-overshoot',
  'blind',
  'interrupted',
  'heated-slowly',
  'heated-too-fast',
  'rate-not-seen',
  'not-confirmed',
  'cooled-too-fast-briefly',
]);

export function segmentReasons(
  { schedule, segments }: Pick<RecordQuestion, 'schedule' | 'segments'>,
  heat: PieceHeat,
): Reason[] {
  return segments.flatMap((result) => {
    const kind = schedule.segments[result.index]?.kind;
    const ownSoak = kind === 'soak' && heat.basis !== 'air';
    return result.verdict === 'not-met' ? faults(result, heat, ownSoak) : doubts(result, ownSoak);
  });
}

function faults(result: SegmentResult, heat: PieceHeat, ownSoak: boolean): Reason[] {
  const grave = result.reasons.filter(({ code }) => !NEVER_A_FAULT.has(code));
  return grave.flatMap(({ code, params, text }) => {
    if (ownSoak && ABOUT_SOAK.has(code)) return [];
    const told: Params = { segment: result.index + 1, why: text };
    if (code !== 'overshoot') return [wrong('segment-not-met', told)];
    const limit = typeof params.limitCelsius === 'number' ? params.limitCelsius : null;
    return [limit !== null && stayedBelow(result, heat, limit) ? notInPiece(result, limit) : over(told)];
  });
}

const over = (told: Params): Reason => wrong('segment-not-met', told);

function notInPiece(result: SegmentResult, limitCelsius: number): Reason {
  return doubt('overshoot-not-in-piece', { segment: result.index + 1, limitCelsius });
}

/** The air went over and the skin of the piece, as it is computed, did not follow that far. */
function stayedBelow({ startedAt, endedAt }: SegmentResult, heat: PieceHeat, limit: number): boolean {
  if (heat.basis !== 'core' || startedAt === null) return false;
  const to = endedAt ?? heat.points.at(-1)?.atMs ?? startedAt;
  const most = highestBetween(curveOf(heat.points, 'surface', 'value'), startedAt, to);
  return most !== null && most <= limit;
}

function doubts(result: SegmentResult, ownSoak: boolean): Reason[] {
  if (result.verdict !== 'met-with-doubts') return [];
  return result.reasons
    .filter(({ code }) => !(ownSoak && ABOUT_SOAK.has(code)))
    .map(({ text }) => doubt('segment-doubtful', { segment: result.index + 1, why: text }));
}
