/**
 * The forecast as a judge runs it: one reading a step, one outlook a tick.
 * Run with `npx vitest bench --run tests/bench/forecast.bench.ts`. Figures only, no assertion.
 */
import { bench, describe } from 'vitest';
import { crossing, OVERSHOOT_WARNING } from '../../hub/physics/forecast/crossing.ts';
import { type Forecaster, observe, startForecaster } from '../../hub/physics/forecast/forecaster.ts';
import { CHAMBER_PROBE } from '../../hub/physics/forecast/furnace-model.ts';
import { outlook, outlookAt } from '../../hub/physics/forecast/outlook.ts';
import { soakOutlook } from '../../hub/physics/forecast/soak-outlook.ts';

function heating(): Forecaster {
  let forecaster = startForecaster(CHAMBER_PROBE, { atMs: 0, celsius: 600 });
  for (let second = 1; second <= 600; second++) {
    forecaster = observe(forecaster, { atMs: second * 1000, celsius: 600 + 0.3 * second });
  }
  return forecaster;
}

const forecaster = heating();
const { atMs } = forecaster;

describe('a reading taken in', () => {
  bench('a second later', () => void observe(forecaster, { atMs: atMs + 1000, celsius: 780.3 }));
  let odd = 0;
  bench('at an interval never seen before', () => {
    odd += 1;
    observe(forecaster, { atMs: atMs + 900 + (odd % 5000) * 0.01, celsius: 780.3 });
  });
  bench(
    'after ten minutes without any',
    () => void observe(forecaster, { atMs: atMs + 600_000, celsius: 900 }),
  );
});

describe('a question', () => {
  bench('one instant, a minute on', () => void outlookAt(forecaster, atMs + 60_000));
  bench('the curve of fifteen minutes, 57 points', () => void outlook(forecaster, 900));
  bench('an overshoot within two minutes', () => {
    const { withinSeconds } = OVERSHOOT_WARNING;
    crossing(forecaster, { limitCelsius: 875, direction: 'rising', withinSeconds });
  });
  bench('start and end of a soak', () => void soakOutlook(forecaster, { low: 845, high: 875 }, 900));
});
