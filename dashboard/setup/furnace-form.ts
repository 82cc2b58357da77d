import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type Furnace, FurnaceDraft } from '../../hub/contract/shop.ts';
import { faultsOf } from '../parts/faults.ts';
import { readIn, writeIn } from '../schedules/entry.ts';
import { temperature } from '../words/format.ts';
import { Reader } from './read-texts.ts';
import type { Checked } from './use-text-form.ts';

export interface FurnaceTexts {
  readonly name: string;
  readonly kind: Furnace['kind'];
  readonly rated: string;
  readonly note: string;
}

export type FurnaceValue = ReturnType<typeof FurnaceDraft.parse>;

export function furnaceTexts(furnace: Furnace | null, unit: DisplayUnit): FurnaceTexts {
  if (furnace === null) return { name: '', kind: 'gas-forge', rated: '', note: '' };
  const { name, kind, ratedCelsius, note } = furnace;
  return { name, kind, rated: writeIn(ratedCelsius, unit, 'point'), note };
}

/** What the form means; the rating is typed in `unit`. Faults by the contract's field names. */
export function checkFurnace(texts: FurnaceTexts, unit: DisplayUnit): Checked<FurnaceValue> {
  const reader = new Reader();
  const ratedCelsius = reader.take('ratedCelsius', texts.rated, readIn(texts.rated, unit, 'point'));
  const { name, kind, note } = texts;
  const parsed = FurnaceDraft.safeParse({ name, kind, note, ratedCelsius });
  if (parsed.success) return { value: parsed.data, faults: {} };
  const judged = faultsOf(parsed.error.issues, (_path, limit) => temperature(limit, unit));
  return { value: null, faults: { ...judged, ...reader.faults } };
}
