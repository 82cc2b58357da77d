import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CONTRAST_RATIOS } from '../../reference/character-height.ts';

/** WCAG 2.2: relative luminance and contrast ratio of two sRGB colours written `#rrggbb`. */
function contrast(one: string, other: string): number {
  const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(hex: string): number {
  const linear = (at: number) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * linear(1) + 0.7152 * linear(3) + 0.0722 * linear(5);
}

const css = readFileSync(new URL('../../../dashboard/theme/tokens.css', import.meta.url), 'utf8');

function colours(selector: string): Map<string, string> {
  const start = css.indexOf(`${selector} {`);
  const block = css.slice(start, css.indexOf('}', start));
  return new Map(
    [...block.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name = '', hex = '']) => [name, hex]),
  );
}

const SCHEMES = { day: colours(':root'), night: colours(':root[data-scheme="night"]') };
/** Text of any size: 4.5:1 (WCAG 1.4.3). */
const TEXT = [
  ['ink', 'ground'],
  ['ink', 'ground-2'],
  ['ink', 'ground-3'],
  ['ink-2', 'ground'],
  ['ink-2', 'ground-3'],
  ['stale', 'ground'],
  ['on-danger', 'danger'],
  ['on-warning', 'warning'],
  ['ground-3', 'ink'],
] as const;
/** Parts of graphics and edges of controls: 3:1 (WCAG 1.4.11). */
const GRAPHICS = [
  ['line', 'ground'],
  ['line', 'ground-3'],
  ['danger', 'ground'],
  ['ink', 'band'],
  ['ink-2', 'band'],
] as const;

describe('contrast', () => {
  it.each(CONTRAST_RATIOS)('of %s on %s is %d', (one, other, ratio) => {
    expect(contrast(one.toLowerCase(), other.toLowerCase())).toBeCloseTo(ratio, 2);
  });

  describe.each(['day', 'night'] as const)('in the %s scheme', (name) => {
    const scheme = SCHEMES[name];
    const ratio = (one: string, other: string) => contrast(scheme.get(one) ?? '', scheme.get(other) ?? '');

    it('names every colour', () => {
      expect(scheme.size).toBeGreaterThanOrEqual(13);
    });

    it.each(TEXT)('lets %s be read on %s', (one, other) => {
      expect(ratio(one, other)).toBeGreaterThanOrEqual(4.5);
    });

    it.each(GRAPHICS)('lets %s be seen on %s', (one, other) => {
      expect(ratio(one, other)).toBeGreaterThanOrEqual(3);
    });
  });
});
