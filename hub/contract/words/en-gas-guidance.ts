import type { Params } from '../alarm.ts';
import type { GasAlarmKind } from './en-gas-alarms.ts';

/**
 * What to check and do about gas, in order. The gas is closed first, the air clears, and nothing here ever says to
 * relight. Every list defers to the certified alarm, the local code and a competent fitter.
 */

export const GAS_DEFER =
  'This screen is an aid: gas and CO alarms that are certified, the local code and a competent fitter come before it.';

const CLOSE = 'Close the gas at the cylinder, at once.';
const NO_SPARK = 'No switches, no sparks, no flame: the gas is heavier than air and lies at the floor.';
const CLEAR = 'Let chamber and floor air clear for several minutes, the ventilation running.';
const FOUND = 'No new fire until the cause is found and put right.';
const SMELL = 'Gas smelt: everyone out, and call for help from outside.';
const SOAP = 'Leak test with soapy water at every joint after any change; never with a flame.';

const FLAME_OUT = [CLOSE, NO_SPARK, CLEAR, SMELL, FOUND, GAS_DEFER];
const ESCAPING = [
  'Close the gas at the cylinder if that is possible without danger.',
  NO_SPARK,
  'Everyone out; open what lies low on the way out. Call for help from outside.',
  'Hose off, burst or leaking, a burner open without a flame: have it found by someone competent.',
  GAS_DEFER,
];
const ON_COLD = [
  CLOSE,
  NO_SPARK,
  CLEAR,
  'A chamber that was lit shows it within minutes: this one did not.',
  SMELL,
  GAS_DEFER,
];
const EMPTY = [
  'Close the gas at the burner and at the cylinder first.',
  'A fresh cylinder: upright, outside where the code wants it, and note its filling on the gas page.',
  SOAP,
  'The piece is cooling: the soak does not count meanwhile.',
  GAS_DEFER,
];
const VALVE_SHUT = [
  'Close the gas at the burner first: gas that comes back finds no flame.',
  'Was the valve shut by someone? Or has an excess-flow device tripped: look for a hose that is off or burst.',
  SOAP,
  CLEAR,
  GAS_DEFER,
];
const CREEP = [
  'Close the cylinder valve. Stop using this regulator: its seat leaks.',
  'Let the pressure off only outdoors or through the burner maker’s own procedure.',
  'Replace the regulator; have a competent fitter look at it.',
  GAS_DEFER,
];
const CHILL = [
  'Turn the draw down, or change to a larger or fuller cylinder, or several together.',
  'Frost at the liquid level is the sign. Never heat a cylinder with a flame or an unsuited heater.',
  'If the flame wavers or goes out: close the gas first.',
  GAS_DEFER,
];
const RESTRICTED = [
  'Close the gas before you touch hose, valve or jet.',
  'Ice in the regulator: thaw with warm water, never with a flame.',
  'A kinked hose, a half shut valve, dirt in the jet.',
  SOAP,
  GAS_DEFER,
];
const DROOP = [
  'More flows than the regulator holds: take the second burner off, or a larger regulator.',
  'A flow that nobody asked for is a leak: close the gas and look for it.',
  GAS_DEFER,
];
const LOST = [
  'Close the gas at the burner and at the cylinder first.',
  'Empty cylinder, shut valve, tripped excess-flow device, ice, a hose off: look at them in this order.',
  NO_SPARK,
  SOAP,
  GAS_DEFER,
];
const WILL_NOT_LAST = [
  'Decide now: a fresh cylinder at hand, or end this firing at a good point.',
  'Never change a cylinder beside a flame: close the gas first.',
  'The range is wide without a scale; the last 10 to 20 % in the cold often will not come out.',
  GAS_DEFER,
];
const LOW = [
  'Huffing or popping in the burner: close the gas at once.',
  'Raise the pressure a little at the regulator, by the burner maker’s figures.',
  GAS_DEFER,
];
const HIGH = [
  'Turn the regulator down: a rich flame makes carbon monoxide, and a flame can lift off.',
  'It climbs by itself: close the cylinder, the regulator leaks.',
  GAS_DEFER,
];
const LEFT_ON = [
  'Close the cylinder valve; empty the hose by the burner maker’s own procedure.',
  SMELL,
  GAS_DEFER,
];

function offBand(params: Params): readonly string[] {
  const { outletPascals, lowPascals } = params;
  const low =
    typeof outletPascals === 'number' && typeof lowPascals === 'number' && outletPascals < lowPascals;
  return low ? LOW : HIGH;
}

/** The steps for an alarm about gas. */
export const GAS_GUIDANCE: Readonly<Record<GasAlarmKind, (params: Params) => readonly string[]>> = {
  'gas-flame-out': () => FLAME_OUT,
  'gas-escaping': () => ESCAPING,
  'gas-on-cold': () => ON_COLD,
  'gas-empty': () => EMPTY,
  'gas-valve-shut': () => VALVE_SHUT,
  'gas-creep': () => CREEP,
  'gas-chill': () => CHILL,
  'gas-restricted': () => RESTRICTED,
  'gas-droop': () => DROOP,
  'gas-lost': () => LOST,
  'gas-will-not-last': () => WILL_NOT_LAST,
  'gas-off-band': offBand,
  'gas-left-on': () => LEFT_ON,
};
