/**
 * A smith at a gas forge: looks every quarter of a minute, turns the regulator
 * in small steps, and judges by how fast the temperature climbs. Invented habits.
 */
import type { Random } from '../random.ts';

/** Full fire for heating up, Pa gauge. */
export const HEAT_UP_PASCALS = 97_000;
/** Less than this and the burner would huff. */
const LEAST_PASCALS = 6_000;
const PASCAL_STEP = 1_000;
const LOOK_SECONDS = 15;
/** From this far below the target on, the smith trims; before, it is full fire. */
const TRIM_WITHIN_CELSIUS = 140;
/** The smith looks this far ahead along the present climb. */
const LEAD_SECONDS = 60;
const PASCALS_PER_CELSIUS = 1_600;
/** What this smith has learnt that the forge needs to hold a heat; corrected a little at every look. */
const LEARNT_HOLD_PASCALS = 42_500;
const LEARNING_PASCALS_PER_CELSIUS_SECOND = 2;
const LOOKS_REMEMBERED = 4;

/** What the smith goes by at one moment. */
export interface ForgeView {
  readonly nowSeconds: number;
  readonly targetCelsius: number;
  readonly chamberCelsius: number;
  /** A smith whose mind is elsewhere: full fire until the chamber is this far above the target. */
  readonly distractedUntilExcessCelsius: number | null;
}

/** Decides what the regulator is set to. */
export class ForgeOperator {
  readonly #random: Random;
  #setPascals = 0;
  #holdPascals = LEARNT_HOLD_PASCALS;
  #looks: { readonly seconds: number; readonly celsius: number }[] = [];
  #nextLookSeconds = 0;
  #noticed = false;

  constructor(random: Random) {
    this.#random = random;
  }

  /** Lights the forge for a new firing. */
  light(): void {
    this.#setPascals = HEAT_UP_PASCALS;
    this.#holdPascals = LEARNT_HOLD_PASCALS;
    this.#looks = [];
    this.#nextLookSeconds = 0;
    this.#noticed = false;
  }

  /** Regulator setting for the next second, Pa gauge. */
  decide(view: ForgeView): number {
    if (this.#isDistracted(view)) return HEAT_UP_PASCALS;
    if (view.nowSeconds >= this.#nextLookSeconds) this.#look(view);
    return this.#setPascals;
  }

  #isDistracted(view: ForgeView): boolean {
    const excess = view.distractedUntilExcessCelsius;
    if (excess === null) {
      this.#noticed = false;
      return false;
    }
    if (view.chamberCelsius >= view.targetCelsius + excess) this.#noticed = true;
    return !this.#noticed;
  }

  #look(view: ForgeView): void {
    const rate = this.#climb(view);
    this.#nextLookSeconds = view.nowSeconds + LOOK_SECONDS + this.#random.between(-4, 4);
    const left = view.targetCelsius - view.chamberCelsius;
    if (left > TRIM_WITHIN_CELSIUS) {
      this.#setPascals = HEAT_UP_PASCALS;
      return;
    }
    if (Math.abs(left) < 25) this.#holdPascals += LEARNING_PASCALS_PER_CELSIUS_SECOND * left * LOOK_SECONDS;
    this.#holdPascals = within(this.#holdPascals);
    const wanted = this.#holdPascals + PASCALS_PER_CELSIUS * (left - LEAD_SECONDS * rate);
    const clumsy = wanted + PASCAL_STEP * this.#random.between(-0.5, 0.5);
    this.#setPascals = within(Math.round(clumsy / PASCAL_STEP) * PASCAL_STEP);
  }

  /** °C per second over the last few looks: quarter-degree steps make one look too short. */
  #climb(view: ForgeView): number {
    this.#looks.push({ seconds: view.nowSeconds, celsius: view.chamberCelsius });
    if (this.#looks.length > LOOKS_REMEMBERED) this.#looks.shift();
    const first = this.#looks[0];
    if (first === undefined || first.seconds === view.nowSeconds) return 0;
    return (view.chamberCelsius - first.celsius) / (view.nowSeconds - first.seconds);
  }
}

function within(pascals: number): number {
  return Math.min(HEAT_UP_PASCALS, Math.max(LEAST_PASCALS, pascals));
}
