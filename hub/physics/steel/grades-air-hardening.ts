/** Air-hardening and hot-work tool steels. They are not normalised. */
import { cooling, european, fromMemory, type Grade, published, sae, window } from './grade.ts';
import { HANDBOOK_A2, HANDBOOK_D2, HANDBOOK_H13, HANDBOOK_S7 } from './temper-sets-handbook.ts';

const A681 = fromMemory('ASTM A681');
const ASM = fromMemory('ASM Handbook');
const SHOP = published('a heat-treating shop table');
const ASM_TABLE = published('ASM tool-steel table, two copies');

export const A2: Grade = {
  id: 'A2',
  names: [sae('A2'), ...european('X100CrMoV5', '1.2363')],
  limits: { C: [0.95, 1.05], Mn: [0.4, 1], Si: [0.1, 0.5], Cr: [4.75, 5.5], Mo: [0.9, 1.4], V: [0.15, 0.5] },
  limitsFrom: A681,
  nominal: { C: 1, Mn: 0.7, Si: 0.3, Cr: 5.1, Mo: 1.1, V: 0.3 },
  windows: [
    window('forge', 900, 1095, ASM, { note: 'start at 1010 to 1095' }),
    window(
      'full-anneal',
      845,
      870,
      SHOP,
      cooling(22, 540, 'a service centre gives 845, 2 h, 28 °C/h to below 650'),
    ),
    window('austenitise', 925, 980, SHOP, { holdHours: [1 / 3, 3 / 4], note: '20 to 45 min' }),
  ],
  notRecommended: ['normalise'],
  quench: { fluids: ['air'], from: ASM },
  quenched: { lowHrc: 62, highHrc: 65, from: ASM },
  annealedBrinell: [201, 229],
  temperSets: [HANDBOOK_A2],
};

export const D2: Grade = {
  id: 'D2',
  names: [sae('D2'), ...european('X153CrMoV12', '1.2379')],
  limits: { C: [1.4, 1.6], Mn: [0.1, 0.6], Si: [0.1, 0.6], Cr: [11, 13], Mo: [0.7, 1.2], V: [0.5, 1.1] },
  limitsFrom: A681,
  nominal: { C: 1.5, Mn: 0.35, Si: 0.35, Cr: 12, Mo: 0.95, V: 0.8 },
  windows: [
    window('forge', 925, 1095, ASM, { note: 'start at 1010 to 1095' }),
    window('full-anneal', 870, 900, SHOP, cooling(22, 540)),
    window('austenitise', 980, 1025, SHOP, { holdHours: [1 / 4, 3 / 4], note: '15 to 45 min' }),
  ],
  notRecommended: ['normalise'],
  quench: { fluids: ['air'], from: ASM },
  quenched: { lowHrc: 61, highHrc: 64, from: ASM },
  annealedBrinell: [217, 255],
  temperSets: [HANDBOOK_D2],
};

export const S7: Grade = {
  id: 'S7',
  names: [sae('S7'), ...european('50CrMoV13-15', '1.2355')],
  limits: { C: [0.45, 0.55], Mn: [0.2, 0.9], Si: [0.2, 1], Cr: [3, 3.5], Mo: [1.3, 1.8], V: [0, 0.35] },
  limitsFrom: A681,
  nominal: { C: 0.5, Mn: 0.55, Si: 0.6, Cr: 3.25, Mo: 1.55 },
  windows: [
    window('forge', 925, 1120, ASM, { note: 'start at 1065 to 1120' }),
    window('full-anneal', 815, 845, SHOP, cooling(14, 540)),
    window('austenitise', 900, 955, SHOP, { holdHours: [1 / 4, 3 / 4], note: '15 to 45 min' }),
  ],
  notRecommended: ['normalise'],
  quench: { fluids: ['air', 'oil'], from: ASM },
  quenched: { lowHrc: 60, highHrc: 61, from: ASM },
  annealedBrinell: [187, 223],
  temperSets: [HANDBOOK_S7],
};

export const H13: Grade = {
  id: 'H13',
  names: [
    sae('H13'),
    ...european('X40CrMoV5-1', '1.2344'),
    { system: 'JIS', name: 'SKD61', same: false, from: published('composition lists of SKD61') },
  ],
  limits: {
    C: [0.32, 0.45],
    Mn: [0.2, 0.6],
    Si: [0.8, 1.25],
    Cr: [4.75, 5.5],
    Mo: [1.1, 1.75],
    V: [0.8, 1.2],
  },
  limitsFrom: A681,
  nominal: { C: 0.38, Mn: 0.4, Si: 1, Cr: 5.1, Mo: 1.4, V: 1 },
  windows: [
    window('forge', 900, 1175, ASM, { note: 'start at 1065 to 1175' }),
    window('full-anneal', 845, 900, ASM_TABLE, { maxCoolingCelsiusPerHour: 22 }),
    window('austenitise', 995, 1040, fromMemory('ASM Handbook; a shop table seen gives 995 to 1025'), {
      holdHours: [1 / 4, 2 / 3],
      note: '15 to 40 min',
    }),
  ],
  notRecommended: ['normalise'],
  quench: { fluids: ['air'], from: ASM },
  quenched: { lowHrc: 51, highHrc: 54, from: ASM },
  annealedBrinell: [192, 229],
  temperSets: [HANDBOOK_H13],
};

export const AIR_HARDENING_GRADES: readonly Grade[] = [A2, D2, S7, H13];
