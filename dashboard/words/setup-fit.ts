import type { PieceShape } from '../../hub/contract/compute/piece.ts';

/** Words of fitting a furnace to a recorded firing. */

export const SECTION_WORDS: Readonly<Record<Exclude<PieceShape, 'cylinder'>, string>> = {
  plate: 'Plate or flat bar: thickness',
  bar: 'Round bar: diameter',
  sphere: 'Ball: diameter',
};

export const fitWords = {
  head: 'Heat transfer',
  usual: 'usual values of its kind',
  kept: (emissivity: string, film: string, residual: string) =>
    `emissivity ${emissivity}, film ${film} W/(m² K), leaves ${residual} (rms)`,
  open: 'Fit',
  openName: (name: string) => `Fit ${name} to a firing`,
  title: (name: string) => `Fit ${name} to a firing`,
  long: 'How fast heat goes over in this furnace is learned from a firing with a thermocouple in the chamber and one in the work. Every computed core, soak and curve of this furnace uses it from then on.',
  now: 'Kept now',
  forget: 'Forget it',
  noLoad:
    'No channel of this furnace is set up as "The work itself". Put a thermocouple into a piece, set up its channel so, and fire once.',
  noFiring: 'No firing of this furnace is finished yet.',
  firing: 'Firing',
  section: 'What lay in it',
  size: 'Thickness or diameter',
  millimetres: 'mm',
  place: 'Where the thermocouple in the work sat',
  places: { core: 'In its middle', surface: 'At its surface' },
  loadChannel: 'Its channel',
  run: 'Fit',
  found: 'What was found',
  emissivity: 'Effective emissivity',
  film: 'Film coefficient',
  residual: 'What the fit leaves (rms)',
  worst: 'At worst',
  points: 'Points used',
  against: 'What speaks against it',
  refused: 'This fit will not be kept',
  keep: 'Keep it for this furnace',
  source: 'How it was found',
} as const;
