import type { Alarm, AlarmPriority } from './alarm.ts';
import { isBlindness } from './alarm-groups.ts';

/**
 * What an alarm looks and sounds like by meaning, for screens, stack lights and sirens. Colours by IEC 60073
 * (secondary): red danger, yellow abnormal. Sounds by the urgency of ISO 11429 (from memory): danger, caution. Rates
 * of flashing by IEC 60073 (secondary): normal 1.4 to 2.8 Hz, slow 0.4 to 0.8 Hz; both stay under the three flashes
 * in any second of WCAG 2.2, 2.3.1. A symbol or a light flashes, never text (CRIOP 2003, 3.5.8.2). Words always
 * stand beside both.
 */

/** Names of the sound patterns; each is told from the others by its rhythm alone. */
export type SoundName = 'danger' | 'warning' | 'blind';

export interface AlarmSignal {
  readonly colour: 'red' | 'yellow';
  /** IEC 60073. */
  readonly meaning: 'danger' | 'abnormal';
  /** ISO 11429. */
  readonly urgency: 'danger' | 'caution';
  /** While nobody has acknowledged it. */
  readonly flash: Flash;
}

export interface Flash {
  readonly hertz: number;
  /** Share of a period that the light is on. */
  readonly dutyShare: number;
}

/** WCAG 2.2, success criterion 2.3.1. */
export const MOST_FLASHES_A_SECOND = 3;

export const ALARM_SIGNALS: Readonly<Record<AlarmPriority, AlarmSignal>> = {
  danger: { colour: 'red', meaning: 'danger', urgency: 'danger', flash: { hertz: 2, dutyShare: 0.5 } },
  warning: {
    colour: 'yellow',
    meaning: 'abnormal',
    urgency: 'caution',
    flash: { hertz: 0.6, dutyShare: 0.5 },
  },
};

export interface ShownSignal {
  readonly colour: AlarmSignal['colour'] | null;
  /** Null: steady, or dark where there is no colour. */
  readonly flash: Flash | null;
  readonly sound: SoundName | null;
}

const DARK: ShownSignal = { colour: null, flash: null, sound: null };

/**
 * What one alarm shows and sounds now (ISA-18.2-2016, secondary): sound and flashing until someone has seen it, then
 * steady; no sound once it has returned; nothing announced while it is set aside.
 */
export function signalOf({ kind, priority, state }: Pick<Alarm, 'kind' | 'priority' | 'state'>): ShownSignal {
  const { colour, flash } = ALARM_SIGNALS[priority];
  switch (state) {
    case 'unacknowledged':
    case 'latched-unacknowledged':
      return { colour, flash, sound: isBlindness({ kind }) ? 'blind' : priority };
    case 'returned-unacknowledged':
      return { colour, flash, sound: null };
    case 'acknowledged':
    case 'latched-acknowledged':
      return { colour, flash: null, sound: null };
    case 'normal':
    case 'shelved':
    case 'suppressed':
    case 'out-of-service':
      return DARK;
    default:
      return state satisfies never;
  }
}
