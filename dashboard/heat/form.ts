import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { Entry } from '../parts/number-entry.ts';
import { convertText, readHours, readIn } from '../schedules/entry.ts';
import { Reader } from '../setup/read-texts.ts';
import { convertLength, type LengthUnit, readLength } from './lengths.ts';

/** The page's questions as texts, and what they mean in base units. Limits are the hub's. Pure. */

export type HeatShape = 'bar' | 'plate' | 'sphere';
export type Packing = 'ash' | 'vermiculite';

export interface HeatTexts {
  readonly unit: DisplayUnit;
  readonly length: LengthUnit;
  readonly shape: HeatShape;
  readonly thickness: string;
  readonly width: string;
  /** Id of a furnace of the shop, or `kind:…` for any of a kind. */
  readonly furnace: string;
  readonly lit: 'at-heat' | 'cold';
  readonly rate: string;
  readonly target: string;
  readonly tolerance: string;
  /** Empty: the furnace stands at the target. */
  readonly chamber: string;
  readonly start: string;
  readonly hold: string;
  /** Empty: it cools from the target. */
  readonly coolFrom: string;
  readonly ruleFrom: string;
  readonly ruleTo: string;
  readonly ruleMost: string;
  readonly canRadius: string;
  readonly companion: string;
}

/** Which fields hold which kind of number; a change of unit rewrites them by it. */
const POINTS = ['target', 'chamber', 'start', 'coolFrom', 'ruleFrom', 'ruleTo'] as const;
const DIFFERENCES = ['tolerance', 'rate', 'ruleMost'] as const;
const LENGTHS = ['thickness', 'width', 'canRadius'] as const;

/** A hardening heat, and the rule of a 10xx anneal: 28 °C an hour, written round in the unit of the shop. */
export function startTexts(unit: DisplayUnit, furnace: string): HeatTexts {
  const celsius = unit === 'Cel';
  const length: LengthUnit = celsius ? 'mm' : 'in';
  const own = celsius
    ? {
        target: '850',
        tolerance: '10',
        start: '20',
        rate: '400',
        ruleFrom: '830',
        ruleTo: '650',
        ruleMost: '28',
      }
    : {
        target: '1560',
        tolerance: '20',
        start: '70',
        rate: '700',
        ruleFrom: '1525',
        ruleTo: '1200',
        ruleMost: '50',
      };
  const sizes = celsius
    ? { thickness: '25', width: '40', canRadius: '150' }
    : { thickness: '1', width: '1 1/2', canRadius: '6' };
  return {
    ...{ unit, length, shape: 'bar', furnace, lit: 'at-heat', ...own, ...sizes },
    ...{ chamber: '', hold: '10 min', coolFrom: '', companion: '5' },
  };
}

/** The same question written in another unit of temperature. */
export function inTemperature(texts: HeatTexts, unit: DisplayUnit): HeatTexts {
  const changed: Record<string, string> = {};
  for (const field of POINTS) changed[field] = convertText(texts[field], texts.unit, unit, 'point');
  for (const field of DIFFERENCES) changed[field] = convertText(texts[field], texts.unit, unit, 'difference');
  return { ...texts, ...changed, unit };
}

/** The same question written in another unit of length. */
export function inLengthUnit(texts: HeatTexts, length: LengthUnit): HeatTexts {
  const changed: Record<string, string> = {};
  for (const field of LENGTHS) changed[field] = convertLength(texts[field], texts.length, length);
  return { ...texts, ...changed, length };
}

/** What is to be heated, how, and to where. */
export interface HeatPlan {
  readonly shape: HeatShape;
  readonly thicknessMm: number;
  readonly startCelsius: number;
  readonly targetCelsius: number;
  readonly toleranceCelsius: number;
  /** Where the furnace stands, or where it ends when it is lit cold. */
  readonly chamberCelsius: number;
  /** °C/h of a furnace that is lit with the piece in it; null: it stands at its heat. */
  readonly climbCelsiusPerHour: number | null;
  readonly holdSeconds: number;
}

/** How the piece cools afterwards. */
export interface CoolPlan {
  readonly shape: HeatShape;
  readonly thicknessMm: number;
  readonly widthMm: number;
  readonly fromCelsius: number;
  readonly rule: {
    readonly fromCelsius: number;
    readonly toCelsius: number;
    readonly mostCelsiusPerHour: number;
  };
  readonly canRadiusMm: number;
  readonly companionKilogramsPerMetre: number;
}

export type FieldName = keyof HeatTexts;
export type Faults = Readonly<Partial<Record<FieldName, string>>>;

/** The plan of the heating, or null with the fault of each field that cannot be read. */
export function readHeat(texts: HeatTexts): { readonly plan: HeatPlan | null; readonly faults: Faults } {
  const read = readerOf(texts);
  const targetCelsius = read.celsius('target');
  const plan = {
    shape: texts.shape,
    thicknessMm: read.millimetres('thickness'),
    startCelsius: read.celsius('start'),
    targetCelsius,
    toleranceCelsius: read.kelvin('tolerance'),
    chamberCelsius: texts.chamber.trim() === '' ? targetCelsius : read.celsius('chamber'),
    climbCelsiusPerHour: texts.lit === 'cold' ? read.kelvin('rate') : null,
    holdSeconds: read.need('hold', readHours(texts.hold)),
  };
  if (texts.lit === 'cold') read.positive('rate', plan.climbCelsiusPerHour ?? 0);
  return read.done(plan);
}

/** The plan of the cooling, or null with the fault of each field that cannot be read. */
export function readCool(texts: HeatTexts): { readonly plan: CoolPlan | null; readonly faults: Faults } {
  const read = readerOf(texts);
  const fromCelsius = read.celsius(texts.coolFrom.trim() === '' ? 'target' : 'coolFrom');
  const thicknessMm = read.millimetres('thickness');
  return read.done({
    shape: texts.shape,
    thicknessMm,
    widthMm: texts.shape === 'plate' ? read.millimetres('width') : thicknessMm,
    fromCelsius,
    rule: {
      fromCelsius: read.celsius('ruleFrom'),
      toCelsius: read.celsius('ruleTo'),
      mostCelsiusPerHour: read.kelvin('ruleMost'),
    },
    canRadiusMm: read.millimetres('canRadius'),
    companionKilogramsPerMetre: read.plain('companion'),
  });
}

function readerOf(texts: HeatTexts) {
  const reader = new Reader();
  const need = (field: FieldName, entry: Entry<number | null>): number => {
    const empty = entry.ok && entry.value === null;
    return reader.take(field, texts[field], empty ? MISSING : entry) ?? Number.NaN;
  };
  return {
    need,
    celsius: (field: (typeof POINTS)[number]) => need(field, readIn(texts[field], texts.unit, 'point')),
    kelvin: (field: (typeof DIFFERENCES)[number]) =>
      need(field, readIn(texts[field], texts.unit, 'difference')),
    millimetres: (field: (typeof LENGTHS)[number]) => need(field, readLength(texts[field], texts.length)),
    plain: (field: 'companion') => reader.number(field, texts[field]) ?? 0,
    positive: (field: FieldName, value: number) => {
      if (value <= 0) reader.take(field, String(value), { ok: false, message: NOT_POSITIVE });
    },
    done: <T>(plan: T) => {
      const faults = reader.faults as Faults;
      return Object.keys(faults).length === 0 ? { plan, faults } : { plan: null, faults };
    },
  };
}

const MISSING: Entry<number> = { ok: false, message: '' };
const NOT_POSITIVE = 'must be more than 0';
