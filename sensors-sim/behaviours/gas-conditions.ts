/** What the behaviours of the gas make of the way from cylinder to flame at one moment. */
import { HEAT_UP_PASCALS } from '../operators/forge-operator.ts';
import type { CylinderStart } from '../plant/cylinder.ts';
import { type GasFaults, SOUND_GAS } from '../plant/gas-train.ts';
import { ROOM_CELSIUS } from '../plant/room.ts';
import { type Behaviour, named } from './behaviour.ts';

/** Gas that stays on where a careful smith would have shut the cylinder. */
export interface LeftOn {
  readonly pascals: number;
  readonly burner: 'shut' | 'unlit';
}

/** The gas supply apart from what the smith sets. */
export interface GasConditions {
  readonly faults: GasFaults;
  /** False: what comes out of the burner does not burn. */
  readonly lit: boolean;
  /** True: the smith has seen that the flame is out and keeps the gas closed. */
  readonly smithCloses: boolean;
  readonly leftOn: LeftOn | null;
  readonly cylinderAirCelsius: number;
}

export const SOUND_SUPPLY: GasConditions = {
  faults: SOUND_GAS,
  lit: true,
  smithCloses: false,
  leftOn: null,
  cylinderAirCelsius: ROOM_CELSIUS,
};

/** @param active the behaviours that are on */
export function gasConditions(active: readonly Behaviour[], elapsedSeconds: number): GasConditions {
  const out = named(active, 'flame-out').at(-1);
  return {
    faults: gasFaults(active, elapsedSeconds),
    lit: out === undefined,
    smithCloses: out !== undefined && elapsedSeconds - out.startSeconds >= out.noticedAfterSeconds,
    leftOn: leftOn(active),
    cylinderAirCelsius: named(active, 'cold-cylinder').at(-1)?.airCelsius ?? ROOM_CELSIUS,
  };
}

function gasFaults(active: readonly Behaviour[], elapsedSeconds: number): GasFaults {
  const changing = named(active, 'cylinder-change').some(
    (each) => elapsedSeconds - each.startSeconds < each.changeSeconds,
  );
  const droop = named(active, 'regulator-droop').at(-1) ?? SOUND_GAS;
  const kinks = named(active, 'hose-restriction').map((each) => {
    const minutes = (elapsedSeconds - each.startSeconds) / 60;
    return each.lossPascals * (each.overMinutes === 0 ? 1 : Math.min(1, minutes / each.overMinutes));
  });
  const creep = named(active, 'regulator-creep').map((each) => each.pascalsPerMinute / 60);
  const leaks = named(active, 'gas-escape').map((each) => each.kilogramsPerHour / 3600);
  return {
    ceilingPascals: Math.min(SOUND_GAS.ceilingPascals, ...ice(active, elapsedSeconds)),
    valveOpen: !changing && named(active, 'shut-valve').length === 0,
    droopShare: droop.droopShare,
    extraFlowShare: droop.extraFlowShare,
    creepPascalsPerSecond: Math.max(0, ...creep),
    hoseLossPascals: Math.max(0, ...kinks),
    jetShare: Math.min(1, ...named(active, 'blocked-jet').map((each) => each.openShare)),
    escapeKilogramsPerSecond: leaks.reduce((sum, each) => sum + each, 0),
  };
}

function ice(active: readonly Behaviour[], elapsedSeconds: number): number[] {
  return named(active, 'falling-gas').map((each) => {
    const halvings = (elapsedSeconds - each.startSeconds) / 60 / each.halvingMinutes;
    return Math.max(each.floorPascals, HEAT_UP_PASCALS * 0.5 ** halvings);
  });
}

/** A seat can only creep where the gas was left on with the burner shut. */
function leftOn(active: readonly Behaviour[]): LeftOn | null {
  const forgotten = named(active, 'gas-left-on').at(-1);
  if (forgotten !== undefined) return { pascals: forgotten.pascals, burner: forgotten.burner };
  const creeping = named(active, 'regulator-creep').at(-1);
  return creeping === undefined ? null : { pascals: creeping.settingPascals, burner: 'shut' };
}

/** The cylinder that is put on in the given stretch of time, if any. */
export function cylinderChange(
  behaviours: readonly Behaviour[],
  fromSeconds: number,
  toSeconds: number,
): CylinderStart | null {
  const isDue = (atSeconds: number) => atSeconds >= fromSeconds && atSeconds < toSeconds;
  for (const each of behaviours) {
    switch (each.name) {
      case 'weak-cylinder':
      case 'empty-cylinder':
        if (isDue(each.startSeconds)) return each;
        break;
      case 'cold-cylinder': {
        const { massKilograms, airCelsius, startSeconds } = each;
        if (isDue(startSeconds)) return { massKilograms, liquidCelsius: airCelsius };
        break;
      }
      case 'cylinder-change':
        if (isDue(each.startSeconds + each.changeSeconds)) return each;
        break;
      default:
    }
  }
  return null;
}
