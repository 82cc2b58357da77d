import type { MagnetExpected, MagnetSeen } from '../contract/observation.ts';
import type { Composition } from '../physics/steel/composition.ts';
import { magnetAnswer } from '../physics/steel/magnet.ts';

/** The tap "the magnet let go now", beside what was measured and what was to be expected. */

export interface MagnetMeasured {
  readonly channelId: string;
  readonly at: number;
  readonly celsius: number;
}

/** Where this steel should let go of the magnet on heating; null: not known for it. */
export function magnetExpected(composition: Composition): MagnetExpected | null {
  const { lost, cause } = magnetAnswer(composition);
  if (lost.value === null || cause === null) return null;
  const { value: celsius, low: lowCelsius, high: highCelsius, formula, standing, source } = lost;
  return { celsius, lowCelsius, highCelsius, cause, formula, standing, source };
}

/** What is kept of the tap. `measured` is null when no reading of that furnace was fresh. */
export function magnetSeen(
  furnaceId: string,
  measured: MagnetMeasured | null,
  expected: MagnetExpected | null,
): MagnetSeen {
  return {
    kind: 'magnet',
    furnaceId,
    channelId: measured?.channelId ?? null,
    readingAt: measured?.at ?? null,
    measuredCelsius: measured?.celsius ?? null,
    expected,
    differenceCelsius: measured && expected ? measured.celsius - expected.celsius : null,
    agrees: measured && expected ? placeOf(measured.celsius, expected) : 'not-known',
  };
}

function placeOf(celsius: number, { lowCelsius, highCelsius }: MagnetExpected): MagnetSeen['agrees'] {
  if (celsius < lowCelsius) return 'below';
  return celsius > highCelsius ? 'above' : 'inside';
}
