/** Strip and blade steels that go by their European names. */
import { COMMON_PRACTICE, fromMemory, type Grade, type GradeName, published, window } from './grade.ts';
import { HOLLOMON_JAFFE_098 } from './temper-sets-hollomon-jaffe.ts';

const DIN = fromMemory('DIN and SEW sheets');
const DIN_17350 = fromMemory('DIN 17350');
const HABIT = fromMemory('common practice of blade makers');

function name(system: GradeName['system'], text: string, source = 'DIN and EN designations'): GradeName {
  return { system, name: text, same: true, from: fromMemory(source) };
}

export const CRV2_80: Grade = {
  id: '80CrV2',
  names: [name('EN', '80CrV2'), name('W-Nr', '1.2235')],
  limits: { C: [0.75, 0.85], Mn: [0.3, 0.5], Si: [0.25, 0.4], Cr: [0.4, 0.6], V: [0.15, 0.25] },
  limitsFrom: fromMemory('DIN and SEW; a nominal of about 0.80 % C was seen'),
  nominal: { C: 0.8, Mn: 0.4, Si: 0.3, Cr: 0.55, V: 0.2 },
  windows: [
    window('forge', 850, 1050, HABIT),
    window('normalise', 870, 880, HABIT),
    window('sub-critical-anneal', 700, 720, HABIT),
    window('austenitise', 820, 845, HABIT),
  ],
  notRecommended: [],
  quench: { fluids: ['oil'], from: HABIT },
  quenched: { lowHrc: 65, highHrc: 66, from: published('a 2022 article on the grade: "65+"') },
  temperSets: [],
};

export const NI8_75: Grade = {
  id: '15N20',
  names: [name('trade', '15N20'), name('EN', '75Ni8'), name('W-Nr', '1.5634')],
  limits: { C: [0.72, 0.78], Mn: [0.3, 0.5], Si: [0.15, 0.35], Cr: [0, 0.15], Ni: [1.8, 2.1] },
  limitsFrom: DIN,
  nominal: { C: 0.75, Mn: 0.4, Si: 0.25, Ni: 2 },
  windows: [
    window('forge', 850, 1100, COMMON_PRACTICE),
    window('normalise', 870, 870, COMMON_PRACTICE),
    window('sub-critical-anneal', 650, 700, COMMON_PRACTICE),
    window('austenitise', 790, 815, COMMON_PRACTICE),
  ],
  notRecommended: [],
  quench: { fluids: ['oil'], from: COMMON_PRACTICE },
  quenched: { lowHrc: 63, highHrc: 64, from: COMMON_PRACTICE },
  temperSets: [],
};

export const C3_26: Grade = {
  id: '26C3',
  names: [
    name('trade', '26C3'),
    { system: 'W-Nr', name: '1.2002', same: true, from: published('the identity of 26C3 and 1.2002') },
  ],
  // Only a nominal analysis is known, so there is nothing to check a certificate against.
  limits: {},
  limitsFrom: fromMemory('razor strip, nominal analysis only'),
  nominal: { C: 1.25, Mn: 0.4, Si: 0.3, Cr: 0.3 },
  windows: [
    window('forge', 850, 1050, COMMON_PRACTICE),
    window('normalise', 900, 900, COMMON_PRACTICE),
    window('full-anneal', 740, 760, COMMON_PRACTICE),
    window('austenitise', 780, 800, COMMON_PRACTICE),
  ],
  notRecommended: [],
  quench: { fluids: ['fast-oil', 'water'], from: COMMON_PRACTICE },
  quenched: { lowHrc: 66, highHrc: 67, from: COMMON_PRACTICE },
  temperSets: [],
};

export const C105W1: Grade = {
  id: 'C105W1',
  names: [
    name('DIN', 'C105W1'),
    { system: 'EN', name: 'C105U', same: true, from: published('cross-reference of 1.1545 and W1') },
    name('W-Nr', '1.1545'),
  ],
  limits: { C: [1, 1.1], Mn: [0.1, 0.25], Si: [0.1, 0.25] },
  limitsFrom: DIN_17350,
  nominal: { C: 1.05, Mn: 0.18, Si: 0.18 },
  windows: [
    window('forge', 800, 1000, DIN_17350),
    window('normalise', 820, 820, DIN_17350),
    window('sub-critical-anneal', 680, 710, DIN_17350),
    window('austenitise', 770, 800, DIN_17350),
  ],
  notRecommended: [],
  quench: { fluids: ['water'], from: DIN_17350 },
  quenched: { lowHrc: 65, highHrc: 67, from: DIN_17350 },
  temperSets: [HOLLOMON_JAFFE_098],
};

export const STRIP_GRADES: readonly Grade[] = [CRV2_80, NI8_75, C3_26, C105W1];
