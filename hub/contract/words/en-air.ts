import { caution } from './en-caution.ts';
import type { AirNoticeCode } from './types.ts';

/** What numbers about the air do not tell. Nothing here, and nothing anywhere else, says that air is safe. */
const NOTICES: Readonly<Record<AirNoticeCode, string>> = {
  'not-a-safety-device': caution,
  'no-claim': 'Not above a limit is no claim that the air is good. A limit is a ceiling on risk.',
  'where-it-hangs':
    'A sensor measures where it hangs. The air at the mouth of the furnace, or where you breathe, may be worse.',
  'gaps-are-held': 'Where nothing was measured the last level stands. Nobody knows what it was.',
  'estimate-for-an-adult':
    'Carboxyhaemoglobin is an estimate for a typical adult, not a medical statement. Who feels ill goes out and calls for help, whatever the figure is.',
  'alarm-is-no-evidence':
    'A household CO alarm may stay silent for hours above workplace limits. Heed it when it sounds; its silence is no evidence.',
  'may-be-hydrogen':
    'CO cells also answer to hydrogen, which rich flames make: a reading may be partly that.',
  'holds-for-that-hour':
    'Air changes hold for the weather, doors and fans of that hour. Never raise carbon monoxide for a test.',
};

/** One sentence about what is not known. */
export function airNotice(code: AirNoticeCode): string {
  return NOTICES[code];
}
