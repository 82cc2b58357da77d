/** SenML version: a bitmap since RFC 9100. 10 is RFC 8428 (bits 1 and 3); bit 4 is secondary units. */
export const SENML_BASE_VERSION = 10;
export const SENML_UNDERSTOOD_VERSION = 26;

/**
 * Whether a reader that implements `implemented` may use a pack of version `pack`.
 *
 * RFC 9100: every feature bit of the pack must be understood. Versions below 10 are read as plain RFC 8428: that
 * RFC forbids only versions greater than the understood one, and its own example (5.1.2) says 5, although 5 is
 * not a bitmap RFC 9100 would make. So 1 to 10 are legacy; above 10 both base bits must be set as well.
 */
export function understandsVersion(implemented: number, pack: number): boolean {
  if (!Number.isInteger(pack) || pack < 1 || pack > Number.MAX_SAFE_INTEGER) return false;
  if (pack <= SENML_BASE_VERSION) return true;
  const bits = BigInt(pack);
  const base = BigInt(SENML_BASE_VERSION);
  return (bits & ~BigInt(implemented)) === 0n && (bits & base) === base;
}
