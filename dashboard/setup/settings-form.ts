import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { ShopSettings } from '../../hub/contract/shop.ts';
import { faultsOf } from '../parts/faults.ts';
import { readIn, writeIn } from '../schedules/entry.ts';
import { temperature } from '../words/format.ts';
import { limitWords } from '../words/setup.ts';
import { duration } from '../words/time.ts';
import { type AirTexts, airFields, airTexts } from './air-form.ts';
import { Reader, readSeconds, writeSeconds } from './read-texts.ts';
import type { Checked } from './use-text-form.ts';

/** The shop's settings as texts; what is chosen from a list keeps its type. */
export interface SettingsTexts
  extends Pick<
    ShopSettings,
    'name' | 'displayUnit' | 'pressureUnit' | 'massUnit' | 'watchCarbonMonoxideFor'
  > {
  /** As the form was filled in: what it does not show stays as it is. */
  readonly kept: ShopSettings;
  readonly air: AirTexts;
  readonly first: string;
  readonly second: string;
  readonly hot: string;
  readonly ahead: string;
  readonly soakStalled: string;
  readonly rampStalled: string;
  readonly diagonal: string;
  readonly distance: string;
}

export function settingsTexts(settings: ShopSettings): SettingsTexts {
  const { name, displayUnit, pressureUnit, massUnit, watchCarbonMonoxideFor } = settings;
  return {
    name,
    displayUnit,
    pressureUnit,
    massUnit,
    watchCarbonMonoxideFor,
    kept: settings,
    air: airTexts(settings),
    first: String(settings.carbonMonoxideFirstPpm),
    second: String(settings.carbonMonoxideSecondPpm),
    hot: writeIn(settings.hotAboveCelsius, displayUnit, 'point'),
    ahead: writeSeconds(settings.overshootAheadSeconds),
    soakStalled: writeSeconds(settings.soakStalledSeconds),
    rampStalled: writeSeconds(settings.rampStalledSeconds),
    diagonal: String(settings.screenDiagonalInches),
    distance: String(settings.viewingDistanceMetres),
  };
}

/** The same texts with temperatures in another unit. */
export function inDisplayUnit(texts: SettingsTexts, displayUnit: DisplayUnit): SettingsTexts {
  const hot = readIn(texts.hot, texts.displayUnit, 'point');
  return { ...texts, displayUnit, hot: hot.ok ? writeIn(hot.value, displayUnit, 'point') : texts.hot };
}

/** What the form means, checked by the contract. Faults by the contract's field names. */
export function checkSettings(texts: SettingsTexts): Checked<ShopSettings> {
  const reader = new Reader();
  const unit = texts.displayUnit;
  const seconds = (path: string, text: string) => reader.take(path, text, readSeconds(text)) ?? Number.NaN;
  const number = (path: string, text: string) => reader.number(path, text) ?? Number.NaN;
  const parsed = ShopSettings.safeParse({
    ...texts.kept,
    ...airFields(texts.air, reader),
    name: texts.name,
    displayUnit: unit,
    pressureUnit: texts.pressureUnit,
    massUnit: texts.massUnit,
    watchCarbonMonoxideFor: texts.watchCarbonMonoxideFor,
    carbonMonoxideFirstPpm: number('carbonMonoxideFirstPpm', texts.first),
    carbonMonoxideSecondPpm: number('carbonMonoxideSecondPpm', texts.second),
    hotAboveCelsius:
      reader.take('hotAboveCelsius', texts.hot, readIn(texts.hot, unit, 'point')) ?? Number.NaN,
    overshootAheadSeconds: seconds('overshootAheadSeconds', texts.ahead),
    soakStalledSeconds: seconds('soakStalledSeconds', texts.soakStalled),
    rampStalledSeconds: seconds('rampStalledSeconds', texts.rampStalled),
    screenDiagonalInches: number('screenDiagonalInches', texts.diagonal),
    viewingDistanceMetres: number('viewingDistanceMetres', texts.distance),
  });
  const judged = parsed.success
    ? {}
    : faultsOf(parsed.error.issues, (path, limit) => limitText(path, limit, unit));
  const faults = { ...judged, ...reader.faults };
  return { value: parsed.success && Object.keys(faults).length === 0 ? parsed.data : null, faults };
}

function limitText(path: string, limit: number, unit: DisplayUnit): string {
  if (path.endsWith('Celsius')) return temperature(limit, unit);
  if (path.endsWith('Seconds')) return duration(limit);
  if (path.endsWith('Ppm')) return `${limit} ppm`;
  if (path.endsWith('Inches')) return `${limit} ${limitWords.inches}`;
  if (path.endsWith('CubicMetres')) return `${limit} m³`;
  if (path.endsWith('Metres')) return `${limit} ${limitWords.metres}`;
  return String(limit);
}

/** What of the settings is no longer as it was: what another screen changed meanwhile is left alone. */
export function changedSettings(before: ShopSettings, after: ShopSettings): Partial<ShopSettings> {
  const changed = Object.entries(after).filter(
    ([key, value]) => JSON.stringify(Reflect.get(before, key)) !== JSON.stringify(value),
  );
  return Object.fromEntries(changed);
}
