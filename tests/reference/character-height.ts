/**
 * Character height for reading at a distance.
 *
 * Formula h = 2 D tan(angle / 2): NUREG-0700 rev 2, 1.3.1-4, which prints it as 6.283 D MA / 21600 (the two
 * agree to a millionth at these angles). The figures were worked out from it by hand for this table.
 */
export const CAP_HEIGHT_MILLIMETRES: readonly (readonly [
  arcMinutes: number,
  distanceMetres: number,
  millimetres: number,
])[] = [
  [10, 0.6, 1.75],
  [10, 3, 8.73],
  [10, 5, 14.54],
  [16, 0.6, 2.79],
  [16, 3, 13.96],
  [16, 5, 23.27],
  [18, 3, 15.71],
  [18, 5, 26.18],
  [20, 0.6, 3.49],
  [20, 3, 17.45],
  [20, 5, 29.09],
  [22, 5, 32.0],
  [24, 5, 34.91],
  [30, 5, 43.63],
];

/** Pixel pitch in mm of 16:9 panels, and the cap height in px at 3 and 5 m for 16 and 20 arc minutes. */
export const PANEL_CAP_HEIGHT_PX: readonly {
  readonly inches: number;
  readonly widthPx: number;
  readonly pitch: number;
  readonly px: readonly [at3m16: number, at3m20: number, at5m16: number, at5m20: number];
}[] = [
  { inches: 24, widthPx: 1920, pitch: 0.277, px: [51, 63, 84, 105] },
  { inches: 32, widthPx: 1920, pitch: 0.369, px: [38, 47, 63, 79] },
  { inches: 43, widthPx: 1920, pitch: 0.496, px: [28, 35, 47, 59] },
  { inches: 43, widthPx: 3840, pitch: 0.248, px: [56, 70, 94, 117] },
  { inches: 55, widthPx: 1920, pitch: 0.634, px: [22, 28, 37, 46] },
  { inches: 55, widthPx: 3840, pitch: 0.317, px: [44, 55, 73, 92] },
  { inches: 65, widthPx: 3840, pitch: 0.375, px: [37, 47, 62, 78] },
];

/** WCAG 2.2, definition of contrast ratio; ratios of the Okabe-Ito set worked out from it. */
export const CONTRAST_RATIOS: readonly (readonly [one: string, other: string, ratio: number])[] = [
  ['#000000', '#ffffff', 21],
  ['#E69F00', '#ffffff', 2.25],
  ['#56B4E9', '#ffffff', 2.31],
  ['#009E73', '#000000', 6.14],
  ['#0072B2', '#ffffff', 5.19],
  ['#D55E00', '#1E1E1E', 4.31],
  ['#F0E442', '#000000', 15.88],
];
