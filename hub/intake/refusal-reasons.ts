/**
 * Why a payload, or a part of one, was not taken in. The codes are stable: they are counted by node, kept in the
 * archive and shown, so a code may be added but never renamed. The archive adds those that only it can find (see
 * `commitIntake` in hub/archive/types.ts).
 */
export const REFUSAL_REASONS = [
  'payload-too-large',
  'packet-too-large',
  'unknown-topic',
  'empty-payload',
  'bad-encoding',
  'bad-json',
  'not-a-pack',
  'too-many-entries',
  'unsupported-version',
  'must-understand',
  'bad-entry',
  'bad-base-field',
  'bad-name',
  'bad-unit-field',
  'bad-time',
  'bad-value',
  'several-values',
  'no-value',
  'not-numeric',
  'not-finite',
  'unit-missing',
  'unknown-unit',
  'wrong-unit',
  'value-not-found',
  'bad-status',
  'retained-without-time',
  'future-timestamp',
  'no-cold-junction',
  'outside-table',
  'computed-here',
  'internal-fault',
] as const;
export type RefusalReason = (typeof REFUSAL_REASONS)[number];
