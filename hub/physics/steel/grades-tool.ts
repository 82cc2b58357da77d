/** Water- and oil-hardening tool steels. */
import { cooling, european, fromMemory, type Grade, published, sae, window } from './grade.ts';
import { HANDBOOK_L6, HANDBOOK_O1, HANDBOOK_W2 } from './temper-sets-handbook.ts';
import { HOLLOMON_JAFFE_098 } from './temper-sets-hollomon-jaffe.ts';

const A686 = fromMemory('ASTM A686');
const A681 = fromMemory('ASTM A681');
const ASM = fromMemory('ASM Handbook');
const SHOP = published('a heat-treating shop table');
const ON_O1 = published("a practitioner's data page");
const ON_L6 = published('a public forum page');

const WATER_HARDENING_WINDOWS = [
  window('forge', 815, 1065, ASM, { note: 'start at 980 to 1065' }),
  window('normalise', 790, 870, SHOP, { note: 'by carbon; up to 925 for the highest (from memory)' }),
  window('full-anneal', 740, 790, ASM, cooling(22, 540, 'a shop table gives 740 to 760')),
];

export const W1: Grade = {
  id: 'W1',
  names: [sae('W1'), ...european('C105U', '1.1545')],
  limits: { C: [0.7, 1.5], Mn: [0.1, 0.4], Si: [0.1, 0.4], Cr: [0, 0.15], V: [0, 0.1] },
  limitsFrom: fromMemory('ASTM A686; sold in narrower carbon bands'),
  nominal: { C: 1, Mn: 0.25, Si: 0.25 },
  windows: [
    ...WATER_HARDENING_WINDOWS,
    window('austenitise', 760, 845, SHOP),
    window('temper', 175, 345, SHOP),
  ],
  notRecommended: [],
  quench: { fluids: ['water', 'brine', 'oil'], oilBelowMm: 5, from: ASM },
  quenched: { lowHrc: 65, highHrc: 68, from: ASM },
  annealedBrinell: [156, 201],
  temperSets: [HOLLOMON_JAFFE_098],
};

export const W2: Grade = {
  ...W1,
  id: 'W2',
  names: [sae('W2'), ...european('100V1', '1.2833')],
  limits: { C: [0.85, 1.5], Mn: [0.1, 0.4], Si: [0.1, 0.4], Cr: [0, 0.15], V: [0.15, 0.35] },
  limitsFrom: A686,
  nominal: { C: 1, Mn: 0.25, Si: 0.25, V: 0.25 },
  windows: [...WATER_HARDENING_WINDOWS, window('austenitise', 760, 845, ASM)],
  temperSets: [HANDBOOK_W2],
};

export const O1: Grade = {
  id: 'O1',
  names: [sae('O1'), ...european('95MnWCr5', '1.2825')],
  limits: {
    C: [0.85, 1],
    Mn: [1, 1.4],
    Si: [0.1, 0.5],
    Cr: [0.4, 0.7],
    W: [0.4, 0.6],
    V: [0, 0.3],
  },
  limitsFrom: fromMemory('ASTM A681; a supplier sheet seen agrees, save manganese 1.40 to 1.80'),
  nominal: { C: 0.9, Mn: 1.2, Si: 0.3, Cr: 0.5, W: 0.5 },
  windows: [
    window('forge', 845, 1065, ON_O1, { note: 'start at 980 to 1065' }),
    window('normalise', 870, 870, ON_O1),
    window(
      'full-anneal',
      760,
      790,
      ON_O1,
      cooling(22, 540, 'suppliers also give 11 or 14 °C/h to 482, or 740 to 760'),
    ),
    window('stress-relief', 670, 700, published('a tool-steel supplier page'), {
      note: 'after rough machining; cool in air',
    }),
    window('austenitise', 790, 815, ON_O1, { holdHours: [1 / 6, 1 / 2], note: '10 to 30 min' }),
  ],
  notRecommended: [],
  quench: { fluids: ['oil'], from: ON_O1 },
  quenched: { lowHrc: 63, highHrc: 65, from: ON_O1 },
  annealedBrinell: [183, 212],
  temperSets: [HANDBOOK_O1],
};

export const L6: Grade = {
  id: 'L6',
  names: [sae('L6'), ...european('55NiCrMoV7', '1.2714')],
  limits: { C: [0.65, 0.75], Mn: [0.25, 0.8], Si: [0.1, 0.5], Cr: [0.6, 1.2], Ni: [1.25, 2], Mo: [0, 0.5] },
  limitsFrom: A681,
  nominal: { C: 0.7, Mn: 0.55, Si: 0.25, Cr: 0.9, Ni: 1.6, Mo: 0.25 },
  windows: [
    window('forge', 845, 1095, ON_L6, { note: 'start at 980 to 1095' }),
    window('normalise', 870, 870, ON_L6, { note: 'it hardens in air: a normalised piece is not soft' }),
    window('full-anneal', 760, 790, ON_L6, { ...cooling(22, 540), holdHours: [1, 4] }),
    window('austenitise', 790, 845, ON_L6, { holdHours: [1 / 6, 1 / 2], note: '10 to 30 min' }),
  ],
  notRecommended: [],
  quench: { fluids: ['warm-oil'], from: ON_L6 },
  quenched: { lowHrc: 63, highHrc: 63, from: ON_L6 },
  temperSets: [HANDBOOK_L6],
};

export const TOOL_GRADES: readonly Grade[] = [W1, W2, O1, L6];
