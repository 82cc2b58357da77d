import type { ObservationDraft } from '../../hub/contract/observation.ts';

/** What was seen, as a person sends it. */
export type Seen = ObservationDraft['seen'];

/** What every form of an observation is given. */
export interface SeenFormProps {
  readonly busy: boolean;
  /** Why the hub did not take it; null: it did, or was not asked. */
  readonly refusal: unknown;
  readonly send: (seen: Seen) => void;
}
