import { describe, expect, it } from 'vitest';
import {
  CAP_HEIGHT_EM,
  capHeightMillimetres,
  capHeightPx,
  fontSizePx,
  pixelPitchMillimetres,
  readableMetres,
  touchPx,
} from '../../../dashboard/theme/legibility.ts';
import { CAP_HEIGHT_MILLIMETRES, PANEL_CAP_HEIGHT_PX } from '../../reference/character-height.ts';
import { bundledFont, fontTable } from './font-file.ts';

describe('how large letters must be', () => {
  it.each(CAP_HEIGHT_MILLIMETRES)(
    'takes %d arc minutes at %d m for %d mm',
    (arcMinutes, metres, expected) => {
      expect(Math.abs(capHeightMillimetres(metres, arcMinutes) - expected)).toBeLessThanOrEqual(0.0051);
    },
  );

  it.each(PANEL_CAP_HEIGHT_PX)('knows the pixels of a $inches inch panel, $widthPx wide', (row) => {
    const panel = { diagonalInches: row.inches, cssWidthPx: row.widthPx };
    expect(pixelPitchMillimetres(panel)).toBeCloseTo(row.pitch, 3);
    const px = [
      capHeightPx(panel, 3, 16),
      capHeightPx(panel, 3, 20),
      capHeightPx(panel, 5, 16),
      capHeightPx(panel, 5, 20),
    ].map(Math.round);
    for (const [index, expected] of row.px.entries()) {
      // The published column was rounded from a rounded pitch.
      expect(Math.abs((px[index] ?? 0) - expected)).toBeLessThanOrEqual(1);
    }
  });

  it('uses the cap height of the face that is bundled', () => {
    const font = bundledFont();
    // OS/2 version 2 and later: sCapHeight stands at byte 88; head: unitsPerEm at byte 18 (OpenType 1.9).
    const capHeight = fontTable(font, 'OS/2').readInt16BE(88);
    const unitsPerEm = fontTable(font, 'head').readUInt16BE(18);
    expect(CAP_HEIGHT_EM).toBeCloseTo(capHeight / unitsPerEm, 6);
  });

  it('gives a 43 inch wall at five metres letters of 88 px and keys of 40 px', () => {
    const panel = { diagonalInches: 43, cssWidthPx: 1920 };
    expect(fontSizePx(capHeightPx(panel, 5, 20))).toBeCloseTo(87.8, 1);
    expect(touchPx(panel)).toBeCloseTo(40.3, 1);
  });

  it('tells from how far a size can be read, as the inverse', () => {
    const panel = { diagonalInches: 32, cssWidthPx: 1920 };
    expect(readableMetres(panel, fontSizePx(capHeightPx(panel, 3.7, 20)), 20)).toBeCloseTo(3.7, 9);
  });
});
