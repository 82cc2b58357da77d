import type { GasAlarmKind } from './en-gas-alarms.ts';
import type { RationaleWords } from './types.ts';

/** Why each alarm about gas exists: cause, consequence, and what to do first. */

const UNBURNT = 'Unburnt gas gathers at the floor and may explode or suffocate.';
const COOLS = 'The flame weakens or goes out; the forge cools and the soak does not count.';
const CLOSE = 'Close the gas first.';

export const GAS_RATIONALE: Readonly<Record<GasAlarmKind, RationaleWords>> = {
  'gas-flame-out': {
    name: 'Flame out suspected',
    cause: 'The flame has gone out and the gas flows on; or the burner is shut and the hose under pressure.',
    consequence: UNBURNT,
    action: 'Close the gas at the cylinder, at once.',
  },
  'gas-escaping': {
    name: 'Gas is lost that no burner takes',
    cause: 'A hose off, burst or leaking; a burner open without a flame; a dead pressure gauge.',
    consequence: UNBURNT,
    action: 'Close the gas if that is possible without danger; everyone out.',
  },
  'gas-on-cold': {
    name: 'Gas on and nothing hot',
    cause: 'A burner that did not light, or a hose left under pressure.',
    consequence: UNBURNT,
    action: 'Close the gas at the cylinder, at once.',
  },
  'gas-empty': {
    name: 'Gas cylinder empty',
    cause: 'The last liquid is gone.',
    consequence: COOLS,
    action: 'Close the gas at burner and cylinder, then change it.',
  },
  'gas-valve-shut': {
    name: 'Gas cut off at once',
    cause: 'A valve was shut, or an excess-flow device has tripped.',
    consequence: 'The flame is out; gas that comes back finds none.',
    action: 'Close the gas at the burner first.',
  },
  'gas-creep': {
    name: 'Gas pressure climbs by itself',
    cause: 'The seat of the regulator leaks.',
    consequence: 'Hose and fittings stand under more pressure than they are for.',
    action: 'Close the cylinder valve; stop using this regulator.',
  },
  'gas-chill': {
    name: 'Gas cylinder too cold',
    cause: 'More is drawn than the air can boil off: frost, a small cylinder, a low filling.',
    consequence: COOLS,
    action: 'Turn the draw down, or a larger or fuller cylinder.',
  },
  'gas-restricted': {
    name: 'Less gas comes through',
    cause: 'Ice in the regulator, a kinked hose, a half shut valve, dirt in the jet.',
    consequence: COOLS,
    action: CLOSE,
  },
  'gas-droop': {
    name: 'Regulator cannot hold the flow',
    cause: 'More flows than the regulator is made for: a second burner, or a leak.',
    consequence: COOLS,
    action: 'Take the second burner off; close the gas if nothing explains the flow.',
  },
  'gas-lost': {
    name: 'Gas pressure gone',
    cause: 'Empty cylinder, shut valve, ice or a hose off: what is measured cannot tell which.',
    consequence: 'The flame is out; gas that comes back finds none.',
    action: 'Close the gas at burner and cylinder.',
  },
  'gas-will-not-last': {
    name: 'The gas will not last this firing',
    cause: 'Less is left than the rest of the schedule needs at the present draw.',
    consequence: 'The gas is gone in the middle of the heat.',
    action: 'Decide now: a fresh cylinder, or a good point to end.',
  },
  'gas-off-band': {
    name: 'Gas pressure outside the band of the furnace',
    cause: 'The regulator set too low or too high for this burner.',
    consequence: 'Too low the flame burns back; too high it runs rich or lifts off.',
    action: 'Set the regulator; huffing or popping: close the gas at once.',
  },
  'gas-left-on': {
    name: 'Gas pressure left on after closing time',
    cause: 'The cylinder was not closed.',
    consequence: 'A small leak fills the shop overnight.',
    action: 'Close the cylinder valve.',
  },
};
