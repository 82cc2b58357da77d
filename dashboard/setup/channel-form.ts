import { QUANTITY_FACTS } from '../../hub/contract/quantity.ts';
import {
  type Channel,
  ChannelDraft,
  ChannelPatch,
  type ChannelRole,
  type ShopSettings,
} from '../../hub/contract/shop.ts';
import { fromBase, type Quantity, toBase, UNITS, type Unit } from '../../hub/contract/units.ts';
import { type Faults, faultsOf, type Issue, missing } from '../parts/faults.ts';
import { amount, shownUnit } from '../words/format.ts';
import { channelWords } from '../words/setup.ts';
import { duration } from '../words/time.ts';
import { NO_PROBE, type ProbeTexts, probeLimit, probeOf, probeTexts } from './probe-form.ts';
import { Reader, readSeconds, writeSeconds } from './read-texts.ts';
import {
  datesOf,
  dateTexts,
  hasDates,
  NO_DATES,
  type SensorDates,
  type SensorDateTexts,
} from './sensor-dates.ts';
import type { Checked } from './use-text-form.ts';

export interface ChannelTexts {
  readonly node: string;
  readonly name: string;
  readonly label: string;
  readonly quantity: Quantity;
  /** Unit code; empty: the base unit. */
  readonly unit: string;
  /** Empty: chosen from the quantity. */
  readonly role: ChannelRole | '';
  /** Empty: the shop. */
  readonly furnaceId: string;
  readonly low: string;
  readonly high: string;
  readonly stale: string;
  /** Only of a temperature channel. */
  readonly probe: ProbeTexts;
  /** Only of a gas sensor. */
  readonly dates: SensorDateTexts;
  /** As they were, to the millisecond. */
  readonly datesBefore: SensorDates | null;
}

export type ChannelValue = ReturnType<typeof ChannelDraft.parse>;
export type ChannelChangeValue = ReturnType<typeof ChannelPatch.parse>;

export function channelTexts(channel: Channel | null, settings: ShopSettings): ChannelTexts {
  if (channel === null) {
    const nothing = {
      unit: '',
      furnaceId: '',
      low: '',
      high: '',
      stale: '',
      probe: NO_PROBE,
      dates: NO_DATES,
      datesBefore: null,
    };
    return { node: '', name: '', label: '', quantity: 'temperature', role: '', ...nothing };
  }
  const shown = shownUnit(channel.quantity, settings);
  const write = (value: number | null) => (value === null ? '' : rounded(fromBase(value, shown)));
  return {
    node: channel.node,
    name: channel.name,
    label: channel.label,
    quantity: channel.quantity,
    unit: channel.unit ?? '',
    role: channel.role,
    furnaceId: channel.furnaceId ?? '',
    low: write(channel.possibleLow),
    high: write(channel.possibleHigh),
    stale: writeSeconds(channel.staleAfterSeconds),
    probe: probeTexts(channel.probe, settings.displayUnit),
    dates: dateTexts(channel),
    datesBefore: channel,
  };
}

/** A new channel. The possible range is typed in the unit that the shop shows for the quantity. */
export function checkNewChannel(texts: ChannelTexts, settings: ShopSettings): Checked<ChannelValue> {
  const reader = new Reader();
  const parsed = ChannelDraft.safeParse({
    node: texts.node.trim(),
    name: texts.name.trim(),
    quantity: texts.quantity,
    role: texts.role === '' ? null : texts.role,
    ...shared(texts, reader, settings),
  });
  const faults = {
    ...(parsed.success ? {} : issuesOf(parsed.error.issues, settings)),
    ...reader.faults,
    ...missing({ node: texts.node, name: texts.name }),
  };
  return sound(parsed.success ? parsed.data : null, faults);
}

/** What is changed of a channel that is there: its node, name and quantity stay. */
export function checkChannelChange(texts: ChannelTexts, settings: ShopSettings): Checked<ChannelChangeValue> {
  const reader = new Reader();
  const { staleAfterSeconds, ...rest } = shared(texts, reader, settings);
  const parsed = ChannelPatch.safeParse({
    ...rest,
    ...(staleAfterSeconds === null ? {} : { staleAfterSeconds }),
    ...(texts.role === '' ? {} : { role: texts.role }),
  });
  const faults = { ...(parsed.success ? {} : issuesOf(parsed.error.issues, settings)), ...reader.faults };
  return sound(parsed.success ? parsed.data : null, faults);
}

/** The units that a payload of this quantity may be in. */
export function unitsOf(quantity: Quantity): readonly Unit[] {
  return UNITS.filter((unit) => unit.quantity === quantity);
}

/** The widest range that any sensor of a quantity can mean, in words. */
export function widestRange(quantity: Quantity, settings: ShopSettings): readonly [string, string] {
  const { low, high } = QUANTITY_FACTS[quantity].possible;
  const say = (value: number) => {
    const { number, unit } = amount(value, quantity, settings);
    return `${number} ${unit}`;
  };
  return [say(low), say(high)];
}

function shared(texts: ChannelTexts, reader: Reader, settings: ShopSettings) {
  const shown = shownUnit(texts.quantity, settings);
  const isTemperature = texts.quantity === 'temperature';
  const bound = (path: string, text: string) => {
    const value = reader.number(path, text);
    return value === undefined ? null : toBase(value, shown);
  };
  const possibleLow = bound('possibleLow', texts.low);
  const possibleHigh = bound('possibleHigh', texts.high);
  if (possibleLow !== null && possibleHigh !== null && possibleLow >= possibleHigh) {
    reader.faults.possibleHigh = channelWords.crossed;
  }
  const stale = reader.take('staleAfterSeconds', texts.stale, readSeconds(texts.stale));
  return {
    label: texts.label.trim(),
    unit: texts.unit === '' ? null : texts.unit,
    furnaceId: texts.furnaceId === '' ? null : texts.furnaceId,
    possibleLow,
    possibleHigh,
    staleAfterSeconds: stale ?? null,
    ...(isTemperature ? { probe: probeOf(texts.probe, reader, settings.displayUnit) } : {}),
    ...(hasDates(texts.quantity) ? datesOf(texts.dates, reader, texts.datesBefore) : {}),
  };
}

function issuesOf(issues: readonly Issue[], { displayUnit }: ShopSettings): Faults {
  return faultsOf(issues, (path, limit) =>
    path.startsWith('probe.') ? probeLimit(path, limit, displayUnit) : duration(limit),
  );
}

function sound<V>(value: V | null, faults: Faults): Checked<V> {
  return { value: Object.keys(faults).length === 0 ? value : null, faults };
}

function rounded(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}
