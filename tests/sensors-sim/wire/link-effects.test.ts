import { describe, expect, test } from 'vitest';
import { behaviour } from '../../../sensors-sim/behaviours/behaviour.ts';
import { isCutOff, LinkEffects } from '../../../sensors-sim/wire/link-effects.ts';

const MESSAGES = Array.from({ length: 300 }, (_, index) => String(index));

function sent(behaviours: Parameters<typeof behaviour>[0][], upTo = MESSAGES.length): string[] {
  const effects = new LinkEffects(behaviours.map(behaviour), 'forge-node', 5);
  return MESSAGES.slice(0, upTo).flatMap((message, second) => effects.pass(message, second));
}

describe('a poor network', () => {
  test('duplicates and reorders, and loses nothing', () => {
    const out = sent([{ name: 'duplicate-reorder', durationSeconds: 250 }]);
    expect(out.length).toBeGreaterThan(300 + 30);
    expect(out).not.toEqual([...out].sort((one, two) => Number(one) - Number(two)));
    expect([...new Set(out)].sort((one, two) => Number(one) - Number(two))).toEqual(MESSAGES);
  });

  test('lets a message be overtaken by three others at most', () => {
    const out = sent([{ name: 'duplicate-reorder', duplicateShare: 0, durationSeconds: 280 }]);
    const late = out.map((message, place) => place - Number(message));
    expect(Math.max(...late)).toBeLessThanOrEqual(3);
    expect(Math.max(...late)).toBeGreaterThan(0);
  });

  test('duplicates alone keep their order', () => {
    const out = sent([{ name: 'duplicate-reorder', reorderShare: 0 }]);
    expect(out).toEqual([...out].sort((one, two) => Number(one) - Number(two)));
    expect(out.length).toBeGreaterThan(300);
  });

  test('leaves another node alone', () => {
    expect(sent([{ name: 'duplicate-reorder', node: 'air-node' }])).toEqual(MESSAGES);
  });
});

test('a node is cut off for as long as the behaviour says', () => {
  const list = [behaviour({ name: 'node-drop', node: 'air-node', startSeconds: 10, durationSeconds: 20 })];
  expect([9, 10, 29, 30].map((second) => isCutOff(list, 'air-node', second))).toEqual([
    false,
    true,
    true,
    false,
  ]);
  expect(isCutOff(list, 'oven-node', 15)).toBe(false);
});
