import type { Probe } from '../../hub/contract/probe.ts';

/** Words of the probe of a temperature channel. */

type Tolerance = NonNullable<Probe['tolerance']>;
type Construction = NonNullable<Probe['construction']>;

export const TOLERANCE_WORDS: Readonly<Record<Tolerance, string>> = {
  'iec-1': 'IEC 60584-1 class 1',
  'iec-2': 'IEC 60584-1 class 2',
  'iec-3': 'IEC 60584-1 class 3',
  'astm-standard': 'ASTM E230 standard limits',
  'astm-special': 'ASTM E230 special limits',
};

export const CONSTRUCTION_WORDS: Readonly<Record<Construction, string>> = {
  'protected-wire': 'Wires in a closed tube',
  'mineral-insulated': 'Mineral-insulated, metal sheath',
};

export const SOURCE_WORDS: Readonly<Record<Probe['source']['kind'], string>> = {
  celsius: 'A temperature that is right as it is',
  emf: 'The emf and the temperature of its terminals',
  'straight-line': 'A temperature computed with one slope',
};

export const probeWords = {
  head: 'Thermocouple',
  long: 'What is known of it makes the ± on a record, and how hot it may run.',
  type: 'Type',
  noType: 'Not known, or not a thermocouple',
  typeName: (letter: string) => `Type ${letter}`,
  tolerance: 'Tolerance class',
  unknown: 'Not known',
  construction: 'How it is built',
  size: 'Diameter of wire or sheath',
  millimetres: 'mm',
  step: 'Smallest step that the device reports',
  stepHint: 'May stay empty. Such as 0.25.',
  offset: 'Correction, added to every reading',
  offsetHint: 'From a calibration; empty: none.',
  uncertainty: 'Standard uncertainty of the correction',
  uncertaintyHint: 'Half of what a certificate with k = 2 says.',
  uncertaintyNeeded: 'A correction needs its uncertainty: half of what the certificate says.',
  offsetNeeded: 'An uncertainty belongs to a correction: 0 when nothing is added.',
  source: 'What the device sends',
  emfChannel: 'Channel that carries the emf',
  junctionChannel: 'Channel that measures the terminals',
  choose: 'Choose a channel of the node',
  nameHint: 'The node has no such channel yet: write the name that it will have.',
  slope: 'The slope that it assumes',
  slopeUnit: 'mV/°C',
  slopeHint: 'From its maker’s sheet; about 0.041 for type K.',
  usualSlope: (letter: string) => `Usual slope for type ${letter}`,
  computedHere: 'The hub computes this channel: readings that a node sends for it are refused.',
  refusedSoFar: (reasons: string) => `Refused from this node so far: ${reasons}.`,
  count: (count: number, reason: string) => `${count} × ${reason}`,
} as const;
