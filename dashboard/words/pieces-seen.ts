import type { AttachmentType, HARDNESS_SCALES, MagnetSeen } from '../../hub/contract/observation.ts';

/** Words of what is seen on a piece: the forms that note it, and how it stands in the history. */

type Scale = (typeof HARDNESS_SCALES)[number];

export const SCALE_WORDS: Readonly<Record<Scale, string>> = {
  HRC: 'HRC, Rockwell C',
  HRB: 'HRB, Rockwell B',
  HV: 'HV, Vickers',
  HB: 'HB, Brinell',
};

export const FILE_WORDS = { skates: 'File skates: hard', bites: 'File bites: soft' } as const;
export const CRACK_WORDS = { found: 'Crack found', none: 'No crack found' } as const;

export const AGREES_WORDS: Readonly<Record<MagnetSeen['agrees'], string>> = {
  inside: 'as expected',
  below: 'below what was expected',
  above: 'above what was expected',
  'not-known': 'nothing to compare with',
};

export const KIND_WORDS = {
  hardness: 'Hardness',
  straightness: 'Straightness',
  file: 'File test',
  magnet: 'Magnet let go',
  crack: 'Crack',
  note: 'Note',
  attachment: 'Photo or file',
} as const;

export const FILE_TYPE_WORDS: Readonly<Record<AttachmentType, string>> = {
  'image/jpeg': 'photo',
  'image/png': 'picture',
  'image/webp': 'picture',
  'application/pdf': 'PDF',
  'text/plain': 'text',
};

export const seenWords = {
  title: 'Note what you see',
  choose: 'What to note',
  keep: 'Note it',
  cancel: 'Cancel',
  noted: (what: string) => `Noted: ${what}`,
  position: 'Where on the piece',
  positionHint: 'Such as: edge, 20 mm from the tip. May stay empty.',
  scale: 'Scale',
  reading: (index: number) => `Reading ${index}`,
  readingPosition: (index: number) => `Where ${index}`,
  addReading: 'One more reading',
  removeReading: (index: number) => `Remove reading ${index}`,
  remove: 'Remove',
  out: 'Out of straight by',
  over: 'Over a length of',
  overHint: 'Empty: over the whole piece.',
  note: 'Note',
  noteText: 'What you saw',
  magnetHead: 'Press the moment it lets go',
  magnetHint:
    'The reading of the furnace at that moment is taken, and held against what this steel should do.',
  magnetIn: (furnace: string) => `Let go now, in ${furnace}`,
  noFurnace: 'There is no furnace to take a reading from. Add one in Setup.',
  file: 'Photo or file',
  fileHint: 'JPEG, PNG, WebP, PDF or text, 8 MB at most.',
  takeFile: 'Attach it',
  fileMissing: 'Choose a photo or file first.',
  fileTooBig: (most: string) => `Too big: ${most} at most. Send a smaller picture.`,
  fileType: 'This kind of file is not taken: JPEG, PNG, WebP, PDF or text.',
  open: (name: string) => `Save ${name}`,
  photoOf: (name: string) => `Photo: ${name}`,

  hardness: (values: string, scale: string) => `${values} ${scale}`,
  hardnessMany: (mean: string, spread: string, scale: string, count: number) =>
    `mean ${mean} ${scale}, from ${spread}, ${count} readings`,
  at: (value: string, position: string) => `${value} (${position})`,
  straight: (out: string) => `${out} mm out of straight`,
  straightOver: (out: string, over: string) => `${out} mm out of straight over ${over} mm`,
  where: (what: string, position: string) => (position === '' ? what : `${what}, ${position}`),
  magnet: (measured: string, expected: string, agrees: string) =>
    `Furnace at ${measured}, expected near ${expected}: ${agrees}`,
  magnetUnread: 'No fresh reading of the furnace',
  magnetUnknown: (measured: string) => `Furnace at ${measured}; where this steel should let go is not known`,
  difference: (difference: string) => `${difference} apart`,
  furnaceNotSteel: 'The thermocouple reads the furnace, not the steel.',
  expectedFrom: (formula: string, source: string) => `By ${formula}: ${source}`,
} as const;
