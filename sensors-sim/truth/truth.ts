/** What no sensor knows: published beside the readings for tests and for whoever wants to compare, never for the hub. */
import type { FurnaceName } from '../plans.ts';
import type { PieceTruth } from '../plant/steel-piece.ts';

/** Where the truth goes over MQTT: outside of everything that a hub subscribes to. */
export const TRUTH_TOPIC = 'truth/shop';
export const LABEL_TOPIC = 'truth/labels';

/** The truth about one furnace. */
export interface FurnaceTruth {
  /** What a probe without lag would show in the middle of the chamber. */
  readonly chamberCelsius: number;
  /** Surface of the thickest piece, where the load thermocouple sits. */
  readonly loadCelsius: number;
  readonly segment: number | null;
  readonly thickestCoreCelsius: number;
  readonly thinnestCoreCelsius: number;
  readonly pieces: readonly PieceTruth[];
  /** Seconds of this firing's soak in which the thickest core was inside the tolerance. */
  readonly coreSoakSeconds: number;
}

/** The truth at one moment. */
export interface Truth {
  readonly atMs: number;
  readonly forge: FurnaceTruth & {
    /** Gas comes out of the burner and burns. */
    readonly burning: boolean;
  };
  readonly oven: FurnaceTruth & {
    readonly frontCelsius: number;
    readonly backCelsius: number;
  };
  readonly supplyGaugePascals: number;
  /** Through the burner. */
  readonly gasKilogramsPerSecond: number;
  /** Past the burner or out of it unburnt, into the room. */
  readonly escapedGasKilogramsPerSecond: number;
  readonly cylinderKilograms: number;
  readonly cylinderCelsius: number;
  readonly cylinderGaugePascals: number;
  readonly coPpm: number;
  /** CO that comes into the room, kg/s, whatever makes it. */
  readonly coKilogramsPerSecond: number;
  readonly carbonDioxidePpm: number;
  readonly oxygenPpm: number;
  readonly propanePpm: number;
  readonly roomCelsius: number;
  readonly relativeHumidity: number;
  readonly airChangesPerHour: number;
}

/** An instant of the truth that a judge is measured by. */
export type Label =
  | {
      readonly what: 'overshoot-began' | 'overshoot-ended';
      readonly atMs: number;
      readonly furnace: FurnaceName;
      readonly place: 'chamber' | 'load';
      readonly celsius: number;
      readonly limitCelsius: number;
    }
  | {
      /** The thickest core came inside the tolerance for the first time in this firing. */
      readonly what: 'core-arrived';
      readonly atMs: number;
      readonly furnace: FurnaceName;
      readonly celsius: number;
    }
  | {
      readonly what: 'behaviour-began' | 'behaviour-ended';
      readonly atMs: number;
      readonly name: string;
    };
