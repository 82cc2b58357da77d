import type { SoundName } from '../../hub/contract/alarm-signal.ts';

/**
 * What the wall sounds like, as data. Our own patterns, built on published bounds: energy between 500 and
 * 2500 Hz (ISO 7731, secondary), at most three pulse rates between 1 and 8 a second, a factor of two apart
 * (NUREG-0700 rev 2, 1.3.11-17), rise time 10 to 20 % of a pulse (IEC 60601-1-8, secondary).
 */
export type SoundKind = SoundName;

export interface Pulse {
  /** From the start of the pattern, seconds. */
  readonly atSeconds: number;
  readonly seconds: number;
  /** Fundamental, Hz. */
  readonly hertz: number;
}

export interface SoundPattern {
  readonly pulses: readonly Pulse[];
  readonly riseSeconds: number;
  /** The pattern begins again after this, seconds. */
  readonly everySeconds: number;
  /** Harmonics that sound with each fundamental, with their share of its loudness. */
  readonly harmonics: readonly { readonly multiple: number; readonly share: number }[];
}

const HARMONICS = [
  { multiple: 1, share: 1 },
  { multiple: 2, share: 0.6 },
  { multiple: 3, share: 0.35 },
] as const;

/** Evenly spaced pulses, one a pitch. */
function pulses(hertz: readonly number[], spacingSeconds: number, seconds: number, fromSeconds = 0): Pulse[] {
  return hertz.map((pitch, index) => ({
    atSeconds: fromSeconds + index * spacingSeconds,
    seconds,
    hertz: pitch,
  }));
}

/** Rising fours, twice: get up. 3.6 pulses a second. */
const DANGER: SoundPattern = {
  pulses: [...pulses([554, 659, 740, 831], 0.28, 0.18), ...pulses([554, 659, 740, 831], 0.28, 0.18, 1.5)],
  riseSeconds: 0.025,
  everySeconds: 3.6,
  harmonics: HARMONICS,
};

/** Two long notes falling: look here. 1.6 pulses a second. */
const WARNING: SoundPattern = {
  pulses: pulses([740, 554], 0.62, 0.4),
  riseSeconds: 0.06,
  everySeconds: 7,
  harmonics: HARMONICS,
};

/** A trill on one note: the screen has lost its eyes. 8 pulses a second. */
const BLIND: SoundPattern = {
  pulses: [
    ...pulses(
      Array.from({ length: 6 }, () => 659),
      0.125,
      0.075,
    ),
  ],
  riseSeconds: 0.012,
  everySeconds: 4.4,
  harmonics: HARMONICS,
};

export const SOUND_PATTERNS: Readonly<Record<SoundKind, SoundPattern>> = {
  danger: DANGER,
  warning: WARNING,
  blind: BLIND,
};
