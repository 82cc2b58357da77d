import type { Standing } from '../../hub/contract/compute/estimate.ts';
import type { Quench } from '../../hub/contract/compute/hardenability.ts';
import type { StepName } from '../../hub/contract/compute/steels.ts';

/** Words of the steel page. */

export type MarkKey = 'mf' | 'ms' | 'ar1' | 'ar3' | 'ac1' | 'ac3' | 'acm' | 'curie' | 'magnet' | 'magnetPlus';

export const MARK_WORDS: Readonly<Record<MarkKey, { readonly symbol: string; readonly meaning: string }>> = {
  mf: { symbol: 'Mf', meaning: 'martensite complete (99 %)' },
  ms: { symbol: 'Ms', meaning: 'martensite starts on quenching' },
  ar1: { symbol: 'Ar1', meaning: 'austenite gone on slow cooling' },
  ar3: { symbol: 'Ar3', meaning: 'ferrite starts on slow cooling' },
  ac1: { symbol: 'Ac1', meaning: 'austenite starts on heating' },
  ac3: { symbol: 'Ac3', meaning: 'all austenite on heating' },
  acm: { symbol: 'Acm', meaning: 'last carbide dissolves' },
  curie: { symbol: 'Curie', meaning: 'ferrite loses its magnetism' },
  magnet: { symbol: 'Magnet', meaning: 'lets go on heating' },
  magnetPlus: { symbol: 'Magnet +', meaning: 'where the smith’s rule ends' },
};

export const STEP_WORDS: Readonly<Record<StepName, string>> = {
  forge: 'Forge',
  normalise: 'Normalise',
  'full-anneal': 'Full anneal',
  spheroidise: 'Spheroidise',
  'sub-critical-anneal': 'Sub-critical anneal',
  'stress-relief': 'Stress relief',
  austenitise: 'Austenitise',
  temper: 'Temper',
};

/** For a narrow drawing. */
export const STEP_SHORT: Readonly<Record<StepName, string>> = {
  ...STEP_WORDS,
  'sub-critical-anneal': 'Sub-critical',
};

/** How a number is known, in plain words. */
export const STANDING_WORDS: Readonly<Record<Standing, string>> = {
  published: 'Published',
  'published-primary': 'Published, seen in the source itself',
  'published-secondary': 'Published, seen in a copy that names the source',
  'from-memory': 'From memory: recalled, not looked up',
  'common-practice': 'Trade habit: no published source',
  'derived-here': 'Worked out here from the sources named',
};

export const QUENCH_WORDS: Readonly<Record<Quench, string>> = {
  'still-air': 'Still air',
  'still-oil': 'Oil, still',
  'moderate-oil': 'Oil, moved a little',
  'good-oil': 'Oil, moved well',
  'strong-oil': 'Oil, strongly stirred',
  'still-water': 'Water, still',
  'strong-water': 'Water, strongly stirred',
  'still-brine': 'Brine, still',
  'strong-brine': 'Brine, strongly stirred',
};

export const steelWords = {
  title: 'Steel',
  toWall: 'To the wall',
  byComposition: 'Steel by composition',
  asking: 'Asking the hub',
  working: 'Working it out',
  pick: 'Pick a steel',
  pickAnother: 'Another steel',
  find: 'Grade, by any of its names',
  findHint: 'Type a part of it: 1084, C45, 1.2379, SKD61',
  found: (count: number, all: number) => (count === all ? `${all} grades` : `${count} of ${all} grades`),
  noneFound: (text: string) => `No grade here is called "${text}". Enter what it is made of instead.`,
  nearKey: 'A name after ~ is a near equivalent: like the grade, not the same.',
  unknownGrade: (name: string) => `The catalogue holds no steel called "${name}".`,
  madeOwn: 'Or enter what it is made of',
  madeHint: 'Mass percent by element, as on a mill certificate. What stays empty counts as none.',
  madeCertificate: (grade: string) =>
    `Have the mill certificate of your bar? Enter its percents, and the page answers for that bar instead of the usual ${grade}.`,
  percent: '%',
  limits: (low: number, high: number) => `${low} to ${high}`,
  more: 'More elements',
  fewer: 'Fewer elements',
  useIt: 'Work it out for this composition',
  useNominal: (grade: string) => `Fill in the usual ${grade}`,
  forget: (grade: string) => `Back to the usual ${grade}`,
  clear: 'Clear',
  enterCertificate: 'Enter its mill certificate',
  certificateOf: (grade: string) => `${grade}, by its certificate`,
  kept: 'Certificates that the shop keeps of this steel:',
  heat: (heatNumber: string, date: string | null) =>
    date === null ? `Heat ${heatNumber}` : `Heat ${heatNumber}, ${date}`,
  alsoCalled: 'Also called',
  nearly: (name: string) => `${name} (like it, not the same)`,
  usually: 'usually ',
  nominal: 'Usual composition',
  asEntered: 'As entered',
} as const;

export const scaleWords = {
  head: 'Its temperatures',
  name: 'Temperatures of this steel as a scale, with the windows of each step beside it; the table below holds the same numbers',
  itDoes: 'What the steel does',
  youDo: 'What you do',
  itDoesShort: 'Steel',
  youDoShort: 'You',
  below: 'below the scale',
  key: {
    published: 'Filled: published',
    other: 'Hollow: from memory, trade habit or worked out here',
    tails: 'Thin tails: how far the ends may be off',
    band: 'Tall block: as far as the formulas disagree; the diamond is the value used',
  },
  glow: (uncertainty: string, source: string) =>
    `The rod has the colour steel shows at that heat in dim light, good to ${uncertainty} at best by eye. Names and limits: ${source}.`,
  close: (range: string) =>
    `The stretch ${range}, where most happens, is drawn larger than the rest; the numbers along the rod tell. The dashed lines carry Ac1 and the upper limit across to the windows.`,
  table: 'Temperatures of the steel',
  what: 'What',
  value: 'Value (band)',
  from: 'Where the number comes from',
  refused: 'No number',
  cooling: (rate: string) => `Ar1 and Ar3 as for a piece cooled at ${rate}.`,
} as const;

export const windowWords = {
  head: 'Windows of each step',
  caption: 'Windows of each step',
  step: 'Step',
  window: 'Window',
  give: 'Ends good to',
  how: 'How',
  from: 'Where the number comes from',
  empty: 'No window is known for this steel.',
  hold: (least: number, most: number) => (least === most ? `hold ${least} h` : `hold ${least} to ${most} h`),
  cool: (rate: string, to: string) => `cool at ${rate} at most, down to ${to}`,
  coolAny: (rate: string) => `cool at ${rate} at most`,
  forge: 'start at the higher, stop at the lower',
  never: (steps: string) => `Not to be done to this steel: ${steps}.`,
  memoryHead: (count: number, all: number) =>
    `${count} of these ${all} windows rest on memory or trade habit alone. Try them on a scrap first.`,
  asWritten: 'Remarks and sources stand as they were written: bare numbers in them are °C.',
  outside: (list: string) => `Outside the limits of the grade: ${list}.`,
  outsideOne: (element: string, percent: number, low: number, high: number) =>
    `${element} ${percent} % (${low} to ${high})`,
} as const;

export const disagreeWords = {
  head: 'What the formulas disagree on',
  lead: 'Each formula was fitted to steels of its own. A ring is a formula used beyond the steels it was fitted to; the diamond is the value used on this page.',
  spread: (symbol: string, spread: string, count: number, inside: number) =>
    `${symbol}: ${spread} by ${count} formulas, ${inside === 0 ? 'none' : inside} of them made for such a steel`,
  formula: 'Formula',
  says: 'Says',
  fits: 'Made for this steel?',
  yes: 'yes',
  no: (outside: string) => `no: ${outside}`,
  from: 'Where it comes from',
  caption: (symbol: string) => `Every formula for ${symbol}`,
  used: (formula: string) => `Used here: ${formula}`,
  refused: (symbol: string, reason: string) => `${symbol} is not given. ${reason}`,
  show: 'Every formula with its source',
  drawn: (symbol: string) => `What each formula says for ${symbol}; the table below holds the same numbers`,
} as const;
