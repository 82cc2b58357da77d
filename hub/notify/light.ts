import type { Alarm } from '../contract/alarm.ts';
import { isBlindness, isPutAside } from '../contract/alarm-groups.ts';
import { ALARM_SIGNALS, type SoundName, signalOf } from '../contract/alarm-signal.ts';
import type { LightState } from '../contract/notify-light.ts';

/** What a stack light or siren shows and sounds: pure. Devices need no more than one of its fields. */

type Pattern = Pick<
  LightState,
  'sound' | 'soundWords' | 'pulses' | 'pulseSeconds' | 'spacingSeconds' | 'everySeconds'
>;

/**
 * Told apart by rhythm alone; urgency by ISO 11429 (from memory): danger rapid and broken, caution slow and even. At
 * most three pulse rates from 1 to 8 a second, a factor of two apart (NUREG-0700 rev 2, 1.3.11-17): 8, 3.6 and 1.6.
 */
const PATTERNS: Readonly<Record<SoundName | 'none', Pattern>> = {
  danger: {
    sound: 'danger',
    soundWords: 'danger: rapid bursts of four',
    pulses: 4,
    pulseSeconds: 0.18,
    spacingSeconds: 0.28,
    everySeconds: 1.5,
  },
  warning: {
    sound: 'warning',
    soundWords: 'caution: two long notes, then a pause',
    pulses: 2,
    pulseSeconds: 0.4,
    spacingSeconds: 0.62,
    everySeconds: 7,
  },
  blind: {
    sound: 'blind',
    soundWords: 'danger: a trill, then a pause',
    pulses: 6,
    pulseSeconds: 0.075,
    spacingSeconds: 0.125,
    everySeconds: 4.4,
  },
  none: {
    sound: 'none',
    soundWords: 'no sound',
    pulses: 0,
    pulseSeconds: 0,
    spacingSeconds: 0,
    everySeconds: 0,
  },
};

type LitAlarm = Pick<Alarm, 'kind' | 'priority' | 'state' | 'title'>;

/**
 * `alarms`: everything that is not normal, loudest first. Where one is new and another acknowledged, the light flashes
 * for the new one, but never in a quieter colour than the loudest one asks for. `at` in epoch ms.
 */
export function lightState(alarms: readonly LitAlarm[], at: number): LightState {
  const open = alarms.filter((alarm) => alarm.state !== 'normal' && !isPutAside(alarm));
  const isDanger = open.some(({ priority }) => priority === 'danger');
  const [lead] = open.filter(({ priority }) => !isDanger || priority === 'danger');
  if (lead === undefined) return { ...dark(at), ...PATTERNS.none };
  const { colour, meaning } = ALARM_SIGNALS[lead.priority];
  const shown = open.map(signalOf);
  // A danger that flashes is faster than a warning: the light has one rate, so it takes the faster.
  const [flash] = shown.flatMap((one) => one.flash ?? []).sort((a, b) => b.hertz - a.hertz);
  const sounds = shown.flatMap(({ sound }) => sound ?? []);
  const sound = (['danger', 'blind', 'warning'] as const).find((one) => sounds.includes(one)) ?? 'none';
  return {
    at,
    state: open.some(isBlindness) ? 'blind' : lead.priority,
    acknowledged: flash === undefined,
    colour,
    meaning,
    flashHertz: flash?.hertz ?? 0,
    flashDutyShare: flash?.dutyShare ?? 1,
    ...PATTERNS[sound],
    danger: open.filter(({ priority }) => priority === 'danger').length,
    warning: open.filter(({ priority }) => priority === 'warning').length,
    words: lead.title,
  };
}

/** No alarm is open: dark, never green. Green would say that all is well, which nobody knows. */
function dark(at: number) {
  return {
    at,
    state: 'quiet',
    acknowledged: true,
    colour: 'none',
    meaning: 'none',
    flashHertz: 0,
    flashDutyShare: 0,
    danger: 0,
    warning: 0,
    words: 'No alarm',
  } as const;
}
