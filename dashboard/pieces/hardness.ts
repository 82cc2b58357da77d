import { type HARDNESS_SCALES, ObservationDraft } from '../../hub/contract/observation.ts';
import { type Faults, faultsOf } from '../parts/faults.ts';
import { readNumber } from '../parts/number-entry.ts';
import { faultWords } from '../words/faults.ts';

/** Hardness readings as they are typed, and what they mean. Pure. */

export type HardnessScale = (typeof HARDNESS_SCALES)[number];

export interface ReadingTexts {
  readonly key: number;
  readonly value: string;
  readonly position: string;
}

export interface HardnessTexts {
  readonly scale: HardnessScale;
  readonly readings: readonly ReadingTexts[];
}

/** Three readings are what one takes of a place that counts; the empty ones are left out. */
export const EMPTY_HARDNESS: HardnessTexts = {
  scale: 'HRC',
  readings: [1, 2, 3].map((key) => ({ key, value: '', position: '' })),
};

type HardnessSeen = Extract<ObservationDraft['seen'], { kind: 'hardness' }>;

/** Faults by the place of the reading: "0.value". Readings without a number and a place are no readings. */
export function checkHardness({ scale, readings }: HardnessTexts): {
  readonly value: HardnessSeen | null;
  readonly faults: Faults;
} {
  const faults: Record<string, string> = {};
  const filled = readings.flatMap((reading, at) => {
    if (reading.value.trim() === '' && reading.position.trim() === '') return [];
    const entry = readNumber(reading.value);
    if (!entry.ok || entry.value === null) {
      faults[`${at}.value`] = entry.ok ? faultWords.missing : entry.message;
      return [];
    }
    return [{ at, value: entry.value, position: reading.position.trim() }];
  });
  if (filled.length === 0 && Object.keys(faults).length === 0) faults['0.value'] = faultWords.missing;
  const draft = { kind: 'hardness', scale, readings: filled.map(({ at: _, ...reading }) => reading) };
  const parsed = ObservationDraft.shape.seen.safeParse(draft);
  if (!parsed.success) Object.assign(faults, { ...placed(filled, parsed.error.issues), ...faults });
  const isSound = parsed.success && Object.keys(faults).length === 0;
  return { value: isSound ? (parsed.data as HardnessSeen) : null, faults };
}

/** The contract counts the readings that were sent; the form counts its rows. */
function placed(filled: readonly { readonly at: number }[], issues: Parameters<typeof faultsOf>[0]): Faults {
  const entries = Object.entries(faultsOf(issues)).flatMap(([path, fault]) => {
    const [, place, field = 'value'] = path.split('.');
    const row = filled[Number(place)];
    return row === undefined ? [] : [[`${row.at}.${field}`, fault]];
  });
  return Object.fromEntries(entries);
}
