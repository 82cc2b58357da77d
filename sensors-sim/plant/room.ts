/** The shop's air as one box, fed with the CO that escapes unburnt from the forge's mouth. */
import { roomPpmAfter } from '../../hub/physics/room-air.ts';

/** m³ of a one-man shop. Invented. */
export const ROOM_CUBIC_METRES = 60;
export const ROOM_CELSIUS = 18;
const BACKGROUND_PPM = 0.5;
/** kg/m³ of CO at 20 °C and one atmosphere: 28.01 g/mol over 24.055 l/mol. */
const CO_KILOGRAMS_PER_CUBIC_METRE = 1.1645;

/** What moves the air and what fouls it. */
export interface RoomInput {
  readonly airChangesPerHour: number;
  readonly carbonMonoxideKilogramsPerSecond: number;
}

/** Carbon monoxide in the room. */
export class Room {
  coPpm = BACKGROUND_PPM;

  /** m³/h of CO for a mass flow. */
  static sourceCubicMetresPerHour(kilogramsPerSecond: number): number {
    return (kilogramsPerSecond / CO_KILOGRAMS_PER_CUBIC_METRE) * 3600;
  }

  step(input: RoomInput, seconds: number): void {
    const air = {
      volumeCubicMetres: ROOM_CUBIC_METRES,
      airCubicMetresPerHour: ROOM_CUBIC_METRES * input.airChangesPerHour,
      sourceCubicMetresPerHour: Room.sourceCubicMetresPerHour(input.carbonMonoxideKilogramsPerSecond),
      backgroundPpm: BACKGROUND_PPM,
    };
    this.coPpm = roomPpmAfter(air, this.coPpm, seconds);
  }
}
