/**
 * Tempering curves of handbooks and suppliers. Most state no time; 1.5 h stands
 * for the usual "one to two hours". Ranges are entered by their middle.
 */
import type { Composition } from './composition.ts';
import type { Provenance } from './estimate.ts';
import type { TemperSet } from './temper-set.ts';

const ASSUMED_HOURS = 1.5;
const SUPPLIER: Provenance = { standing: 'published-secondary', source: 'tool-steel supplier sheet' };
const ASM: Provenance = { standing: 'from-memory', source: 'ASM Handbook' };

interface Sheet {
  readonly name: string;
  readonly composition: Composition;
  readonly quenchedHrc: number | null;
  readonly hrcAt: Readonly<Record<number, number>>;
  readonly from: Provenance;
  readonly secondaryHardening?: boolean;
  readonly hours?: number;
}

function set(sheet: Sheet): TemperSet {
  const celsius = Object.keys(sheet.hrcAt).map(Number);
  return {
    id: `handbook-${sheet.name}`,
    title: `${sheet.name}, handbook or supplier curve`,
    composition: sheet.composition,
    quenchedHrc: sheet.quenchedHrc,
    timeStated: sheet.hours !== undefined,
    secondaryHardening: sheet.secondaryHardening ?? false,
    runs: [{ hours: sheet.hours ?? ASSUMED_HOURS, celsius, hrc: Object.values(sheet.hrcAt) }],
    from: sheet.from,
  };
}

export const HANDBOOK_1095 = set({
  name: '1095',
  composition: { C: 0.95, Mn: 0.4, Si: 0.25 },
  quenchedHrc: 66,
  hrcAt: { 149: 65, 177: 63.5, 204: 62.5, 232: 61.5, 260: 59.5, 288: 57.5, 316: 55.5, 343: 53.5 },
  from: { standing: 'published-secondary', source: 'a bladesmith data page' },
});

export const HANDBOOK_O1 = set({
  name: 'O1',
  composition: { C: 0.9, Mn: 1.2, Si: 0.3, Cr: 0.5, W: 0.5 },
  quenchedHrc: 65,
  hrcAt: {
    149: 63,
    177: 62.5,
    204: 62,
    260: 60,
    316: 57,
    371: 53,
    427: 50,
    482: 47,
    538: 44,
    593: 39,
    649: 31,
  },
  from: SUPPLIER,
});

export const HANDBOOK_W2 = set({
  name: 'W2',
  composition: { C: 1, Mn: 0.25, Si: 0.25, V: 0.25 },
  quenchedHrc: 67,
  hrcAt: { 93: 67, 149: 65, 204: 62, 260: 59, 316: 55 },
  from: { standing: 'published-secondary', source: "a copy of a maker's booklet" },
});

export const HANDBOOK_L6 = set({
  name: 'L6',
  composition: { C: 0.7, Mn: 0.55, Si: 0.25, Cr: 0.9, Ni: 1.6, Mo: 0.25 },
  quenchedHrc: 63,
  hrcAt: { 175: 62, 540: 45 },
  from: { standing: 'published-secondary', source: "a bladesmiths' society page; two ends of a line only" },
});

export const HANDBOOK_A2 = set({
  name: 'A2',
  composition: { C: 1, Mn: 0.7, Si: 0.3, Cr: 5.1, Mo: 1.1, V: 0.3 },
  quenchedHrc: 63.5,
  hrcAt: { 150: 62.5, 205: 60.5, 260: 58.5, 315: 57, 370: 57, 425: 57, 480: 57, 540: 55, 595: 49.5 },
  from: ASM,
  secondaryHardening: true,
});

export const HANDBOOK_D2 = set({
  name: 'D2',
  composition: { C: 1.5, Mn: 0.35, Si: 0.35, Cr: 12, Mo: 0.95, V: 0.8 },
  quenchedHrc: 62.5,
  hrcAt: { 150: 62.5, 205: 60.5, 260: 58.5, 315: 57.5, 425: 57.5, 480: 58, 510: 57.5, 540: 55, 595: 48 },
  from: ASM,
  secondaryHardening: true,
});

export const HANDBOOK_S7 = set({
  name: 'S7',
  composition: { C: 0.5, Mn: 0.55, Si: 0.6, Cr: 3.25, Mo: 1.55 },
  quenchedHrc: 60.5,
  hrcAt: { 205: 58, 260: 56, 315: 55, 370: 54, 425: 53, 480: 52, 540: 51, 595: 46 },
  from: ASM,
  secondaryHardening: true,
});

export const HANDBOOK_H13 = set({
  name: 'H13',
  composition: { C: 0.38, Mn: 0.4, Si: 1, Cr: 5.1, Mo: 1.4, V: 1 },
  quenchedHrc: 52,
  hrcAt: { 540: 53, 565: 51, 595: 48, 620: 44, 650: 38 },
  from: ASM,
  secondaryHardening: true,
});

export const HANDBOOK_4340 = set({
  name: '4340',
  composition: { C: 0.4, Mn: 0.7, Si: 0.25, Ni: 1.83, Cr: 0.8, Mo: 0.25 },
  quenchedHrc: null,
  hrcAt: { 205: 54, 315: 50.5, 425: 45.5, 540: 39, 650: 31 },
  from: ASM,
  hours: 1,
});

export const HANDBOOK_9260 = set({
  name: '9260',
  composition: { C: 0.6, Mn: 0.88, Si: 2 },
  quenchedHrc: null,
  hrcAt: { 205: 60, 315: 57, 425: 49, 540: 42, 650: 34 },
  from: { standing: 'from-memory', source: 'handbook curve; the measured 9264 set is close' },
  hours: 1,
});

export const HANDBOOK_SETS: readonly TemperSet[] = [
  HANDBOOK_1095,
  HANDBOOK_O1,
  HANDBOOK_W2,
  HANDBOOK_L6,
  HANDBOOK_A2,
  HANDBOOK_D2,
  HANDBOOK_S7,
  HANDBOOK_H13,
  HANDBOOK_4340,
  HANDBOOK_9260,
];
