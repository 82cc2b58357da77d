import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import type { Params } from '../contract/alarm.ts';
import { type ConditionState, stepCondition } from '../judging/condition.ts';
import { flameLook } from './flame.ts';
import { FLAME_PASCALS, flowOf } from './flow.ts';
import { lastsHours } from './lasts.ts';
import type { FurnaceAt, FurnaceGasState, GasCell, GasConfig, GasSample, WatchKind } from './types.ts';
import { WATCH_KINDS } from './types.ts';
import { median } from './window.ts';

/** What is told of the gas beside the troubles of the supply: flame, gas on, band, closing time, and the end of it. */

/** What a kind sees now: `active` null where nobody can tell. */
interface Seen {
  readonly active: boolean | null;
  readonly params: Params;
}

/** Slack at the ends of the band, and in it once told, as shares. Common practice, no source. */
const BAND_SLACK = 0.05;
/** Gas on and nothing hot: the chamber has not risen by this within three minutes. */
const LIT_RISE_KELVIN = 8;
const LIT_MS = 180_000;

export function stepWatch(
  config: GasConfig,
  about: FurnaceAt,
  state: FurnaceGasState,
  cell: GasCell,
): FurnaceGasState {
  const looks: Readonly<Record<WatchKind, Seen>> = {
    'gas-flame-out': flameOut(config, about, state),
    'gas-on-cold': onCold(config, about, state),
    'gas-will-not-last': willNotLast(config, about, state, cell),
    'gas-off-band': offBand(about, state),
    'gas-left-on': leftOn(state, cell),
  };
  const watch = { ...state.watch };
  const params = { ...state.params };
  for (const kind of WATCH_KINDS) {
    const { active, params: said } = looks[kind];
    watch[kind] = stepCondition(state.watch[kind], { active, at: cell.to }, ALARM_DEFINITIONS[kind]);
    params[kind] = said;
  }
  const flameOutAt = watch['gas-flame-out'].raised ? cell.to : state.flameOutAt;
  return { ...state, watch, params, flameOutAt };
}

function raised(state: FurnaceGasState, kind: WatchKind): ConditionState['raised'] {
  return state.watch[kind].raised;
}

/** Over this long, and against the flow by the jet: less than this share of it is none. Derived here. */
const WEIGHED_MS = 150_000;
const NONE_SHARE = 0.3;
/** What must have flowed by the jet in that time for a scale to be asked, kg: half again its step. */
const LEAST_KILOGRAMS = 0.015;

/** By the scale against the jet: false where nothing flows; null where the scale cannot tell. */
function flows({ gas }: FurnaceAt['furnace'], samples: readonly GasSample[]): boolean | null {
  const now = samples.at(-1)?.atMs ?? 0;
  const recent = samples.filter(({ atMs }) => atMs >= now - WEIGHED_MS);
  const ends = [recent.slice(0, 4), recent.slice(-4)].map((part) =>
    median(part.flatMap(({ contentsKilograms: kilograms }) => kilograms ?? [])),
  );
  const [was, is] = [ends[0] ?? null, ends[1] ?? null];
  const seconds = (WEIGHED_MS - 40_000) / 1000;
  const outlets = recent.map(({ outletPascals }) => outletPascals ?? 0);
  const expected = (flowOf(gas, Math.min(...outlets)) * seconds) / 3600;
  if (was === null || is === null || recent.length < 12 || expected < LEAST_KILOGRAMS) return null;
  return was - is > expected * NONE_SHARE;
}

/** No firing wants heat, one did a moment ago, and there is a scale. */
function justShut(samples: readonly GasSample[]): boolean {
  const now = samples.at(-1);
  if (now === undefined || now.wanted === true || (now.contentsKilograms ?? null) === null) return false;
  return samples.some(({ atMs, wanted }) => wanted === true && atMs > now.atMs - WEIGHED_MS - 20_000);
}

function flameOut(config: GasConfig, { furnace }: FurnaceAt, state: FurnaceGasState): Seen {
  const look = flameLook(furnace.gas, state.samples, {
    was: raised(state, 'gas-flame-out'),
    hotAbove: config.hotAboveCelsius,
    flows: flows(furnace, state.samples),
  });
  // Just shut by hand or just gone out looks alike to gauge and probe: the scale is given its time to say which.
  const asked = look.out === true && !raised(state, 'gas-flame-out') && justShut(state.samples);
  const { fallKelvin, chamberCelsius, outletPascals } = look;
  return {
    active: asked ? null : look.out,
    params: { fallKelvin, fallSeconds: 120, chamberCelsius, outletPascals },
  };
}

/** Pressure for three minutes, and the chamber neither hot nor getting so. A scale that sees no flow speaks for a shut burner. */
function onCold(config: GasConfig, { furnace }: FurnaceAt, state: FurnaceGasState): Seen {
  const now = state.samples.at(-1);
  const [chamber, outlet] = [now?.chamberCelsius ?? null, now?.outletPascals ?? null];
  const params = { chamberCelsius: chamber, outletPascals: outlet };
  if (now === undefined || outlet === null) return { active: null, params };
  if (outlet < FLAME_PASCALS || flows(furnace, state.samples) === false) return { active: false, params };
  if (chamber === null) return { active: null, params };
  const recent = state.samples.filter(({ atMs }) => atMs >= now.atMs - LIT_MS);
  const [first] = recent;
  const whole = first !== undefined && now.atMs - first.atMs >= LIT_MS - 10_000;
  const pressed = recent.every(({ outletPascals }) => (outletPascals ?? 0) >= FLAME_PASCALS);
  const rise = chamber - (first?.chamberCelsius ?? chamber);
  const cold = chamber < config.hotAboveCelsius && rise < LIT_RISE_KELVIN;
  return { active: raised(state, 'gas-on-cold') ? cold : cold && whole && pressed, params };
}

function willNotLast(config: GasConfig, { held }: FurnaceAt, state: FurnaceGasState, cell: GasCell): Seen {
  const { firing } = state;
  const { contents, drawKilogramsPerHour: draw } = held;
  if (firing === null || !firing.wanted) return { active: false, params: {} };
  if (contents === null || draw === null || firing.heatEndsAt === null) return { active: null, params: {} };
  const { cylinderKilograms, cylinders } = config;
  const question = { contents, kilogramsPerHour: draw, cylinderKilograms, cylinders, airCelsius: null };
  const report = lastsHours(question);
  const needed = Math.max(0, firing.heatEndsAt - cell.to) / 3.6e6;
  const params = {
    neededSeconds: needed * 3600,
    lowSeconds: (report?.low ?? 0) * 3600,
    highSeconds: (report?.high ?? 0) * 3600,
    leftKilograms: contents.value,
  };
  if (report === null) return { active: null, params };
  // Once told it stands until there is clearly enough, or every turn of the regulator would tell it anew.
  const enough = raised(state, 'gas-will-not-last') ? 1.15 : 1;
  return { active: report.value < needed * enough, params };
}

function offBand({ furnace }: FurnaceAt, state: FurnaceGasState): Seen {
  const outlet = state.samples.at(-1)?.outletPascals ?? null;
  const { lowPascals, highPascals } = furnace.gas;
  const params = { outletPascals: outlet, lowPascals, highPascals };
  if (state.firing?.wanted !== true) return { active: false, params };
  if (outlet === null) return { active: null, params };
  const slack = raised(state, 'gas-off-band') ? 0 : BAND_SLACK;
  const high = highPascals !== null && outlet > highPascals * (1 + slack);
  // No pressure at all is gas that is gone or closed, which is another matter than a burner that huffs.
  const low = lowPascals !== null && outlet >= FLAME_PASCALS && outlet < lowPascals * (1 - slack);
  return { active: high || low, params };
}

function leftOn(state: FurnaceGasState, cell: GasCell): Seen {
  const outlet = state.samples.at(-1)?.outletPascals ?? null;
  const params = { outletPascals: outlet };
  if (cell.afterClosing !== true || state.firing !== null) return { active: false, params };
  return { active: outlet === null ? null : outlet >= FLAME_PASCALS, params };
}
