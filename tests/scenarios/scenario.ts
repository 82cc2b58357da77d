import type { AlarmRow } from '../../hub/archive/types.ts';
import type { FiringDetail, FiringJudgement } from '../../hub/contract/firing.ts';
import type { Furnace } from '../../hub/contract/shop.ts';
import { createCommitter } from '../../hub/intake/committer.ts';
import { createIntake } from '../../hub/intake/intake.ts';
import { type BehaviourInput, behaviour } from '../../sensors-sim/behaviours/behaviour.ts';
import type { Fitting } from '../../sensors-sim/node-names.ts';
import type { FurnaceEvent, PlannedFiring } from '../../sensors-sim/operators/firing-desk.ts';
import { FORGE_ANNEAL, type FurnaceName, PLANS, type Plan } from '../../sensors-sim/plans.ts';
import type { CylinderStart } from '../../sensors-sim/plant/cylinder.ts';
import { type Simulation, simulate } from '../../sensors-sim/run.ts';
import { MORNING, makeShop, type TestShop } from '../harness/shop.ts';

export interface ScenarioOptions {
  readonly seed?: number;
  readonly plan?: Plan;
  readonly operator?: PlannedFiring['operator'];
  readonly minutes: number;
  readonly behaviours?: readonly BehaviourInput[];
  readonly publishEverySeconds?: number;
  /** The probes on the pieces are taken in too, as a person does who adopts the whole node. */
  readonly loads?: boolean;
  /** Minutes of a cold shop before the furnace is lit; 1 where left out. */
  readonly coldMinutes?: number;
  /** A second CO sensor and what else a shop may hang on its wall. */
  readonly fittings?: readonly Fitting[];
  /** End of scale of the CO sensors, ppm; not known where left out. */
  readonly fullScalePpm?: number;
  /** What stands in the shop at first; the simulator's own cylinder where left out. */
  readonly cylinder?: CylinderStart;
  /** More of the set-up, before the first reading: see gas-fitting.ts. */
  readonly prepare?: (shop: TestShop, furnaces: Furnaces) => void;
  /** What a fault makes of a payload on its way: see probe-tampering.ts. */
  readonly tamper?: (topic: string, payload: string) => string;
}

/** A firing of the simulated shop as the hub saw it, beside the truth. */
export interface Scenario {
  readonly shop: TestShop;
  readonly simulation: Simulation;
  readonly firing: FiringDetail;
  /** Every alarm there was, in the order in which they were raised. */
  readonly alarms: readonly AlarmRow[];
  readonly kinds: readonly string[];
  /** The firing judged again out of the archive by a fresh hub. */
  replayed(): FiringJudgement;
}

/** What the smith does with the piece before there is a hand free for the wall. */
const LINGER_MS = 20_000;

export type Furnaces = Readonly<Record<FurnaceName, Furnace>>;

/**
 * Runs one firing of the simulated shop through the hub's own intake, archive, judges and alarm book, under a
 * virtual clock. The smith of the scenario presses Start when the simulated operator lights the furnace,
 * confirms what the wall asks when the operator has done it, and presses Finish at the end.
 */
export function runScenario(options: ScenarioOptions): Scenario {
  const plan = options.plan ?? FORGE_ANNEAL;
  // No wall is looking: a firing's state is then not put into words at every second.
  const shop = makeShop(MORNING, ['alarm', 'node']);
  const furnaces = furnish(shop, options);
  options.prepare?.(shop, furnaces);
  const committer = createCommitter({
    archive: shop.archive,
    clock: shop.clock,
    windowMs: 0,
    nextTurn: (run) => run(),
  });
  committer.onCommit((commit) => shop.watch.committed(commit));
  const intake = createIntake({ archive: shop.archive, committer, clock: shop.clock });
  const startMs = MORNING + (options.coldMinutes ?? 1) * 60_000;
  const simulation = simulate({
    seed: options.seed ?? 11,
    startMs: MORNING,
    seconds: options.minutes * 60,
    publishEverySeconds: options.publishEverySeconds ?? 2,
    furnacePlan: [{ plan, startMs, operator: options.operator ?? 'good' }],
    behaviours: (options.behaviours ?? []).map(behaviour),
    fittings: options.fittings ?? [],
    ...(options.cylinder === undefined ? {} : { cylinder: options.cylinder }),
  });
  const smith = new Smith(shop, furnaces);
  for (const { atMs, topic, payload, qos } of simulation) {
    if (atMs > shop.clock.now()) shop.clock.advance(atMs - shop.clock.now());
    smith.attend(simulation.events);
    smith.tend(atMs);
    // Committed before the promise is handed back: the group closes in the same turn.
    void intake.accept({
      topic,
      payload: Buffer.from(options.tamper?.(topic, payload) ?? payload),
      qos,
      fromRetained: false,
      clientId: null,
      receivedAt: atMs,
    });
  }
  shop.clock.advance(2000);
  const id = smith.firingId;
  if (id === null) throw new Error('the simulated operator never lit the furnace');
  const alarms = [...shop.archive.alarms({ limit: 1000 })].sort((a, b) => a.raisedAt - b.raisedAt);
  return {
    shop,
    simulation,
    firing: shop.watch.firings.detail(id),
    alarms,
    kinds: alarms.map((alarm) => alarm.kind),
    replayed: () => shop.restart().firings.rejudge(id),
  };
}

class Smith {
  readonly #shop: TestShop;
  readonly #furnaces: Furnaces;
  #attended = 0;
  #outAt: number | null = null;
  finished = false;
  firingId: string | null = null;

  constructor(shop: TestShop, furnaces: Furnaces) {
    this.#shop = shop;
    this.#furnaces = furnaces;
  }

  attend(events: readonly FurnaceEvent[]): void {
    for (const event of events.slice(this.#attended)) this.#act(event);
    this.#attended = events.length;
  }

  #act(event: FurnaceEvent): void {
    if (event.what === 'started') {
      const plan = PLANS.find((candidate) => candidate.name === event.plan);
      if (!plan) throw new Error(`no plan ${event.plan}`);
      const schedule = this.#shop.schedule({ name: plan.title, segments: [...plan.segments] });
      this.firingId = this.#shop.start(this.#furnaces[event.furnace], schedule).id;
    }
    if (event.what === 'segment' && isOut(event)) this.#outAt = event.atMs;
  }

  /** Once the piece is out of the furnace: confirm what the wall asks, then finish. */
  tend(now: number): void {
    const { watch, clock } = this.#shop;
    if (this.firingId === null || this.#outAt === null || this.finished || now < this.#outAt + LINGER_MS)
      return;
    const { judgement } = watch.firings.detail(this.firingId);
    if (judgement.waitsForConfirmation) {
      watch.firings.confirm(this.firingId, judgement.segmentIndex, clock.now());
      clock.advance(1000);
    }
    watch.finishFiring(this.firingId, undefined, false);
    this.finished = true;
  }
}

/** The last cooling is outside the furnace: the simulated operator has taken the piece out. */
function isOut(event: FurnaceEvent): boolean {
  const segments = PLANS.find((plan) => plan.name === event.plan)?.segments ?? [];
  const segment = segments[event.segmentIndex];
  return (
    segment?.kind === 'cool' && segment.medium !== 'furnace' && event.segmentIndex === segments.length - 1
  );
}

function furnish(shop: TestShop, options: ScenarioOptions): Furnaces {
  const forge = shop.archive.createFurnace(
    { name: 'Forge', kind: 'gas-forge', ratedCelsius: 1300, note: '' },
    MORNING,
  );
  const oven = shop.archive.createFurnace(
    { name: 'Oven', kind: 'electric-oven', ratedCelsius: 1200, note: '' },
    MORNING,
  );
  for (const name of ['forge-node', 'oven-node', 'air-node']) {
    shop.archive.saveNode({
      ...shop.archive.createNode({ name, label: '', note: '' }, MORNING),
      adopted: true,
    });
  }
  const add = (node: string, name: string, furnace: Furnace | null, more: object): void => {
    shop.archive.createChannel(
      {
        node,
        name,
        label: '',
        quantity: 'temperature',
        unit: null,
        role: 'chamber',
        furnaceId: furnace?.id ?? null,
        possibleLow: null,
        possibleHigh: null,
        staleAfterSeconds: 20,
        ...more,
      },
      MORNING,
    );
  };
  add('forge-node', 'chamber', forge, {});
  add('oven-node', 'chamber', oven, {});
  if (options.loads === true) {
    add('forge-node', 'load', forge, { role: 'load' });
    add('oven-node', 'load', oven, { role: 'load' });
  }
  add('forge-node', 'supply-pressure', forge, { quantity: 'pressure', role: 'supply-pressure' });
  add('forge-node', 'cylinder-mass', forge, { quantity: 'mass', role: 'cylinder-mass' });
  const monoxide = {
    quantity: 'carbon-monoxide',
    role: 'room-air',
    possibleHigh: options.fullScalePpm ?? null,
  };
  add('air-node', 'co', null, monoxide);
  if (options.fittings?.includes('second-co')) add('air-node', 'co-corner', null, monoxide);
  if (options.fittings?.includes('air-climate')) {
    add('air-node', 'co2', null, { quantity: 'carbon-dioxide', role: 'room-air' });
    add('air-node', 'o2', null, { quantity: 'oxygen', role: 'room-air' });
  }
  shop.watch.setupChanged();
  return { forge, oven };
}
