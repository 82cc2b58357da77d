import { describe, expect, test } from 'vitest';
import { ForgeOperator, HEAT_UP_PASCALS } from '../../../sensors-sim/operators/forge-operator.ts';
import { seededRandom } from '../../../sensors-sim/random.ts';

function lit(): ForgeOperator {
  const smith = new ForgeOperator(seededRandom(1, 'smith'));
  smith.light();
  return smith;
}

/** Settings while the chamber climbs at a steady rate from one temperature to another. */
function climb(smith: ForgeOperator, from: number, perSecond: number, seconds: number, slip: number | null) {
  return Array.from({ length: seconds }, (_, second) =>
    smith.decide({
      nowSeconds: second,
      targetCelsius: 860,
      chamberCelsius: from + perSecond * second,
      distractedUntilExcessCelsius: slip,
    }),
  );
}

describe('a smith at the forge', () => {
  test('heats at full fire far from the target and turns down before it is reached', () => {
    const smith = lit();
    const settings = climb(smith, 600, 0.4, 620, null);
    expect(settings.slice(0, 200).every((set) => set === HEAT_UP_PASCALS)).toBe(true);
    expect(settings.at(-1)).toBeLessThan(HEAT_UP_PASCALS / 2);
  });

  test('does not touch the regulator between two looks', () => {
    const settings = climb(lit(), 800, 0.2, 300, null);
    const changes = settings.filter((set, second) => second > 0 && set !== settings[second - 1]).length;
    expect(changes).toBeGreaterThan(3);
    expect(changes).toBeLessThanOrEqual(300 / 11);
  });

  test('whose mind is elsewhere leaves full fire on until far above the target, then wakes up', () => {
    const smith = lit();
    const settings = climb(smith, 840, 0.4, 200, 40);
    const above = settings.findIndex((set) => set < HEAT_UP_PASCALS);
    expect(840 + 0.4 * above).toBeGreaterThanOrEqual(900);
    expect(settings.at(-1)).toBeLessThan(HEAT_UP_PASCALS / 4);
  });
});
