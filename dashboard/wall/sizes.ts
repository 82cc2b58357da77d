import {
  capHeightPx,
  fontSizePx,
  type Panel,
  READING_ARC_MINUTES,
  readableMetres,
  touchPx,
} from '../theme/legibility.ts';

/** What the sizes of the wall depend on. */
export interface WallPlace {
  readonly diagonalInches: number;
  readonly distanceMetres: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Lanes with a running firing: they share the height. */
  readonly runningLanes: number;
}

/** Font sizes and targets in CSS px. */
export interface WallSizes {
  /** 1/1920 of a 16:9 wall. */
  readonly unit: number;
  readonly move: number;
  readonly heat: number;
  readonly alarm: number;
  readonly value: number;
  readonly touch: number;
  /** True when next move and temperature have 20 arc minutes at the distance that was set. */
  readonly held: boolean;
  /** From how far they can be read, metres. */
  readonly readableMetres: number;
}

/** Least and most size of the next move by count of lanes, in units: what looks right, and what still fits. */
const MOVE_ROOM: readonly (readonly [least: number, most: number])[] = [
  [150, 220],
  [92, 100],
  [88, 92],
];
const CROWDED: readonly [number, number] = [60, 66];
const HEAT_OF_MOVE = 0.96;
/** Foot and alarm titles: 16 arc minutes, the least for a reading task (the alarm also has colour and shape). */
const VALUE_ARC_MINUTES = 16;

export function wallSizes(place: WallPlace): WallSizes {
  const unit = Math.min(place.widthPx / 1920, place.heightPx / 1080);
  const panel: Panel = { diagonalInches: place.diagonalInches, cssWidthPx: place.widthPx };
  const needed = (arcMinutes: number) => fontSizePx(capHeightPx(panel, place.distanceMetres, arcMinutes));
  const reading = needed(READING_ARC_MINUTES);
  const [least, most] = MOVE_ROOM[Math.max(1, place.runningLanes) - 1] ?? CROWDED;
  const move = clamp(reading, least * unit, most * unit);
  const heat = clamp(reading, least * HEAT_OF_MOVE * unit, most * unit);
  return {
    unit,
    move,
    heat,
    alarm: clamp(needed(VALUE_ARC_MINUTES), 72 * unit, 76 * unit),
    value: clamp(needed(VALUE_ARC_MINUTES), 56 * unit, 72 * unit),
    touch: Math.max(44, touchPx(panel)),
    held: Math.min(move, heat) >= reading,
    readableMetres: readableMetres(panel, Math.min(move, heat), READING_ARC_MINUTES),
  };
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
