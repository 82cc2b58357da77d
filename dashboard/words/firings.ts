import type { FiringStatus, FiringVerdict } from '../../hub/contract/firing.ts';
import { duration } from './time.ts';

/** Words of the firings list and of a firing's page. */

export const VERDICT_WORDS: Readonly<Record<FiringVerdict, string>> = {
  pending: 'Not judged yet',
  met: 'Met',
  'met-with-doubts': 'Met with doubts',
  'not-met': 'Not met',
};

export const STATUS_WORDS: Readonly<Record<FiringStatus, string>> = {
  running: 'Running',
  finished: 'Finished',
  abandoned: 'Abandoned',
};

export const firingsWords = {
  title: 'Firings',
  caption: 'Firings, running ones first, then newest first',
  asking: 'Asking the hub for firings',
  empty: 'No firing yet. Start one on the wall.',
  emptyFiltered: 'No firing fits this choice.',
  furnace: 'Furnace',
  everyFurnace: 'Every furnace',
  status: 'Status',
  everyStatus: 'Every status',
  filters: 'Which firings',
  more: 'Show earlier firings',
  noMore: 'These are all.',
  toWall: 'To the wall',
  heads: {
    title: 'Firing',
    furnace: 'Furnace',
    started: 'Started',
    lasted: 'Took',
    peak: 'Peak',
    soak: 'Soak time',
    alarms: 'Alarms',
    verdict: 'Verdict',
  },
  simulated: 'simulated',
  none: '–',
  soFar: (time: string) => `${time} so far`,
} as const;

export const firingWords = {
  asking: 'Asking the hub for this firing',
  notCurrent: 'The hub is not heard: what stands here is the last that was known.',
  simulated: 'SIMULATED FIRING',
  simulatedLong: 'These readings come from a program, not from a fire.',
  toWall: 'Back to the wall',
  toFirings: 'All firings',
  facts: 'The firing',
  furnace: 'Furnace',
  schedule: 'Schedule',
  version: (name: string, version: number) => `${name}, version ${version}`,
  started: 'Started',
  ended: 'Ended',
  running: 'running',
  abandoned: 'abandoned',
  lasted: 'Took',
  endsAbout: 'Ends about',
  verdict: 'Verdict',
  nextMove: 'Next move',
  measured: 'Measured now',
  noReading: 'no reading',
  blindSince: (time: string) => `no reading since ${time}`,
  peak: 'Peak',
  soak: 'Soak time',
  watched: 'Watched',
  noteOfFiring: 'Note',

  chart: 'Chart',
  chartName: (title: string) => `Firing ${title}`,
  curves: 'Curves',
  watchedChannel: (label: string) => `${label} (watched)`,
  channelAway: 'Channel put away',
  loading: 'Loading the readings',
  noCurve: 'No channel was watched and none is chosen.',
  thinned: 'More readings are kept than a screen can show: lowest and highest of every slice are drawn.',
  strips: 'Also measured at this furnace',

  segments: 'Segments',
  events: 'Events',
  noEvents: 'Nothing happened yet.',
  alarms: 'Alarms',
  noAlarms: 'No alarm was raised during this firing.',
  alarmHeads: { alarm: 'Alarm', raised: 'Raised', over: 'Over', seen: 'Acknowledged' },
  stillOn: 'still on',
  notSeen: 'not acknowledged',
  seenBy: (time: string, by: string | null) => (by ? `${time} by ${by}` : time),

  notes: 'Notes',
  noNotes: 'No notes yet.',
  noteText: 'New note',
  noteBy: 'Your name or mark',
  noteByHint: 'Stands beside the note. May stay empty.',
  addNote: 'Add the note',
  noteEmpty: 'A note needs some words.',
  noteAdded: 'The note is kept.',

  edit: 'Edit title and note',
  titleField: 'Title',
  noteField: 'Note on this firing',
  save: 'Save',
  cancel: 'Leave it',

  export: 'Take the record with you',
  unit: 'Temperatures in',
  unitHint: 'For this page, the print and the CSV. The JSON record is always in °C.',
  csv: 'CSV: every reading',
  json: 'JSON: the whole record',
  print: 'Print',
  printHint: 'Prints on A4 or Letter, two pages at most.',
} as const;

export const segmentWords = {
  heads: {
    name: 'Segment',
    planned: 'Planned',
    achieved: 'Achieved',
    soak: 'Soak time',
    span: 'Lowest to peak',
    over: 'Overshoot',
    rates: 'Rate, mean / steepest',
    blind: 'Blind',
    verdict: 'Verdict',
  },
  shortRates: 'Rate',
  waiting: 'Not begun',
  skipped: 'Skipped',
  running: 'Running',
  none: '–',
  to: (from: string, to: string) => `${from} to ${to}`,
  ofPlan: (done: string, planned: string) => `${done} of ${planned}`,
  above: (over: string, seconds: number) => `+${over} for ${duration(seconds)}`,
} as const;

export const paperWords = {
  simulated: 'SIMULATED: these readings come from a program, not from a fire',
  running: (time: string) => `Still running: this is what was known at ${time}.`,
  printed: (time: string, shop: string) => `Printed ${time} · ${shop} · Soakwatch`,
  more: (count: number) => `and ${count} more in the record (JSON)`,
  cut: '… the rest stands in the record (JSON)',
  key: 'Grey: tolerance · dashed: plan · solid: measured (watched channels thick) · hatched: no reading',
  mark: (index: number) => String(index),
} as const;
