import { describe, expect, test } from 'vitest';
import { integrateOde } from './runge-kutta.ts';

describe('the integration that the closed forms are held against', () => {
  test('follows a decay, a driven line and a logistic curve to ten digits', () => {
    expect(integrateOde((_, x) => -x, 1, [0, 3])).toBeCloseTo(Math.exp(-3), 10);
    expect(integrateOde((t) => Math.cos(t), 0, [0, 2])).toBeCloseTo(Math.sin(2), 10);
    expect(integrateOde((_, x) => x * (1 - x), 0.1, [0, 5])).toBeCloseTo(1 / (1 + 9 * Math.exp(-5)), 10);
  });
});
