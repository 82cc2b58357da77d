/** One day (UTC) of a channel, counted against a limit. It can be worked out again from the readings at any time. */
export interface HotDay {
  /** Days since 1970-01-01 UTC. */
  readonly day: number;
  readonly limitCelsius: number;
  readonly msAbove: number;
  /** For so long nobody measured. */
  readonly msUnknown: number;
  /** The highest good value; null when there was none. */
  readonly peakCelsius: number | null;
}

export interface HotDayStore {
  /** The days that were counted, in order. A reading that comes late takes the days that it changes away. */
  hotDays(channelId: string): readonly HotDay[];
  /** Keeps or replaces a day that is over. */
  saveHotDay(channelId: string, day: HotDay): void;
  /** The instant of the oldest reading, epoch ms; null without one. */
  firstReadingAt(channelId: string): number | null;
}
