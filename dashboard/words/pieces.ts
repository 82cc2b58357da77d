import type { PieceShape } from '../../hub/contract/compute/piece.ts';
import type { StepOutcome } from '../../hub/contract/piece.ts';
import type { RouteCheck, RouteHeat, RouteWork } from '../../hub/contract/route-template.ts';
import { STEP_WORDS } from './steel.ts';

/** Words of the pieces: the list, one piece with its route, the form, the label. */

export const HEAT_WORDS: Readonly<Record<RouteHeat, string>> = { ...STEP_WORDS, harden: 'Harden and quench' };

export const WORK_WORDS: Readonly<Record<RouteWork, string>> = {
  shape: 'Shape',
  grind: 'Grind',
  stamp: 'Stamp',
  straighten: 'Straighten',
  clean: 'Clean',
  finish: 'Finish',
  other: 'Other work',
};

export const CHECK_WORDS: Readonly<Record<RouteCheck, string>> = {
  hardness: 'Measure hardness',
  straightness: 'Check straightness',
  file: 'File test',
  magnet: 'Magnet test',
  crack: 'Look for cracks',
  other: 'Other check',
};

export const OUTCOME_WORDS: Readonly<Record<StepOutcome, string>> = {
  done: 'done',
  skipped: 'skipped',
  met: 'met',
  'met-with-doubts': 'met with doubts',
  'not-met': 'not met',
};

export const SHAPE_WORDS: Readonly<Record<PieceShape, string>> = {
  plate: 'Plate or flat bar',
  bar: 'Round or square bar',
  cylinder: 'Short cylinder',
  sphere: 'Ball or lump',
};

export const piecesWords = {
  title: 'Pieces',
  asking: 'Asking the hub for the pieces',
  add: 'Add a piece',
  filters: 'Which pieces to show',
  search: 'Search',
  searchHint: 'Words of mark, title, note or steel.',
  steel: 'Steel',
  everySteel: 'every steel',
  due: 'Due next',
  everyDue: 'anything',
  kept: 'Show',
  keptNo: 'on the bench',
  keptYes: 'put away',
  keptAny: 'both',
  caption: 'Pieces',
  heads: { mark: 'Mark', what: 'What it is', steel: 'Steel', due: 'Due next' },
  putAwayTag: 'put away',
  nothingDue: 'nothing left',
  empty: 'No piece yet. Add the first one.',
  emptyFiltered: 'No piece fits. Ask for fewer words, or show other pieces.',
  more: 'Show more',
  none: '–',
} as const;

export const pieceFormWords = {
  addTitle: 'Add a piece',
  editTitle: (mark: string) => `Edit ${mark}`,
  mark: 'Mark',
  markHint: 'Stamped on the steel or written on its label: letters, digits, . _ -',
  title: 'What it is',
  titleHint: 'Such as: hot cut, 40 mm.',
  steel: 'Steel',
  steelHint: 'Type any of its names. For scrap: what it most likely is.',
  steelTitle: 'Your own name for it',
  steelTitleHint: 'Such as: leaf spring. May stay empty.',
  choose: (title: string) => `Take ${title}`,
  chosen: (title: string) => `Chosen: ${title}`,
  noSteel: (text: string) => `No steel is called "${text}". Setup, Steels, is where one is added.`,
  found: (count: number) => (count === 1 ? '1 steel fits' : `${count} steels fit`),
  chooseOne: 'Choose one of the steels below.',
  certificate: 'Mill certificate',
  noCertificate: 'none: the usual composition',
  composition: 'It is known by its composition; choosing a steel here replaces that.',
  shape: 'Shape',
  thickness: { plate: 'Thickness', bar: 'Diameter', cylinder: 'Diameter', sphere: 'Diameter' },
  thicknessHint: 'At its thickest: that part decides how long heat takes.',
  mass: 'Mass',
  massHint: 'May stay empty.',
  template: 'Route',
  noTemplate: 'none yet',
  note: 'Note',
  save: 'Save',
  addThis: 'Add the piece',
  cancel: 'Cancel',
  faultAt: (field: string, fault: string) => `${field}: ${fault}`,
} as const;

export const pieceWords = {
  title: 'Piece',
  asking: 'Asking the hub for this piece',
  unknownMark: (mark: string) => `No piece on the bench carries the mark "${mark}".`,
  toList: 'To the pieces',
  edit: 'Edit',
  label: 'Label',
  putAway: 'Put away',
  takeOut: 'Take out again',
  putAwayTitle: (mark: string) => `Put ${mark} away?`,
  putAwayLong: 'Its history stays. It is due no more, and its mark is free for another piece.',
  keep: 'Keep it',
  away: 'This piece is put away.',
  facts: { steel: 'Steel', section: 'Section', mass: 'Mass', since: 'On the bench since', due: 'Due next' },
  by: 'Your name',
  byHint: 'Stands at what you tick and note. May stay empty.',
  route: 'Route',
  noRoute: 'This piece has no route yet.',
  changeRoute: 'Change the route',
  changeRouteTitle: (mark: string) => `Route of ${mark}`,
  behind: (count: number) => (count === 1 ? '1 step behind it' : `${count} steps behind it`),
  dueNow: 'due now',
  optional: 'may be skipped',
  tick: 'Done',
  tickName: (step: string) => `Tick ${step} as done`,
  skip: 'Skip',
  skipName: (step: string) => `Skip ${step}`,
  untick: 'Take the tick away',
  untickName: (step: string) => `Take the tick of ${step} away`,
  doneBy: (outcome: string, when: string, by: string) => `${outcome}, ${when}${by === '' ? '' : `, ${by}`}`,
  byFiring: 'the firing',
  fire: 'Fire it from the bench',
  reminders: 'Reminders',
  reminderStanding: 'Trade habit, no source.',
  before: 'The step before was not met: look before going on.',
  history: 'History',
  noHistory: 'Nothing yet: firings and what was seen will stand here in their order.',
  firingAs: (step: string, furnace: string) => `${step}, ${furnace}`,
  wholeFiring: 'judged as a whole',
  running: 'in the fire now',
  remove: 'Delete',
  removeName: (what: string) => `Delete: ${what}`,
  removeTitle: 'Delete this entry?',
  removeLong: 'An observation is never changed, only deleted and made again. A file goes with it.',
} as const;

export const labelWords = {
  title: (mark: string) => `Label of ${mark}`,
  size: 'Size',
  small: 'Small label, 62 by 29 mm',
  sheet: 'A6 sheet',
  print: 'Print',
  toPiece: 'To the piece',
  qr: (address: string) => `QR code of ${address}`,
  loopback:
    'This screen reached the hub by an address that only this computer knows. Open this page by the name or number that a phone in the shop uses, and the code will hold that one.',
} as const;
