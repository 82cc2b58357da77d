/**
 * How large letters must be to be read from where people stand.
 *
 * Character height h = 2 D tan(angle / 2). A reading task on a shared display wants 20 arc minutes or more
 * (NUREG-0700 rev 2, 1.3.1-4: 16 at least, 20 to 22 preferred). Height means the height of a capital letter.
 */

/** The panel as the browser sees it: its diagonal and how many CSS pixels wide the page is. */
export interface Panel {
  readonly diagonalInches: number;
  readonly cssWidthPx: number;
}

/** Arc minutes at which the next move and the temperature are held. */
export const READING_ARC_MINUTES = 20;
/** Smallest key that gloved and bare hands hit alike: Colle and Hiszem 2004 found no gain from 20 to 25 mm. */
export const TOUCH_MILLIMETRES = 20;
/** OS/2 sCapHeight over unitsPerEm of the font file; a test reads both from the bundled woff2. */
export const CAP_HEIGHT_EM = 0.668;

const MILLIMETRES_PER_INCH = 25.4;
/** Width over diagonal of a 16:9 panel. */
const WIDTH_OF_DIAGONAL = 16 / Math.hypot(16, 9);
const RADIANS_PER_ARC_MINUTE = Math.PI / (180 * 60);

/** Capital height in millimetres that subtends `arcMinutes` at `distanceMetres` (both above 0). */
export function capHeightMillimetres(distanceMetres: number, arcMinutes: number): number {
  return 2 * distanceMetres * 1000 * Math.tan((arcMinutes * RADIANS_PER_ARC_MINUTE) / 2);
}

/** Size of one CSS pixel in millimetres, on a 16:9 panel that the page fills. */
export function pixelPitchMillimetres(panel: Panel): number {
  return (panel.diagonalInches * MILLIMETRES_PER_INCH * WIDTH_OF_DIAGONAL) / panel.cssWidthPx;
}

/** Capital height in CSS pixels that subtends `arcMinutes` at `distanceMetres` on `panel`. */
export function capHeightPx(panel: Panel, distanceMetres: number, arcMinutes: number): number {
  return capHeightMillimetres(distanceMetres, arcMinutes) / pixelPitchMillimetres(panel);
}

/** Font size in CSS pixels whose capitals have the height `capPx`. */
export function fontSizePx(capPx: number, capHeightEm: number = CAP_HEIGHT_EM): number {
  return capPx / capHeightEm;
}

/** Side of a touch target in CSS pixels on `panel`. */
export function touchPx(panel: Panel): number {
  return TOUCH_MILLIMETRES / pixelPitchMillimetres(panel);
}

/** The farthest distance in metres at which `fontPx` still subtends `arcMinutes` on `panel`. */
export function readableMetres(panel: Panel, fontPx: number, arcMinutes: number): number {
  const heightMillimetres = fontPx * CAP_HEIGHT_EM * pixelPitchMillimetres(panel);
  return heightMillimetres / (2000 * Math.tan((arcMinutes * RADIANS_PER_ARC_MINUTE) / 2));
}
