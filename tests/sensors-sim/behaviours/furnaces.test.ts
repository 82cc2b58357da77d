/** What people and furnaces do, in the truth and at the thermocouples. */
import { describe, expect, test } from 'vitest';
import type { BehaviourInput } from '../../../sensors-sim/behaviours/behaviour.ts';
import {
  FORGE_ANNEAL,
  FORGE_ANNEAL_THICK,
  OVEN_HARDEN,
  OVEN_HARDEN_THICK,
} from '../../../sensors-sim/plans.ts';
import { type Fired, fire } from '../fire.ts';

const outAt = ({ events }: Fired) => events.find((each) => each.segmentIndex === 2)?.atMs ?? Number.NaN;
const soakAt = ({ events }: Fired) => events.find((each) => each.segmentIndex === 1)?.atMs ?? Number.NaN;
const labelled = ({ labels }: Fired, what: string) => labels.filter((each) => each.what === what);
const coreSoak = ({ truth }: Fired) => Math.max(...truth.map((each) => each.forge.coreSoakSeconds));

describe('a load of two sections', () => {
  const thick = (...behaviours: readonly BehaviourInput[]) =>
    fire({ plan: FORGE_ANNEAL_THICK, minutes: 60, behaviours });

  test('is known from inside: the thick core is behind the thin one, and both arrive', () => {
    const fired = thick();
    const { forge } = fired.at(24);
    expect(forge.pieces.map(({ mark }) => mark)).toEqual(['hammer head', 'knife']);
    expect(forge.thinnestCoreCelsius - forge.thickestCoreCelsius).toBeGreaterThan(50);
    expect(forge.chamberCelsius).toBeGreaterThan(forge.thickestCoreCelsius + 80);
    expect(labelled(fired, 'core-arrived')).toHaveLength(1);
    expect(coreSoak(fired)).toBeGreaterThanOrEqual(15 * 60);
  });

  test('stands at its transformation for minutes, and the load thermocouple shows it', () => {
    const read = thick()
      .readings('forge-node', 'load')
      .filter(({ value }) => value > 715 && value < 755);
    const arrest = (read.at(-1)?.seconds ?? 0) - (read[0]?.seconds ?? 0);
    expect(arrest).toBeGreaterThan(180);
  });

  test('soaked by the air alone comes out before its core has had its time', () => {
    const [byAir, byPiece] = [thick({ name: 'goes-by-air' }), thick()];
    expect(outAt(byAir)).toBeLessThan(outAt(byPiece) - 5 * 60_000);
    expect(coreSoak(byAir)).toBeLessThan(0.6 * 15 * 60);
  });

  test('taken out early has soaked only so long', () => {
    const fired = fire({
      plan: FORGE_ANNEAL,
      minutes: 60,
      behaviours: [{ name: 'early-stop', soakShare: 0.3 }],
    });
    expect((outAt(fired) - soakAt(fired)) / 60_000).toBeCloseTo(0.3 * 15 + 0.75, 0);
  });
});

describe('a slow operator', () => {
  test('takes the steel out that much later', () => {
    const slow = fire({ plan: OVEN_HARDEN, minutes: 125, every: 10, habits: { reactionSeconds: 120 } });
    const steady = fire({ plan: OVEN_HARDEN, minutes: 125, every: 10 });
    // Both the move into the soak and the way out of it wait for the hand.
    expect((outAt(slow) - outAt(steady)) / 1000).toBeCloseTo(240, -1);
  });

  test('at the forge turns the gas down late and overshoots, which a steady one does not', () => {
    const slow = fire({
      plan: FORGE_ANNEAL,
      minutes: 50,
      behaviours: [{ name: 'slow-operator', reactionSeconds: 300 }],
    });
    const steady = fire({ plan: FORGE_ANNEAL, minutes: 50 });
    expect(labelled(slow, 'overshoot-began').length).toBeGreaterThan(0);
    expect(labelled(steady, 'overshoot-began')).toEqual([]);
  });
});

describe('an uneven oven', () => {
  const oven = (...behaviours: readonly BehaviourInput[]) =>
    fire({ plan: OVEN_HARDEN_THICK, minutes: 135, every: 10, behaviours });
  const inSoak = (fired: Fired, channel: string) => {
    const read = fired.readings('oven-node', channel).filter(({ seconds }) => seconds > 125 * 60);
    return read.reduce((sum, { value }) => sum + value, 0) / read.length;
  };

  test('is a few degrees colder by the door, at the thermocouple there and in the piece that lies there', () => {
    const fired = oven();
    const drop = inSoak(fired, 'chamber') - inSoak(fired, 'chamber-front');
    expect(drop).toBeGreaterThan(2);
    expect(drop).toBeLessThan(8);
    expect(inSoak(fired, 'chamber-back')).toBeGreaterThan(inSoak(fired, 'chamber'));
    const knife = fired.at(133).oven.pieces.find(({ mark }) => mark === 'knife');
    expect(knife?.coreCelsius).toBeLessThan(fired.at(133).oven.chamberCelsius - 2);
  });

  test('with a worn seal leaves the corner outside the tolerance while the middle holds', () => {
    const fired = oven({ name: 'uneven-oven', factor: 4 });
    expect(inSoak(fired, 'chamber')).toBeGreaterThan(815 - 8);
    expect(inSoak(fired, 'chamber-front')).toBeLessThan(815 - 12);
  });
});

describe('a load thermocouple that has slipped off', () => {
  test('shows the piece hotter than it is on the way up', () => {
    const behaviours: BehaviourInput[] = [{ name: 'loose-load-probe' }];
    const [loose, tight] = [behaviours, []].map((each) =>
      fire({ plan: FORGE_ANNEAL, minutes: 20, behaviours: each }),
    );
    const off = (fired: Fired | undefined) =>
      (fired?.readings('forge-node', 'load').at(-1)?.value ?? 0) -
      (fired?.truth.at(-1)?.forge.loadCelsius ?? 0);
    expect(Math.abs(off(tight))).toBeLessThan(8);
    expect(off(loose)).toBeGreaterThan(30);
  });
});

describe('the labels of the truth', () => {
  test('say when a late operator’s firing went over, where, and when it came back', () => {
    const fired = fire({ plan: FORGE_ANNEAL, minutes: 50, operator: 'late' });
    const [began] = labelled(fired, 'overshoot-began');
    const limit = 860 + 15;
    expect(began).toMatchObject({ furnace: 'forge', limitCelsius: limit });
    const before = fired.truth.filter((each) => each.atMs < (began?.atMs ?? 0));
    const heats = before.map(({ forge }) => Math.max(forge.chamberCelsius, forge.loadCelsius));
    expect(Math.max(...heats)).toBeLessThanOrEqual(limit);
    expect(labelled(fired, 'overshoot-ended')).toHaveLength(labelled(fired, 'overshoot-began').length);
  });

  test('say when a behaviour began and ended', () => {
    const behaviours: BehaviourInput[] = [{ name: 'frozen-sensor', startSeconds: 60, durationSeconds: 60 }];
    const { labels, truth } = fire({ plan: null, minutes: 5, every: 1, behaviours });
    const start = (truth[0]?.atMs ?? 0) - 1000;
    expect(labels.map(({ what, atMs }) => [what, (atMs - start) / 1000])).toEqual([
      ['behaviour-began', 61],
      ['behaviour-ended', 121],
    ]);
  });
});
