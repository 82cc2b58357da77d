import type { AlarmTransition } from '../contract/alarm-journal.ts';
import type { AlarmMeasure, AlarmReview } from '../contract/alarm-review.ts';
import { answerTimes, percentile } from './answer-time.ts';
import { announcedAt, FLOOD_WINDOW_MS, floodSpans, isAnnounced } from './flood.ts';
import { byPlace, chatteringIn, fleetingIn, mostWithin, placeOf, staleAt } from './nuisance.ts';
import { measured } from './targets.ts';

/** A review of the alarms of a stretch of time, out of the journal. Pure. */

export interface ReviewInput {
  /** Epoch ms, `from` before `to`. */
  readonly from: number;
  readonly to: number;
  /** Everything of the journal with from <= at <= to, in order. */
  readonly journal: readonly AlarmTransition[];
  /** The last word, at `to`, of every alarm that was not normal then. */
  readonly standing: readonly AlarmTransition[];
  /** What a kind of alarm is called, with its numbers. */
  readonly titleOf: (transition: AlarmTransition) => string;
}

const ENOUGH_MS = 30 * 86_400_000;
const MOST_FREQUENT = 10;
const BUSY_ABOVE = 10;
const HOUR_MS = 3_600_000;

const percent = (part: number, whole: number): number => (whole === 0 ? 0 : (100 * part) / whole);

/** The review. An empty journal gives zeros and no times, never NaN. */
export function reviewAlarms(input: ReviewInput): AlarmReview {
  const { from, to, journal, standing, titleOf } = input;
  const place = (transition: AlarmTransition) => ({
    kind: transition.kind,
    place: placeOf(transition),
    title: titleOf(transition),
  });
  const frequent = mostFrequent(journal).map(({ last, ...rest }) => ({ ...place(last), ...rest }));
  const chattering = chatteringIn(journal).map(({ last, ...rest }) => ({ ...place(last), ...rest }));
  const fleeting = fleetingIn(journal).map(({ last, count }) => ({ ...place(last), count }));
  const stale = staleAt(standing, to);
  const floods = floodSpans(announcedAt(journal), to);
  const counts = {
    chattering: chattering.length,
    fleeting: fleeting.reduce((sum, { count }) => sum + count, 0),
    stale: stale.length,
    frequentPercent: frequent.reduce((sum, row) => sum + row.percent, 0),
    floodMs: floods.reduce((sum, flood) => sum + ((flood.to ?? to) - flood.from), 0),
  };
  return {
    from,
    to,
    enoughData: to - from >= ENOUGH_MS,
    announced: announcedAt(journal).length,
    measures: measures(input, counts),
    mostFrequent: frequent,
    acknowledgement: acknowledgement(journal),
    chattering,
    fleeting,
    stale: stale.map((one) => ({
      ...place(one),
      alarmId: one.alarmId,
      activeSince: one.activeSince ?? one.at,
    })),
    standing: standing.map((one) => ({
      ...place(one),
      alarmId: one.alarmId,
      state: one.to,
      active: one.active,
      activeSince: one.activeSince,
    })),
    floods,
  };
}

interface Counts {
  readonly chattering: number;
  readonly fleeting: number;
  readonly stale: number;
  readonly frequentPercent: number;
  readonly floodMs: number;
}

function measures({ from, to, journal }: ReviewInput, counts: Counts): AlarmMeasure[] {
  const times = announcedAt(journal);
  const spanMs = to - from;
  const perHour = times.length / (spanMs / HOUR_MS);
  return [
    measured('alarms-per-hour', perHour),
    measured('alarms-per-ten-minutes', perHour / 6),
    measured('most-in-ten-minutes', mostWithin(times, FLOOD_WINDOW_MS)),
    measured('busy-periods-percent', busyPercent(times, from, to)),
    measured('flood-percent', percent(counts.floodMs, spanMs)),
    measured('most-frequent-percent', counts.frequentPercent),
    measured('chattering', counts.chattering),
    measured('fleeting', counts.fleeting),
    measured('stale', counts.stale),
  ];
}

/** Percent of the ten-minute periods, counted from `from`, with more than ten announcements. */
function busyPercent(times: readonly number[], from: number, to: number): number {
  const periods = new Map<number, number>();
  for (const at of times) {
    const period = Math.floor((at - from) / FLOOD_WINDOW_MS);
    periods.set(period, (periods.get(period) ?? 0) + 1);
  }
  const busy = [...periods.values()].filter((count) => count > BUSY_ABOVE).length;
  return percent(busy, Math.ceil((to - from) / FLOOD_WINDOW_MS));
}

function mostFrequent(journal: readonly AlarmTransition[]) {
  const announced = journal.filter(isAnnounced);
  return [...byPlace(announced).values()]
    .flatMap((group) => {
      const last = group.at(-1);
      if (last === undefined) return [];
      return [{ last, count: group.length, percent: percent(group.length, announced.length) }];
    })
    .sort((a, b) => b.count - a.count)
    .slice(0, MOST_FREQUENT);
}

function acknowledgement(journal: readonly AlarmTransition[]): AlarmReview['acknowledgement'] {
  const { answeredMs, unanswered } = answerTimes(journal);
  const seconds = (share: number): number | null => {
    const ms = percentile(answeredMs, share);
    return ms === null ? null : ms / 1000;
  };
  return {
    answered: answeredMs.length,
    unanswered,
    medianSeconds: seconds(0.5),
    ninetiethPercentileSeconds: seconds(0.9),
  };
}
