import type { AlarmKind, Params } from '../alarm.ts';
import type { DisplayUnit } from '../schedule.ts';
import { difference, duration, numberOf, temperature, textOf } from './format.ts';

/** Titles and messages of the alarms about gas: what was measured. Pressures in bar and psi, masses in kg and lb. */

export type GasAlarmKind = Extract<AlarmKind, `gas-${string}`>;
type Message = (params: Params, unit: DisplayUnit) => string;

export const GAS_TITLES: Readonly<Record<GasAlarmKind, (params: Params) => string>> = {
  'gas-flame-out': () => 'Flame out suspected: gas is on',
  'gas-escaping': () => 'Gas is lost that no burner takes',
  'gas-on-cold': () => 'Gas is on and nothing is hot',
  'gas-empty': () => 'Gas cylinder empty',
  'gas-valve-shut': () => 'Gas cut off at once',
  'gas-creep': () => 'Gas pressure climbs by itself',
  'gas-chill': () => 'Gas cylinder too cold',
  'gas-restricted': (params) =>
    textOf(params, 'where', '') === 'jet' ? 'Less gas through the jet' : 'Less gas comes through',
  'gas-droop': () => 'Regulator cannot hold the flow',
  'gas-lost': () => 'Gas pressure gone',
  'gas-will-not-last': () => 'The gas will not last this firing',
  'gas-off-band': (params) => `Gas pressure too ${isLow(params) ? 'low' : 'high'} for this furnace`,
  'gas-left-on': () => 'Gas pressure left on',
};

export const GAS_MESSAGES: Readonly<Record<GasAlarmKind, Message>> = {
  'gas-flame-out': (params, unit) =>
    `${furnace(params)}: ${temperature(numberOf(params, 'chamberCelsius'), unit)}, ${difference(numberOf(params, 'fallKelvin'), unit)} down in 2 min with ${pressure(params, 'outletPascals')} on: faster than with a flame`,
  'gas-escaping': (params) =>
    `${furnace(params)}: the scale loses ${flow(params)} with ${pressure(params, 'outletPascals')} before the burner`,
  'gas-on-cold': (params, unit) =>
    `${furnace(params)}: ${pressure(params, 'outletPascals')} for 3 min, the chamber at ${temperature(numberOf(params, 'chamberCelsius'), unit)} and not rising`,
  'gas-empty': (params) => `${fell(params)}${left(params)}: no liquid left`,
  'gas-valve-shut': (params) =>
    `${fell(params)} within seconds${left(params)}: shut valve, or a tripped excess-flow device`,
  'gas-creep': (params) =>
    `${furnace(params)}: ${pressure(params, 'outletPascals')} and rising with nothing flowing: a leaking regulator seat`,
  'gas-chill': (params) => `${fell(params)} over minutes${left(params)}: the liquid boils too slowly`,
  'gas-restricted': (params) =>
    textOf(params, 'where', '') === 'jet'
      ? `${furnace(params)}: the pressure stands at ${pressure(params, 'outletPascals')}, yet less flows (${flow(params)}): dirt in the jet?`
      : `${fell(params)} at good cylinder pressure, and less flows: ice, a kinked hose, a half shut valve`,
  'gas-droop': (params) => `${fell(params)} while more flows (${flow(params)})`,
  'gas-lost': (params) => `${fell(params)}. The cause cannot be told from what is measured`,
  'gas-will-not-last': (params) =>
    `${furnace(params)}: ${time(params, 'neededSeconds')} of heat to go, gas for ${time(params, 'lowSeconds')} to ${time(params, 'highSeconds')} (${mass(params, 'leftKilograms')} left)`,
  'gas-off-band': (params) =>
    `${furnace(params)}: ${pressure(params, 'outletPascals')}, band ${pressure(params, 'lowPascals')} to ${pressure(params, 'highPascals')}`,
  'gas-left-on': (params) =>
    `${furnace(params)}: ${pressure(params, 'outletPascals')} after closing time, and no firing runs`,
};

function furnace(params: Params): string {
  return textOf(params, 'furnaceName', 'Furnace');
}

function isLow(params: Params): boolean {
  const [outlet, low] = [numberOf(params, 'outletPascals'), numberOf(params, 'lowPascals')];
  return outlet !== null && low !== null && outlet < low;
}

function pressure(params: Params, name: string): string {
  const pascals = numberOf(params, name);
  if (pascals === null) return 'unknown';
  return `${(pascals / 1e5).toFixed(2)} bar (${(pascals / 6894.757).toFixed(1)} psi)`;
}

function mass(params: Params, name: string): string {
  const kilograms = numberOf(params, name);
  if (kilograms === null) return 'unknown';
  return `${kilograms.toFixed(1)} kg (${(kilograms / 0.45359237).toFixed(1)} lb)`;
}

function flow(params: Params): string {
  const perHour = numberOf(params, 'kilogramsPerHour');
  return perHour === null
    ? 'unknown'
    : `${perHour.toFixed(1)} kg/h (${(perHour / 0.45359237).toFixed(1)} lb/h)`;
}

function left(params: Params): string {
  return numberOf(params, 'leftKilograms') === null ? '' : `, ${mass(params, 'leftKilograms')} on the scale`;
}

function time(params: Params, name: string): string {
  const seconds = numberOf(params, name);
  return seconds === null ? 'unknown' : duration(seconds);
}

function fell(params: Params): string {
  return `${furnace(params)}: from ${pressure(params, 'beforePascals')} to ${pressure(params, 'outletPascals')}`;
}
