/** The gas forge with its smith, its gas and its probes. */
import type { Conditions } from '../behaviours/conditions.ts';
import { ForgeOperator } from '../operators/forge-operator.ts';
import { DelayedHand, STEADY_HABITS } from '../operators/habits.ts';
import type { Flame } from '../plant/burner.ts';
import type { Cylinder } from '../plant/cylinder.ts';
import { Forge } from '../plant/forge.ts';
import { GasTrain } from '../plant/gas-train.ts';
import { Probe } from '../plant/probe.ts';
import { ROOM_CELSIUS } from '../plant/room.ts';
import { seededRandom } from '../random.ts';
import { Bay, type BayOptions } from './bay.ts';

const PRESSURE_PROBE = { lagSeconds: 0.5, noise: 150, resolution: 100, floor: 0 };

/** What the forge gave to the room in a step. */
export interface ForgeOutput {
  readonly flame: Flame;
  /** Propane that burnt, kg/s. */
  readonly burntKilogramsPerSecond: number;
  /** Propane that came out and did not burn, kg/s. */
  readonly unburntKilogramsPerSecond: number;
}

/** The forge, moved forward a step at a time. */
export class ForgeBay {
  readonly bay: Bay;
  readonly forge = new Forge(ROOM_CELSIUS);
  readonly gas = new GasTrain();
  readonly pressureProbe: Probe;
  readonly #smith: ForgeOperator;
  #hand = new DelayedHand();
  #burning = false;

  constructor(options: BayOptions) {
    this.bay = new Bay(options);
    this.pressureProbe = new Probe(PRESSURE_PROBE, seededRandom(options.seed, 'forge/pressure'), 0);
    this.#smith = new ForgeOperator(seededRandom(options.seed, 'forge/smith'));
  }

  /** Gas comes out of the burner and burns. */
  get isBurning(): boolean {
    return this.#burning;
  }

  step(nowMs: number, cylinder: Cylinder, conditions: Conditions, seconds: number): ForgeOutput {
    if (this.bay.order(nowMs, conditions, seconds)) this.#light();
    const setPascals = this.#setting(nowMs, conditions);
    const lit = conditions.gas.lit && setPascals > 0;
    this.#feed(setPascals, cylinder, conditions, seconds);
    const drawn = this.#draw(cylinder, conditions, seconds);
    this.#burning = lit && drawn > 0;
    const flame = this.forge.step(
      {
        fuelKilogramsPerSecond: drawn,
        equivalenceRatio: conditions.air.equivalenceRatio,
        lit,
        doorShare: setPascals > 0 ? 0 : 1,
        roomCelsius: ROOM_CELSIUS,
        load: this.bay.loadInside,
      },
      seconds,
    );
    this.bay.settle(nowMs, this.forge.chamberCelsius, conditions, seconds);
    this.pressureProbe.step(this.gas.supplyGaugePascals, seconds);
    return {
      flame,
      burntKilogramsPerSecond: lit ? drawn : 0,
      unburntKilogramsPerSecond: (lit ? 0 : drawn) + this.gas.leakKilogramsPerSecond,
    };
  }

  #light(): void {
    this.#smith.light();
    this.#hand = new DelayedHand();
  }

  /** What the smith sets, or what was left on where a careful one would have shut the cylinder. */
  #feed(setPascals: number, cylinder: Cylinder, conditions: Conditions, seconds: number): void {
    const { leftOn, faults } = conditions.gas;
    const forgotten = setPascals === 0 ? leftOn : null;
    const input = {
      setPascals: forgotten?.pascals ?? setPascals,
      burnerOpen: forgotten?.burner !== 'shut',
      cylinderGaugePascals: cylinder.gaugePascals,
      gasCelsius: cylinder.liquidCelsius,
      faults,
    };
    this.gas.step(input, seconds);
  }

  /** Takes the gas from the cylinder; gives what the burner had of it, kg/s. */
  #draw(cylinder: Cylinder, conditions: Conditions, seconds: number): number {
    const wanted = this.gas.drawKilogramsPerSecond;
    const drawn = cylinder.step(wanted, conditions.gas.cylinderAirCelsius, seconds) / seconds;
    return wanted > 0 ? (this.gas.flowKilogramsPerSecond * drawn) / wanted : 0;
  }

  /** Gas is on while the plan heats or holds; it is off and the bricks are out otherwise. */
  #setting(nowMs: number, conditions: Conditions): number {
    const { firing, walk } = this.bay.desk;
    if (firing === null || walk.segment === null || walk.segment.kind === 'cool') return 0;
    if (conditions.gas.smithCloses) return 0;
    const nowSeconds = nowMs / 1000;
    const wanted = this.#smith.decide({
      nowSeconds,
      targetCelsius: walk.segment.targetCelsius,
      chamberCelsius: this.bay.chamberProbe.reading,
      distractedUntilExcessCelsius: this.bay.slipCelsius(conditions.attention.forge),
    });
    const { reactionSeconds } = { ...STEADY_HABITS, ...firing.habits, ...conditions.habits.forge };
    return this.#hand.follow(wanted, nowSeconds, reactionSeconds);
  }
}
