import { MOST_SHELF_MINUTES, OutOfServiceRequest, ShelveRequest } from '../../hub/contract/alarm.ts';
import { type Faults, faultsOf, missing } from '../parts/faults.ts';

/** What is typed to put an alarm aside, and what it means. Pure. */

export type AsideWay = 'shelve' | 'take-out';

export interface AsideTexts {
  readonly way: AsideWay;
  readonly minutes: string;
  readonly by: string;
  readonly why: string;
}

export type AsideOrder =
  | { readonly way: 'shelve'; readonly body: { minutes: number; by: string; why: string } }
  | { readonly way: 'take-out'; readonly body: { by: string; why: string } };

/** The choices for a shelf, minutes; the last is the most that the hub takes. */
export const SHELF_MINUTES: readonly number[] = [5, 15, 30, 60, 120, 240, MOST_SHELF_MINUTES];

export function asideTexts(by: string): AsideTexts {
  return { way: 'shelve', minutes: '15', by, why: '' };
}

/** The order to send, or the faults by field. The contract's own schemas decide. */
export function checkAside({ way, minutes, by, why }: AsideTexts): {
  readonly value: AsideOrder | null;
  readonly faults: Faults;
} {
  const said = { by: by.trim(), why: why.trim() };
  if (way === 'take-out') {
    const parsed = OutOfServiceRequest.safeParse(said);
    if (parsed.success) return { value: { way, body: parsed.data }, faults: {} };
    return { value: null, faults: { ...faultsOf(parsed.error.issues), ...missing(said) } };
  }
  const body = { minutes: Number(minutes), ...said };
  const parsed = ShelveRequest.safeParse(body);
  if (parsed.success) return { value: { way, body }, faults: {} };
  return { value: null, faults: { ...faultsOf(parsed.error.issues), ...missing(said) } };
}
