/**
 * The shop's air as one box with a corner that lags behind: what burns, leaks and
 * breathes in it, and the draught that carries it off.
 */
import { roomPpmAfter } from '../../hub/physics/room-air.ts';

/** m³ of a one-man shop. Invented. */
export const ROOM_CUBIC_METRES = 60;
export const ROOM_CELSIUS = 18;

/** kg/m³ of pure gas at 20 °C and one atmosphere: molar mass over 24.055 l/mol. */
const KILOGRAMS_PER_CUBIC_METRE = {
  carbonMonoxide: 1.1645,
  carbonDioxide: 1.8296,
  oxygen: 1.3303,
  propane: 1.8331,
};
const BACKGROUND = { carbonMonoxidePpm: 0.5, carbonDioxidePpm: 420, oxygenPpm: 209_500, propanePpm: 0 };
/** kg a kg of propane that burns whole: C3H8 + 5 O2 -> 3 CO2 + 4 H2O, by molar masses. */
const BURNING = { carbonDioxide: 2.994, oxygen: 3.628, water: 1.634 };
/** The same for CO that escapes instead of burning on: 2 CO + O2 -> 2 CO2. */
const ESCAPING = { carbonDioxide: 1.571, oxygen: 0.571 };
/** One person at light work breathes out about 20 l of CO2 an hour, takes in a little more O2. Common practice. */
const BREATH_CUBIC_METRES_PER_HOUR = 0.02;
/** A far corner follows the middle by this. Invented. */
const CORNER_LAG_SECONDS = 90;
/** Heat that the room keeps near its temperature: air, walls and tools, and what leaks through them. Invented. */
const ROOM_JOULES_PER_KELVIN = 900_000;
const ROOM_WATTS_PER_KELVIN = 120;
/** Share of a flame's heat that stays in the room instead of rising out of it. Invented. */
const HEAT_SHARE = 0.25;
const AIR_JOULES_PER_CUBIC_METRE_KELVIN = 1206;
const OUTDOOR = { celsius: 12, waterKilogramsPerCubicMetre: 0.0078 };

/** What moves the air and what fouls it. */
export interface RoomInput {
  readonly airChangesPerHour: number;
  /** CO that escapes into the room, kg/s. */
  readonly carbonMonoxideKilogramsPerSecond: number;
  /** Propane burnt, kg/s. Default 0. */
  readonly burntKilogramsPerSecond?: number;
  /** Propane that came out unburnt, kg/s. Default 0. */
  readonly propaneKilogramsPerSecond?: number;
  /** Heat of what burns in it, W. Default 0. */
  readonly heatWatts?: number;
}

/** The air of the room. Ppm are by volume. */
export class Room {
  coPpm = BACKGROUND.carbonMonoxidePpm;
  /** In a corner away from the forge. */
  cornerCoPpm = BACKGROUND.carbonMonoxidePpm;
  carbonDioxidePpm = BACKGROUND.carbonDioxidePpm;
  oxygenPpm = BACKGROUND.oxygenPpm;
  /** Evenly mixed, which it is not: it lies low and collects. */
  propanePpm = BACKGROUND.propanePpm;
  celsius = ROOM_CELSIUS;
  #waterKilogramsPerCubicMetre = OUTDOOR.waterKilogramsPerCubicMetre;

  /** m³/h of CO for a mass flow. */
  static sourceCubicMetresPerHour(kilogramsPerSecond: number): number {
    return cubicMetresPerHour(kilogramsPerSecond, 'carbonMonoxide');
  }

  /** %, from the water in the air and what air of this temperature can hold. */
  get relativeHumidity(): number {
    return Math.min(100, (100 * this.#waterKilogramsPerCubicMetre) / saturatedWater(this.celsius));
  }

  step(input: RoomInput, seconds: number): void {
    const escaped = input.carbonMonoxideKilogramsPerSecond;
    const burnt = input.burntKilogramsPerSecond ?? 0;
    const dioxide = Math.max(0, BURNING.carbonDioxide * burnt - ESCAPING.carbonDioxide * escaped);
    const oxygen = Math.max(0, BURNING.oxygen * burnt - ESCAPING.oxygen * escaped);
    const propane = input.propaneKilogramsPerSecond ?? 0;
    const mix = (before: number, source: number, backgroundPpm: number) =>
      roomPpmAfter(box(input.airChangesPerHour, source, backgroundPpm), before, seconds);
    this.coPpm = mix(this.coPpm, cubicMetresPerHour(escaped, 'carbonMonoxide'), BACKGROUND.carbonMonoxidePpm);
    const share = -Math.expm1(-seconds / CORNER_LAG_SECONDS);
    this.cornerCoPpm += share * (this.coPpm - this.cornerCoPpm);
    const breathed = cubicMetresPerHour(dioxide, 'carbonDioxide') + BREATH_CUBIC_METRES_PER_HOUR;
    this.carbonDioxidePpm = mix(this.carbonDioxidePpm, breathed, BACKGROUND.carbonDioxidePpm);
    this.propanePpm = mix(this.propanePpm, cubicMetresPerHour(propane, 'propane'), BACKGROUND.propanePpm);
    // What is missing of the oxygen mixes like a gas that is there.
    const missing = mix(BACKGROUND.oxygenPpm - this.oxygenPpm, cubicMetresPerHour(oxygen, 'oxygen'), 0);
    this.oxygenPpm = BACKGROUND.oxygenPpm - missing;
    this.#climate(input, BURNING.water * burnt, seconds);
  }

  #climate(input: RoomInput, waterKilogramsPerSecond: number, seconds: number): void {
    const perSecond = input.airChangesPerHour / 3600;
    const draught = perSecond * ROOM_CUBIC_METRES * AIR_JOULES_PER_CUBIC_METRE_KELVIN;
    // The walls keep the room near its usual temperature; the draught pulls it towards outdoors.
    const gained =
      HEAT_SHARE * (input.heatWatts ?? 0) -
      ROOM_WATTS_PER_KELVIN * (this.celsius - ROOM_CELSIUS) -
      draught * (this.celsius - OUTDOOR.celsius);
    this.celsius += (gained * seconds) / ROOM_JOULES_PER_KELVIN;
    const added = waterKilogramsPerSecond / ROOM_CUBIC_METRES;
    const carried = perSecond * (this.#waterKilogramsPerCubicMetre - OUTDOOR.waterKilogramsPerCubicMetre);
    this.#waterKilogramsPerCubicMetre += (added - carried) * seconds;
  }
}

function box(airChangesPerHour: number, sourceCubicMetresPerHour: number, backgroundPpm: number) {
  const airCubicMetresPerHour = ROOM_CUBIC_METRES * airChangesPerHour;
  return {
    volumeCubicMetres: ROOM_CUBIC_METRES,
    airCubicMetresPerHour,
    sourceCubicMetresPerHour,
    backgroundPpm,
  };
}

function cubicMetresPerHour(kilogramsPerSecond: number, gas: keyof typeof KILOGRAMS_PER_CUBIC_METRE): number {
  return (kilogramsPerSecond / KILOGRAMS_PER_CUBIC_METRE[gas]) * 3600;
}

/** Water that saturated air holds, kg/m³: Magnus formula (WMO No. 8, from memory) and the ideal gas. */
function saturatedWater(celsius: number): number {
  const pascals = 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  return pascals / (461.5 * (celsius + 273.15));
}
