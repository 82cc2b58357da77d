import { describe, expect, it } from 'vitest';
import type { AlarmKind, AlarmPriority, AlarmState } from '../../hub/contract/alarm.ts';
import { MOST_FLASHES_A_SECOND } from '../../hub/contract/alarm-signal.ts';
import { lightState } from '../../hub/notify/light.ts';
import { MORNING } from '../harness/shop.ts';

function alarm(kind: AlarmKind, priority: AlarmPriority, state: AlarmState = 'unacknowledged') {
  return { kind, priority, state, title: kind };
}
const shown = (...alarms: ReturnType<typeof alarm>[]) => lightState(alarms, MORNING);

describe('the stack light', () => {
  it('is dark without an alarm, and never green', () => {
    expect(shown()).toMatchObject({
      state: 'quiet',
      colour: 'none',
      flashHertz: 0,
      sound: 'none',
      danger: 0,
    });
  });

  // IEC 60073 (secondary): red danger, yellow abnormal; flashing 1.4 to 2.8 Hz, slow 0.4 to 0.8 Hz.
  it('flashes red for a danger and slowly yellow for a warning, each with a sound of its own', () => {
    const danger = shown(alarm('unsafe-air-second', 'danger'));
    expect(danger).toMatchObject({ colour: 'red', meaning: 'danger', sound: 'danger', acknowledged: false });
    expect(danger.flashHertz).toBeGreaterThanOrEqual(1.4);
    expect(danger.flashHertz).toBeLessThanOrEqual(2.8);
    const warning = shown(alarm('overshoot', 'warning'));
    expect(warning).toMatchObject({ colour: 'yellow', meaning: 'abnormal', sound: 'warning' });
    expect(warning.flashHertz).toBeGreaterThanOrEqual(0.4);
    expect(warning.flashHertz).toBeLessThanOrEqual(0.8);
  });

  it('stands still and silent once somebody has seen it', () => {
    expect(shown(alarm('unsafe-air-second', 'danger', 'acknowledged'))).toMatchObject({
      colour: 'red',
      flashHertz: 0,
      sound: 'none',
      acknowledged: true,
    });
  });

  it('keeps the red of an acknowledged danger while a new warning flashes and sounds', () => {
    const both = shown(alarm('unsafe-air-second', 'danger', 'acknowledged'), alarm('overshoot', 'warning'));
    expect(both).toMatchObject({ colour: 'red', flashHertz: 0.6, sound: 'warning', danger: 1, warning: 1 });
    expect(both.words).toBe('unsafe-air-second');
  });

  it('calls not seeing by its name', () => {
    expect(shown(alarm('not-watching-air', 'danger'))).toMatchObject({
      state: 'blind',
      sound: 'blind',
      colour: 'red',
    });
  });

  it('shows nothing of what is set aside', () => {
    for (const state of ['shelved', 'suppressed', 'out-of-service'] as const)
      expect(shown(alarm('overshoot', 'warning', state)), state).toMatchObject({
        state: 'quiet',
        warning: 0,
      });
  });

  it('never flashes more than three times a second, and tells its sounds apart by rhythm', () => {
    const all = [
      shown(alarm('unsafe-air-second', 'danger')),
      shown(alarm('not-watching-air', 'danger')),
      shown(alarm('overshoot', 'warning')),
    ];
    for (const one of all) expect(one.flashHertz).toBeLessThanOrEqual(MOST_FLASHES_A_SECOND);
    // NUREG-0700 rev 2, 1.3.11-17: 1 to 8 pulses a second, a factor of two apart.
    const rates = all.map(({ spacingSeconds }) => 1 / spacingSeconds).sort((a, b) => a - b);
    const [slow = 0, middle = 0, fast = 0] = rates;
    expect(slow).toBeGreaterThanOrEqual(1);
    expect(fast).toBeLessThanOrEqual(8);
    expect(middle / slow).toBeGreaterThanOrEqual(2);
    expect(fast / middle).toBeGreaterThanOrEqual(2);
    for (const { pulses, pulseSeconds, spacingSeconds, everySeconds } of all) {
      expect(pulseSeconds).toBeLessThan(spacingSeconds);
      expect(pulses * spacingSeconds).toBeLessThan(everySeconds);
    }
  });
});
