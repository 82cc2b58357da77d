import { z } from 'zod';
import { EpochMs } from './reading.ts';

/** What goes out over MQTT for a stack light, a siren, and whoever watches the hub. */

/** Meaning by IEC 60073, sound by ISO 11429; words always beside both. Retained on `<prefix>/light`. */
export const LightState = z
  .object({
    at: EpochMs,
    state: z.enum(['quiet', 'warning', 'danger', 'blind']),
    acknowledged: z.boolean().describe('True: somebody has seen every open alarm'),
    colour: z.enum(['red', 'yellow', 'none']),
    meaning: z.enum(['danger', 'abnormal', 'none']),
    flashHertz: z.number().describe('0: steady'),
    flashDutyShare: z.number(),
    sound: z.enum(['danger', 'warning', 'blind', 'none']),
    soundWords: z.string(),
    pulses: z.int().describe('Pulses of one pattern; 0: silence'),
    pulseSeconds: z.number(),
    spacingSeconds: z.number().describe('From the start of one pulse to the start of the next'),
    everySeconds: z.number().describe('The pattern begins again after this'),
    danger: z.int().describe('Open alarms of that priority that are announced'),
    warning: z.int(),
    words: z.string(),
  })
  .meta({ id: 'LightState' });
export type LightState = z.infer<typeof LightState>;

export const Heartbeat = z
  .object({
    at: EpochMs,
    everySeconds: z.number(),
    deadAfterSeconds: z.number().describe('Without another within this time the hub counts as dead'),
  })
  .meta({ id: 'NotifyHeartbeat' });
export type Heartbeat = z.infer<typeof Heartbeat>;
