// Plays the smith of the simulated shop through the public API: furnaces, channels, schedules, and the presses
// of Start, Confirm and Finish. Everything it makes up is invented.
import { PLANS } from '../dist/sensors-sim/plans.js';

const FURNACES = {
  forge: {
    name: 'Gas forge',
    kind: 'gas-forge',
    ratedCelsius: 1300,
    note: 'Invented: two burners, one door.',
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
    role: 'other',
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
    role: 'other',
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

export class Smith {
  #base;
  #furnaces = {};
  #schedules = {};
  #running = {};
  #atHome = false;
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
    await this.#call('PATCH', 'shop', { name: 'Invented shop' });
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

  async #recordPast({ past, live }) {
    for (const firing of past) {
      const last = (PLANS.find((plan) => plan.name === firing.plan)?.segments.length ?? 1) - 1;
      const outMs = firing.lastSegmentMs;
      const confirmations = [{ segment: last, at: outMs + HAND_MS }];
      await this.#start(firing, { startedAt: firing.startMs, endedAt: outMs + 2 * HAND_MS, confirmations });
    }
    for (const firing of live) {
      this.#running[firing.furnace] = await this.#start(firing, { startedAt: firing.startMs });
    }
  }

  #start({ furnace, plan, course }, times) {
    const note = course === 'overshoot' ? 'Invented: the gas was turned down late.' : '';
    return this.#call('POST', 'firings', {
      furnaceId: this.#furnaces[furnace].id,
      scheduleId: this.#schedules[plan].id,
      note,
      ...times,
    });
  }

  async #attend({ what, furnace, plan, segmentIndex }) {
    if (what === 'started') this.#running[furnace] = await this.#start({ furnace, plan }, {});
    const out = what === 'segment' && this.#isOut(plan, segmentIndex);
    const firing = this.#running[furnace];
    if (firing && (out || what === 'ended')) {
      delete this.#running[furnace];
      setTimeout(() => this.#takeOut(firing.id), HAND_MS);
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
      await this.#call('POST', `firings/${id}/finish`);
    } catch (fault) {
      this.#complain(fault);
    }
  }
}
