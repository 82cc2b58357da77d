import type { KnownMean, LimitReading } from '../../hub/contract/compute/exposure.ts';

/** Exposure as bars against limits. Pure. The limit always stands at the same place, so that rows compare. */

/** Where the limit stands along every bar; what lies past the end is cut off and said. */
export const LIMIT_SHARE = 0.6;

export interface ExposureBar {
  /** Share of the bar that the measured time alone fills, 0 to 1. */
  readonly measured: number;
  /** Where what stands in for gaps ends, 0 to 1; never less than `measured`. */
  readonly held: number;
  /** Drawn hatched to the end: nobody knows. Never an empty bar. */
  readonly unknown: boolean;
  /** True when the value lies past the end of the bar. */
  readonly cut: boolean;
}

/** The mean that a limit is compared with; null for limits of the instant. */
export function meanOf(
  kind: LimitReading['kind'],
  exposure: { readonly twa: KnownMean; readonly stel: KnownMean },
): KnownMean | null {
  switch (kind) {
    case 'twa':
      return exposure.twa;
    case 'stel':
      return exposure.stel;
    case 'excursion':
    case 'ceiling':
    case 'idlh':
      return null;
    default:
      return kind satisfies never;
  }
}

export function barOf({ ppm, limit, standing }: LimitReading, mean: KnownMean | null): ExposureBar {
  const place = (value: number) => Math.min(1, Math.max(0, (value / limit.ppm) * LIMIT_SHARE));
  const atLeast = mean?.atLeastPpm ?? ppm ?? 0;
  const whole = Math.max(atLeast, ppm ?? 0);
  return {
    measured: place(atLeast),
    held: place(whole),
    unknown: ppm === null || standing === 'unknown',
    cut: (whole / limit.ppm) * LIMIT_SHARE > 1,
  };
}

/** A share as whole percent that never reaches 100 or 0 before the share does: 0.999 is "99". */
export function percentOf(share: number): string {
  if (share >= 1) return '100';
  if (share > 0 && share < 0.01) return 'less than 1';
  return String(Math.floor(share * 100 + 1e-9));
}

/** A level in ppm as people read it: one decimal below ten. */
export function ppmText(ppm: number): string {
  const shown = Math.max(0, ppm);
  return shown < 9.95 && shown % 1 !== 0 ? shown.toFixed(1) : shown.toFixed(0);
}
