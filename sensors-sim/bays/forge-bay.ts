/** The gas forge with its smith, its gas and its probes. */
import type { Conditions } from '../behaviours/conditions.ts';
import { ForgeOperator } from '../operators/forge-operator.ts';
import type { Flame } from '../plant/burner.ts';
import type { Cylinder } from '../plant/cylinder.ts';
import { Forge } from '../plant/forge.ts';
import { GasTrain } from '../plant/gas-train.ts';
import { Probe } from '../plant/probe.ts';
import { ROOM_CELSIUS } from '../plant/room.ts';
import { seededRandom } from '../random.ts';
import { Bay, type BayOptions } from './bay.ts';

const PRESSURE_PROBE = { lagSeconds: 0.5, noise: 150, resolution: 100, floor: 0 };

/** The forge, moved forward a step at a time. */
export class ForgeBay {
  readonly bay: Bay;
  readonly forge = new Forge(ROOM_CELSIUS);
  readonly gas = new GasTrain();
  readonly pressureProbe: Probe;
  readonly #smith: ForgeOperator;

  constructor(options: BayOptions) {
    this.bay = new Bay(options);
    this.pressureProbe = new Probe(PRESSURE_PROBE, seededRandom(options.seed, 'forge/pressure'), 0);
    this.#smith = new ForgeOperator(seededRandom(options.seed, 'forge/smith'));
  }

  step(nowMs: number, cylinder: Cylinder, conditions: Conditions, seconds: number): Flame {
    if (this.bay.order(nowMs, seconds)) this.#smith.light();
    const setPascals = this.#setting(nowMs, conditions);
    this.gas.step({
      setPascals,
      cylinderGaugePascals: cylinder.gaugePascals,
      ceilingPascals: conditions.gasCeilingPascals,
      gasCelsius: cylinder.liquidCelsius,
    });
    const drawn = cylinder.step(this.gas.flowKilogramsPerSecond, ROOM_CELSIUS, seconds);
    const flame = this.forge.step(
      {
        fuelKilogramsPerSecond: drawn / seconds,
        equivalenceRatio: conditions.equivalenceRatio,
        doorShare: setPascals > 0 ? 0 : 1,
        roomCelsius: ROOM_CELSIUS,
        load: this.bay.loadInside,
      },
      seconds,
    );
    this.bay.settle(this.forge.chamberCelsius, seconds);
    this.pressureProbe.step(this.gas.supplyGaugePascals, seconds);
    return flame;
  }

  /** Gas is on while the plan heats or holds; it is off and the bricks are out otherwise. */
  #setting(nowMs: number, conditions: Conditions): number {
    const segment = this.bay.desk.walk.segment;
    if (this.bay.desk.firing === null || segment === null || segment.kind === 'cool') return 0;
    return this.#smith.decide({
      nowSeconds: nowMs / 1000,
      targetCelsius: segment.targetCelsius,
      chamberCelsius: this.bay.chamberProbe.reading,
      distractedUntilExcessCelsius: this.bay.slipCelsius(conditions.attention.forge),
    });
  }
}
