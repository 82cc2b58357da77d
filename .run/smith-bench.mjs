// The pieces of the simulated shop: what the simulator puts in the fire, as a smith would have them on the bench.
// Marks, steels and routes are invented.
const heat = (step, reminders = []) => ({ kind: 'heat', step, reminders });
const work = (name) => ({ kind: 'work', work: name });
const HARDEN_ON = [
  heat('harden', ['temper-soon-after-quench']),
  heat('temper'),
  heat('temper'),
  { kind: 'check', check: 'hardness' },
  work('finish'),
];
/** From the heat that the simulator starts with. */
const ROUTES = {
  anneal: [heat('full-anneal', ['lay-straight-in-ash']), work('shape'), heat('normalise'), ...HARDEN_ON],
  normalise: [heat('normalise'), work('grind'), ...HARDEN_ON],
  harden: HARDEN_ON,
  temper: HARDEN_ON.slice(1),
};
const STEPS = { anneal: 'full-anneal', normalise: 'normalise', harden: 'harden', temper: 'temper' };
const STEELS = {
  'axe blank': '5160',
  blade: '1084',
  hatchet: '1060',
  punch: 'O1',
  'kitchen knife': '1084',
  'paring knife': '1084',
  'hammer head': '1045',
  chisel: 'W1',
  knife: '1095',
};
/** Waiting on the bench, so that the list has something to propose. */
const WAITING = [
  { name: 'hammer head', kind: 'anneal', shape: 'bar', thicknessMm: 38, massKilograms: 1.1 },
  { name: 'cold chisel', kind: 'anneal', shape: 'bar', thicknessMm: 16, massKilograms: 0.45, steel: 'W1' },
  { name: 'drift', kind: 'normalise', shape: 'bar', thicknessMm: 20, massKilograms: 0.6, steel: '4140' },
];

/** Keeps the bench of the simulated shop through the public API. `call` asks the hub. */
export class Bench {
  #call;
  #pieces = [];

  constructor(call) {
    this.#call = call;
  }

  async furnish() {
    for (const { name, kind, steel, ...section } of WAITING) await this.#make(name, kind, section, steel);
  }

  /** The load of a firing: pieces that wait for this heat, and new ones where none does. */
  async loadFor(plan) {
    const entries = [];
    for (const { mark, shape, sectionMetres, massKilograms } of plan.load) {
      const section = { shape, thicknessMm: sectionMetres * 1000, massKilograms };
      const piece = (await this.#waiting(mark, plan.kind)) ?? (await this.#make(mark, plan.kind, section));
      const step = piece.route.find(({ done, kind }) => done === null && kind === 'heat');
      entries.push({ pieceId: piece.id, routeStepId: step?.id ?? null });
    }
    return entries;
  }

  /** A hardness reading after a temper, and a file before it: what a smith would note. */
  async note(plan, entries, at) {
    for (const [index, { pieceId }] of entries.entries()) {
      if (plan.kind === 'temper') {
        const readings = ['edge', 'middle', 'tang'].map((position, i) => ({
          position,
          value: 60.5 - index * 0.5 - i * 0.5,
        }));
        await this.#call('POST', `pieces/${pieceId}/observations`, {
          at,
          seen: { kind: 'hardness', scale: 'HRC', readings },
        });
      }
      if (plan.kind === 'harden') {
        await this.#call('POST', `pieces/${pieceId}/observations`, {
          at,
          seen: { kind: 'file', result: 'skates' },
        });
      }
    }
  }

  async #waiting(name, kind) {
    for (const known of this.#pieces.filter((piece) => piece.name === name)) {
      const piece = await this.#call('GET', `pieces/${known.id}`);
      const next = piece.route.find(({ done }) => done === null);
      if (next?.kind === 'heat' && next.step === STEPS[kind]) return piece;
    }
    return null;
  }

  async #make(name, kind, section, steel = STEELS[name] ?? '1084') {
    const initials = name
      .split(' ')
      .map((word) => word[0].toUpperCase())
      .join('');
    const number = this.#pieces.filter(({ mark }) => mark.startsWith(`${initials}-`)).length + 1;
    const piece = await this.#call('POST', 'pieces', {
      mark: `${initials}-${number}`,
      title: name,
      note: 'Invented.',
      steel: { grade: steel },
      section,
      route: ROUTES[kind],
    });
    this.#pieces.push({ id: piece.id, mark: piece.mark, name });
    return piece;
  }
}
