import type { AirChange, AirTags } from '../contract/air.ts';

/** What the archive keeps about the air beside its readings. */
export interface AirStore {
  /** Everything that was said about how the shop stands, oldest first. */
  airTags(): readonly AirTags[];
  /** From this instant on; a second word at one instant takes the place of the first. */
  setAirTags(said: AirTags): void;
  /** Keeps a measurement; the same fall (channel and begin) judged again takes its place. */
  saveAirChange(change: AirChange, at: number): void;
  /** The newest first. */
  airChanges(limit: number): readonly AirChange[];
}
