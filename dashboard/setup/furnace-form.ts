import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type Furnace, FurnaceDraft } from '../../hub/contract/shop.ts';
import { faultsOf } from '../parts/faults.ts';
import { readIn, writeIn } from '../schedules/entry.ts';
import { temperature, unitNamed } from '../words/format.ts';
import { type BurnerTexts, burnerTexts, readBurner } from './burner-form.ts';
import { Reader } from './read-texts.ts';
import type { Checked } from './use-text-form.ts';

export interface FurnaceTexts {
  readonly name: string;
  readonly kind: Furnace['kind'];
  readonly rated: string;
  readonly note: string;
  readonly burner: BurnerTexts;
}

export type FurnaceValue = ReturnType<typeof FurnaceDraft.parse>;

/** @param pressure code of the unit in which the shop thinks of pressure */
export function furnaceTexts(furnace: Furnace | null, unit: DisplayUnit, pressure = 'bar'): FurnaceTexts {
  const burner = burnerTexts(furnace?.gas ?? null, unitNamed(pressure));
  if (furnace === null) return { name: '', kind: 'gas-forge', rated: '', note: '', burner };
  const { name, kind, ratedCelsius, note } = furnace;
  return { name, kind, rated: writeIn(ratedCelsius, unit, 'point'), note, burner };
}

/** What the form means; the rating is typed in `unit`. Faults by the contract's field names. */
export function checkFurnace(
  texts: FurnaceTexts,
  unit: DisplayUnit,
  pressure = 'bar',
): Checked<FurnaceValue> {
  const reader = new Reader();
  const ratedCelsius = reader.take('ratedCelsius', texts.rated, readIn(texts.rated, unit, 'point'));
  const { name, kind, note } = texts;
  const gas = kind === 'gas-forge' ? readBurner(texts.burner, unitNamed(pressure), reader) : null;
  const parsed = FurnaceDraft.safeParse({ name, kind, note, ratedCelsius, gas });
  if (parsed.success && Object.keys(reader.faults).length === 0) return { value: parsed.data, faults: {} };
  // Only the rating is a temperature; the other limits are plain numbers.
  const say = (path: string, limit: number) =>
    path === 'ratedCelsius' ? temperature(limit, unit) : String(limit);
  const judged = parsed.success ? {} : faultsOf(parsed.error.issues, say);
  return { value: null, faults: { ...judged, ...reader.faults } };
}
