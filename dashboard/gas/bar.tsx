/** One figure on a line from nothing to `end`: a band behind, the range, and the value as a stroke. */
export interface BarProps {
  /** Said to those who do not see it. */
  readonly label: string;
  /** All in shares of 100. */
  readonly band?: { readonly from: number; readonly to: number } | null;
  readonly range?: { readonly from: number; readonly to: number } | null;
  readonly value: number | null;
}

export function Bar({ label, band = null, range = null, value }: BarProps) {
  return (
    <svg class="gas-bar" viewBox="0 0 100 10" preserveAspectRatio="none" role="img" aria-label={label}>
      <rect class="gas-bar-ground" x="0" y="0" width="100" height="10" />
      {band && (
        <rect class="gas-bar-band" x={band.from} y="0" width={Math.max(0, band.to - band.from)} height="10" />
      )}
      {range && (
        <rect
          class="gas-bar-range"
          x={range.from}
          y="3"
          width={Math.max(0.6, range.to - range.from)}
          height="4"
        />
      )}
      {value !== null && (
        <rect class="gas-bar-value" x={Math.max(0, value - 0.4)} y="0" width="0.8" height="10" />
      )}
    </svg>
  );
}
