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
  /** An alarm banner takes its share of the height. */
  readonly bannerShown: boolean;
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

interface Room {
  /** What looks right, in units. */
  readonly least: number;
  /** What still fits in two lines, in units. */
  readonly most: number;
  /** The temperature's share of the next move's least size. */
  readonly heatShare: number;
}

/** Room for the next move by count of running lanes. Three with a banner above are the first that must shrink. */
function roomFor({ runningLanes, bannerShown }: WallPlace): Room {
  if (runningLanes <= 1) return { least: 126, most: 200, heatShare: 0.78 };
  if (runningLanes === 2) return { least: 92, most: 100, heatShare: 0.96 };
  if (runningLanes === 3 && !bannerShown) return { least: 88, most: 90, heatShare: 1 };
  return { least: 64, most: 68, heatShare: 1 };
}

/** Foot and alarm titles: 16 arc minutes, the least for a reading task (the alarm also has colour and shape). */
const VALUE_ARC_MINUTES = 16;

export function wallSizes(place: WallPlace): WallSizes {
  const unit = Math.min(place.widthPx / 1920, place.heightPx / 1080);
  const panel: Panel = { diagonalInches: place.diagonalInches, cssWidthPx: place.widthPx };
  const needed = (arcMinutes: number) => fontSizePx(capHeightPx(panel, place.distanceMetres, arcMinutes));
  const reading = needed(READING_ARC_MINUTES);
  const { least, most, heatShare } = roomFor(place);
  const move = clamp(reading, least * unit, most * unit);
  const heat = clamp(reading, least * heatShare * unit, most * unit);
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
