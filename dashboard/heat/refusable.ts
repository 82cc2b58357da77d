import { ApiError } from '../api/error.ts';

export type Refusable<T> =
  | { readonly value: T; readonly why: ''; readonly code: '' }
  | { readonly value: null; readonly why: string; readonly code: string };

/** A refusal of the hub stands where its answer would stand; a hub that does not answer fails the whole. */
export async function refusable<T>(answer: Promise<T>): Promise<Refusable<T>> {
  try {
    return { value: await answer, why: '', code: '' };
  } catch (fault) {
    if (!(fault instanceof ApiError) || fault.kind !== 'refused') throw fault;
    return { value: null, why: fault.message, code: fault.code };
  }
}
