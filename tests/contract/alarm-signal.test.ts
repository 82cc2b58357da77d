import { describe, expect, it } from 'vitest';
import { SOUND_PATTERNS } from '../../dashboard/wall/sound-pattern.ts';
import { ALARM_STATES, AlarmPriority } from '../../hub/contract/alarm.ts';
import { ALARM_SIGNALS, MOST_FLASHES_A_SECOND, signalOf } from '../../hub/contract/alarm-signal.ts';

describe('what an alarm looks and sounds like', () => {
  // SOURCE: IEC 60073 (secondary): red danger, yellow abnormal.
  it('has the colour of its meaning', () => {
    expect(ALARM_SIGNALS.danger).toMatchObject({ colour: 'red', meaning: 'danger' });
    expect(ALARM_SIGNALS.warning).toMatchObject({ colour: 'yellow', meaning: 'abnormal' });
  });

  // SOURCE: IEC 60073 (secondary): 1.4 to 2.8 Hz normal, 0.4 to 0.8 Hz slow; WCAG 2.2, 2.3.1: three a second.
  it('flashes inside the bounds: danger at the normal rate, warning at the slow one, never over three a second', () => {
    const { danger, warning } = ALARM_SIGNALS;
    expect(danger.flash.hertz).toBeGreaterThanOrEqual(1.4);
    expect(danger.flash.hertz).toBeLessThanOrEqual(2.8);
    expect(warning.flash.hertz).toBeGreaterThanOrEqual(0.4);
    expect(warning.flash.hertz).toBeLessThanOrEqual(0.8);
    for (const priority of AlarmPriority.options) {
      expect(ALARM_SIGNALS[priority].flash.hertz).toBeLessThanOrEqual(MOST_FLASHES_A_SECOND);
    }
  });

  // SOURCE: ISA-18.2-2016 (secondary), as in the table of states: sound in B (and latched unseen), never in C to G.
  it('sounds until someone has seen it, and never once it has returned or is set aside', () => {
    const sounding = ALARM_STATES.filter(
      (state) => signalOf({ kind: 'overshoot', priority: 'warning', state }).sound !== null,
    );
    expect(sounding).toEqual(['unacknowledged', 'latched-unacknowledged']);
  });

  it('is dark while it is set aside, steady once seen', () => {
    const shown = (state: (typeof ALARM_STATES)[number]) =>
      signalOf({ kind: 'unsafe-air-second', priority: 'danger', state });
    expect(shown('shelved')).toEqual({ colour: null, flash: null, sound: null });
    expect(shown('acknowledged')).toEqual({ colour: 'red', flash: null, sound: null });
    expect(shown('unacknowledged')).toMatchObject({ colour: 'red', sound: 'danger' });
  });

  it('names only sounds that there are, blindness with one of its own', () => {
    const sound = signalOf({ kind: 'not-watching-air', priority: 'danger', state: 'unacknowledged' }).sound;
    expect(sound).toBe('blind');
    for (const name of ['danger', 'warning', 'blind'] as const) expect(SOUND_PATTERNS[name]).toBeDefined();
  });
});
