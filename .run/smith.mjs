// Plays the smith of the simulated shop through the public API: furnaces, channels, schedules, and the presses
// of Start, Confirm and Finish. Everything it makes up is invented.
import { PLANS } from '../dist/sensors-sim/plans.js';
import { Bench } from './smith-bench.mjs';

const FURNACES = {
  forge: {
    name: 'Gas forge',
    kind: 'gas-forge',
    ratedCelsius: 1300,
    note: 'Invented: one door.',
    gas: { boreMm: 0.889, dischargeCoefficient: 0.85, burners: 1, lowPascals: 6000, highPascals: 120_000 },
  },
  oven: { name: 'Oven', kind: 'electric-oven', ratedCelsius: 1150, note: 'Invented: 3 kW, side elements.' },
};
const temperature = { quantity: 'temperature' };
const CHANNELS = [
  {
    node: 'forge-node',
    name: 'chamber',
    label: 'Forge chamber',
    role: 'chamber',
    furnace: 'forge',
    ...temperature,
  },
  {
    node: 'forge-node',
    name: 'load',
    label: 'Steel in the forge',
    role: 'load',
    furnace: 'forge',
    ...temperature,
  },
  {
    node: 'forge-node',
    name: 'supply-pressure',
    label: 'Gas pressure',
    quantity: 'pressure',
    role: 'supply-pressure',
    furnace: 'forge',
  },
  {
    node: 'forge-node',
    name: 'cylinder-mass',
    label: 'Gas left',
    quantity: 'mass',
    role: 'cylinder-mass',
    furnace: 'forge',
  },
  {
    node: 'oven-node',
    name: 'chamber',
    label: 'Oven chamber',
    role: 'chamber',
    furnace: 'oven',
    ...temperature,
  },
  {
    node: 'oven-node',
    name: 'load',
    label: 'Steel in the oven',
    role: 'load',
    furnace: 'oven',
    ...temperature,
  },
  {
    node: 'air-node',
    name: 'co',
    label: 'Carbon monoxide',
    quantity: 'carbon-monoxide',
    role: 'room-air',
    furnace: null,
  },
];
/** Gloves off, walk to the wall. */
const HAND_MS = 8_000;
/** The past has arrived when the newest reading is no older than this. */
const FRESH_MS = 5_000;

export class Smith {
  #base;
  #furnaces = {};
  #schedules = {};
  #running = {};
  #atHome = false;
  #bench = new Bench((method, path, body) => this.#call(method, path, body));
  /** One thing after the other, as they were heard. */
  #work = Promise.resolve();

  constructor(base) {
    this.#base = base;
  }

  /** The shop is closing: what is under way now fails, and that is nobody's business. */
  goHome() {
    this.#atHome = true;
  }

  #complain(fault) {
    if (!this.#atHome) process.stderr.write(`The demonstration's smith could not: ${fault.message}\n`);
  }

  async #call(method, path, body) {
    const answer = await fetch(`${this.#base}/api/v1/${path}`, {
      method,
      headers: { 'content-type': 'application/json' },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${await answer.text()}`);
    return answer.status === 204 ? null : answer.json();
  }

  async furnish() {
    await this.#call('PATCH', 'shop', {
      name: 'Invented shop',
      gasPricePerKilogram: 3,
      currency: '€',
      gasCylinderKilograms: 9,
      gasTareKilograms: 0,
    });
    for (const [key, draft] of Object.entries(FURNACES))
      this.#furnaces[key] = await this.#call('POST', 'furnaces', draft);
    for (const { furnace, ...draft } of CHANNELS) {
      const furnaceId = furnace === null ? null : this.#furnaces[furnace].id;
      await this.#call('POST', 'channels', { ...draft, furnaceId });
    }
    for (const plan of PLANS) {
      const draft = { name: plan.title, segments: plan.segments };
      this.#schedules[plan.name] = await this.#call('POST', 'schedules', draft);
    }
    await this.#bench.furnish();
  }

  /** A line of the simulated shop's output. */
  hear(line) {
    const [, word, text] = /^(history-plan|event) (.*)$/.exec(line) ?? [];
    if (word === undefined) return;
    const said = JSON.parse(text);
    this.#work = this.#work
      .then(() => (word === 'event' ? this.#attend(said) : this.#recordPast(said)))
      .catch((fault) => this.#complain(fault));
  }

  async #recordPast({ past, live, nowMs }) {
    await this.#caughtUp(nowMs);
    for (const firing of past) {
      const last = (PLANS.find((plan) => plan.name === firing.plan)?.segments.length ?? 1) - 1;
      const outMs = firing.lastSegmentMs;
      // Who takes the steel out has left the soak, however long it was.
      const confirmations = [
        { segment: last - 1, at: outMs },
        { segment: last, at: outMs + HAND_MS },
      ];
      const endedAt = firing.endMs + 2 * HAND_MS;
      await this.#start(firing, { startedAt: firing.startMs, endedAt, confirmations });
    }
    for (const firing of live) {
      this.#running[firing.furnace] = await this.#start(firing, { startedAt: firing.startMs });
    }
  }

  /** A firing that starts before its thermocouples have spoken would begin with an alarm, and rightly. */
  async #caughtUp(nowMs) {
    for (let attempt = 0; attempt < 240 && !this.#atHome; attempt += 1) {
      const channels = await this.#call('GET', 'channels');
      const watched = channels.filter(
        ({ role, adopted }) => adopted && (role === 'chamber' || role === 'load'),
      );
      if (watched.every(({ latest }) => latest !== null && latest.at >= nowMs - FRESH_MS)) return;
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
  }

  async #start({ furnace, plan: name, course }, times) {
    const note = course === 'overshoot' ? 'Invented: the gas was turned down late.' : '';
    const plan = PLANS.find((each) => each.name === name);
    const pieces = plan === undefined ? [] : await this.#bench.loadFor(plan);
    const firing = await this.#call('POST', 'firings', {
      furnaceId: this.#furnaces[furnace].id,
      scheduleId: this.#schedules[name].id,
      note,
      pieces,
      ...times,
    });
    if (times.endedAt !== undefined && plan !== undefined)
      await this.#bench.note(plan, pieces, times.endedAt);
    return firing;
  }

  async #attend({ what, furnace, plan, segmentIndex }) {
    if (what === 'started') this.#running[furnace] = await this.#start({ furnace, plan }, {});
    const firing = this.#running[furnace];
    if (firing === undefined) return;
    if (what === 'segment' && this.#isOut(plan, segmentIndex)) {
      setTimeout(() => this.#takeOut(firing.id), HAND_MS);
    }
    // The thermocouple stays on the steel: the firing is over when that has cooled.
    if (what === 'ended') {
      delete this.#running[furnace];
      setTimeout(() => this.#finish(firing.id), 2 * HAND_MS);
    }
  }

  #isOut(name, index) {
    const segments = PLANS.find((plan) => plan.name === name)?.segments ?? [];
    return (
      index === segments.length - 1 &&
      segments[index]?.kind === 'cool' &&
      segments[index].medium !== 'furnace'
    );
  }

  async #takeOut(id) {
    try {
      const { status, judgement } = await this.#call('GET', `firings/${id}`);
      if (status !== 'running') return;
      if (judgement.waitsForConfirmation) {
        await this.#call('POST', `firings/${id}/confirm`, { segment: judgement.segmentIndex });
      }
    } catch (fault) {
      this.#complain(fault);
    }
  }

  async #finish(id) {
    try {
      const { status } = await this.#call('GET', `firings/${id}`);
      if (status === 'running') await this.#call('POST', `firings/${id}/finish`);
    } catch (fault) {
      this.#complain(fault);
    }
  }
}
