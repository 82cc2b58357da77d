/** Ties numbers to their units, so that "860" and "°C" never stand on two lines. */
export function tied(text: string): string {
  return text.replaceAll(/(\d) (?=°|min\b|h\b|s\b|\/)/g, '$1\u00a0');
}
