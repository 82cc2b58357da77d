import type {
  BatchStatistics,
  Measure,
  NoCapability,
  RuleId,
  ShopChangeKind,
} from '../../hub/contract/batch-statistics.ts';
import type { LeftOut, SegmentFigure } from '../../hub/contract/comparison.ts';

/** Words of the pages that look back upon many firings: compare, and batches. */

export const compareWords = {
  title: 'Compare firings',
  schedule: 'Schedule',
  noSchedule: 'There is no schedule yet.',
  choose: 'Firings of this schedule, the newest first',
  most: (most: number) => `At most ${most} at once.`,
  none: 'No firing of this schedule is over yet.',
  pick: 'Tick one firing or more.',
  asking: 'Laying the firings over each other',
  by: 'Time within a segment',
  bySeconds: 'In minutes from its start',
  byShare: 'As a share of its length',
  segment: 'Segment',
  everySegment: 'All, side by side',
  reference: 'reference',
  makeReference: 'Make it the reference',
  makeReferenceName: (title: string) => `Make ${title} the reference of this schedule`,
  dropReference: 'Hold against no reference',
  noReference: 'No reference is chosen. Take a firing that came out well as the reference of this schedule.',
  against: (title: string) => `Held against ${title}, the reference of this schedule.`,
  key: {
    reference: 'reference',
    firing: 'each firing',
    plan: (title: string) => `plan of ${title}`,
    envelope: (size: number) => `lowest to highest of ${size} firings`,
  },
  chart: (count: number) => `${count} firings laid over each other, segment by segment`,
  within: (segment: string, place: string) => `${segment}, ${place}`,
  oneFiring: (value: string) => value,
  readReference: (value: string) => `reference ${value}`,
  readMedian: (value: string, count: number) => `median ${value} of ${count}`,
  readSpread: (low: string, high: string) => `${low} to ${high}`,
  table: (segment: string) => `Differences in ${segment}`,
  heads: {
    firing: 'Firing',
    toPlan: 'From plan',
    toReference: 'From reference',
    soakMean: 'Soak mean',
    peak: 'Peak',
    soakTime: 'Soak time',
    rate: 'Mean rate',
  },
  beside: (own: string, less: string) => `${own} (${less})`,
  tableNote: 'In brackets beside a figure: how much it differs from the reference.',
  curveNote: 'From plan and from reference: the mean over the segment, and in brackets the largest.',
  drifts: 'Drift over these firings',
  noDrift: 'No figure drifts more than chance explains.',
  fewForDrift: 'Drift is told of three firings or more.',
  drift: (figure: string, change: string, band: string, firings: number) =>
    `${figure} changes by ${change} from one firing to the next (${band}, 95 %), over ${firings} firings.`,
  unknown: '–',
  thinned: 'More readings are kept than a screen can show: lowest and highest of every slice are drawn.',
} as const;

export const FIGURE_WORDS: Readonly<Record<SegmentFigure, string>> = {
  soakMeanCelsius: 'The soak mean',
  peakCelsius: 'The peak',
  soakSeconds: 'The soak time',
  rateCelsiusPerHour: 'The mean rate',
};

export const LEFT_OUT_WORDS: Readonly<Record<LeftOut['reason'], string>> = {
  'other-segments': 'Not drawn: it followed a version of the schedule with other segments.',
  'no-segment-over': 'Not drawn: none of its segments is over yet.',
};

export const MEASURE_WORDS: Readonly<Record<Measure, string>> = {
  'soak-mean': 'Soak mean',
  peak: 'Peak of the soak',
  'soak-time': 'Soak time',
  hardness: 'Hardness',
};

/** The test and its authors: N is Nelson 1984, W is Western Electric 1956. Those alike are said once. */
export const RULE_WORDS: Readonly<Record<RuleId, string>> = {
  N1: 'beyond three sigma (Nelson 1, Western Electric 1)',
  W1: 'beyond three sigma (Nelson 1, Western Electric 1)',
  N2: 'the ninth in a row on one side of the centre (Nelson 2)',
  W4: 'the eighth in a row on one side of the centre (Western Electric 4)',
  N3: 'the sixth in a row that climbs or falls (Nelson 3)',
  N4: 'the fourteenth in a row that goes up and down in turn (Nelson 4)',
  N5: 'two of three beyond two sigma on one side (Nelson 5, Western Electric 2)',
  W2: 'two of three beyond two sigma on one side (Nelson 5, Western Electric 2)',
  N6: 'four of five beyond one sigma on one side (Nelson 6, Western Electric 3)',
  W3: 'four of five beyond one sigma on one side (Nelson 6, Western Electric 3)',
  N7: 'the fifteenth in a row within one sigma: less scatter than there should be (Nelson 7)',
  N8: 'the eighth in a row beyond one sigma, on both sides (Nelson 8)',
};

export const CHANGE_WORDS: Readonly<Record<ShopChangeKind | 'schedule', string>> = {
  probe: 'New thermocouple',
  'probe-moved': 'Thermocouple moved',
  calibration: 'Calibration',
  cylinder: 'New cylinder',
  furnace: 'Furnace worked on',
  other: 'Change',
  schedule: 'Schedule changed to version',
};

export const NO_CAPABILITY_WORDS: Readonly<Record<NoCapability, string>> = {
  'no-tolerance': 'No capability: the schedule sets no tolerance for this.',
  'tolerance-changed': 'No capability: the schedule was changed among these firings.',
  'several-furnaces': 'No capability: these firings are of several furnaces. Choose one.',
  'few-values': 'No capability: it wants 25 firings or more.',
  'not-in-control':
    'No capability: the process is not in control. Find the cause of the marked firings first.',
  'does-not-vary': 'No capability: all values are one.',
};

export const batchWords = {
  title: 'Batches',
  schedule: 'Schedule',
  furnace: 'Furnace',
  everyFurnace: 'Every furnace',
  measure: 'What is charted',
  soak: 'Soak',
  soakAt: (target: string, time: string) => `${target} for ${time}`,
  asking: 'Charting the firings',
  none: 'Nothing to chart yet: no finished firing of this choice has it.',
  one: 'One value so far: a chart wants two.',
  inControl: (count: number) => `In control: no test for a special cause fires over ${count} values.`,
  wideStep: 'No value is marked, but a step between neighbours is beyond its limit: not in control.',
  outOfControl: (count: number, of: number) =>
    count === 1
      ? `One of ${of} values is marked by a test.`
      : `${count} of ${of} values are marked by tests.`,
  stages: (count: number) =>
    `The limits begin anew where a noted change shifted the mean: ${count} stretches. The figures are of the last.`,
  centre: (centre: string, lower: string, upper: string) => `Centre ${centre}, limits ${lower} to ${upper}.`,
  capable: (cp: string, cpk: string, pp: string, ppk: string) =>
    `Capability: Cp ${cp}, Cpk ${cpk} · Pp ${pp}, Ppk ${ppk}. 1.33 or more is commonly wanted.`,
  tolerance: (text: string) => `Tolerance of the schedule: ${text}.`,
  between: (lower: string, upper: string) => `${lower} to ${upper}`,
  atMost: (upper: string) => `at most ${upper}`,
  atLeast: (lower: string) => `at least ${lower}`,
  oneSided: '–',
  individuals: 'Each firing',
  ranges: 'From one firing to the next',
  individualsDrawn: (measure: string, said: string) => `${measure}, firing by firing. ${said}`,
  rangesDrawn: 'Moving range: the size of the step between neighbouring firings',
  upper: 'upper limit',
  lower: 'lower limit',
  middle: 'centre',
  key: {
    value: 'a firing',
    marked: 'marked by a test',
    limit: 'limits at three sigma',
    centre: 'centre',
    tolerance: 'tolerance of the schedule',
    change: 'something was changed',
  },
  marked: 'Marked firings',
  noMarked: 'No test fires.',
  newestMarked: (shown: number, of: number) => `Marked firings: the newest ${shown} of ${of}`,
  numbered: (index: number, name: string) => `${index} · ${name}`,
  heads: { at: 'When', firing: 'Firing', value: 'Value', why: 'Why it is marked', furnace: 'Furnace' },
  changes: 'What changed when',
  noChanges: 'Nothing was noted as changed among these firings.',
  changeHeads: { at: 'When', what: 'What', shift: 'Shift of the mean' },
  shift: (value: string, low: string, high: string, sure: boolean) =>
    `${value} (${low} to ${high}, 95 %)${sure ? ', more than chance' : ', may be chance'}`,
  noShift: 'too few values on a side',
  noteChange: 'Note a change',
  noteKind: 'What was changed',
  noteFurnace: 'Furnace',
  wholeShop: 'The whole shop',
  noteText: 'In your words',
  noteHint: 'Such as: type N, the old one read low. It cannot be taken back.',
  addChange: 'Note it now',
  noted: 'Noted. It stands in the chart once a firing follows it.',
  unknownLeft: (count: number) =>
    count === 1 ? 'One firing has no such value.' : `${count} firings have no such value.`,
  otherScale: (count: number) => `${count} hardness readings in another scale than HRC are left out.`,
  older: 'There are older ones before these.',
  learned: 'Hardness against temper: what this shop has learned',
  steel: 'Steel',
  noSteel:
    'Nothing yet. It comes of pieces that were tempered in a firing and whose hardness (HRC) was noted after it.',
  fewPieces: (count: number) => `${count} pieces so far: a line wants four.`,
  temperedAlike: 'All pieces were tempered alike: temper one softer or harder to see a line.',
  learnedDrawn: (count: number) => `Hardness of ${count} pieces against their tempering parameter`,
  learnedKey: {
    piece: 'a piece, measured',
    line: 'line through them',
    band: 'where 80 of 100 further pieces fall',
  },
  axis: 'Tempering parameter, K: T (C + log t), t in hours',
  constant: (constant: string) => `C = ${constant}, from the carbon of the steel.`,
  learnedNote:
    'The parameter is of the soaks alone; heat-up and cool-down are left out. The line holds between the pieces measured and not beyond.',
  oneHour: (parameter: string, celsius: string) => `${parameter} K is one hour at ${celsius}.`,
  pieces: 'Tempered pieces',
  pieceHeads: { mark: 'Piece', tempers: 'Tempers', parameter: 'Parameter, K', hardness: 'Hardness, HRC' },
} as const;

export const UNIT_WORDS: Readonly<Record<Exclude<BatchStatistics['unit'], 'Cel'>, string>> = {
  s: 'min',
  HRC: 'HRC',
};
