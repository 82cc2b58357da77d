/** Spring, bearing and machinery steels. */
import { cooling, european, fromMemory, type Grade, published, sae, window } from './grade.ts';
import { GRANGE_BAUGHMAN_4140 } from './temper-sets-grange-baughman.ts';
import { HANDBOOK_4340, HANDBOOK_9260 } from './temper-sets-handbook.ts';
import { PENHA_4140, PENHA_5160, PENHA_6150, PENHA_52100 } from './temper-sets-penha.ts';

const J404 = fromMemory('SAE J404');
const HTG = fromMemory("Heat Treater's Guide");
const ON_5160 = published('a public forum page and a page quoting the ASM manual, which agree');
const ON_52100 = published("a practitioner's data page, from ASM and steel makers");
const SAE_TABLE = published('copy of an SAE heat treatment table');

export const SAE_5160: Grade = {
  id: '5160',
  names: [sae('5160'), ...european('60Cr3', '1.7177')],
  limits: { C: [0.56, 0.64], Mn: [0.75, 1], Si: [0.15, 0.35], Cr: [0.7, 0.9] },
  limitsFrom: published('page quoting the ASM manual'),
  nominal: { C: 0.6, Mn: 0.88, Si: 0.25, Cr: 0.8 },
  windows: [
    window('forge', 870, 1205, ON_5160, { note: '1205 is the most' }),
    window('normalise', 870, 870, ON_5160),
    window(
      'full-anneal',
      830,
      830,
      ON_5160,
      cooling(11, 650, 'to pearlite: fast to 705 °C, then slow; or 675 °C for 6 h'),
    ),
    window(
      'spheroidise',
      750,
      750,
      ON_5160,
      cooling(6, 650, 'fast to 705 °C, then slow; or 675 °C for 10 h'),
    ),
    window('austenitise', 830, 830, ON_5160),
  ],
  notRecommended: [],
  quench: { fluids: ['oil'], from: ON_5160 },
  quenched: { lowHrc: 58, highHrc: 63, from: ON_5160 },
  temperSets: [PENHA_5160],
};

export const SAE_52100: Grade = {
  id: '52100',
  names: [sae('52100'), ...european('100Cr6', '1.3505')],
  limits: { C: [0.98, 1.1], Mn: [0.25, 0.45], Si: [0.15, 0.35], Cr: [1.3, 1.6] },
  limitsFrom: J404,
  nominal: { C: 1, Mn: 0.35, Si: 0.25, Cr: 1.45 },
  windows: [
    window('forge', 925, 1150, ON_52100, { note: '1150 is the most' }),
    window('normalise', 885, 885, ON_52100),
    window(
      'spheroidise',
      795,
      795,
      ON_52100,
      cooling(6, 675, 'fast to 750 °C, then slow; or 690 °C for 16 h'),
    ),
    window('austenitise', 800, 845, ON_52100),
  ],
  notRecommended: ['full-anneal'],
  quench: { fluids: ['oil'], from: ON_52100 },
  quenched: { lowHrc: null, highHrc: 66, from: ON_52100 },
  temperSets: [PENHA_52100],
};

export const SAE_9260: Grade = {
  id: '9260',
  names: [sae('9260'), ...european('61SiCr7', '1.7108')],
  limits: { C: [0.56, 0.64], Mn: [0.75, 1], Si: [1.8, 2.2] },
  limitsFrom: J404,
  nominal: { C: 0.6, Mn: 0.88, Si: 2 },
  windows: [
    window('forge', 870, 1205, HTG),
    window('normalise', 900, 900, HTG),
    window('full-anneal', 860, 860, HTG, cooling(11, 650)),
    window('austenitise', 870, 870, HTG),
  ],
  notRecommended: [],
  quench: { fluids: ['oil'], from: HTG },
  quenched: { lowHrc: 58, highHrc: 63, from: HTG },
  temperSets: [HANDBOOK_9260],
};

export const SAE_4140: Grade = {
  id: '4140',
  names: [sae('4140'), ...european('42CrMo4', '1.7225')],
  limits: { C: [0.38, 0.43], Mn: [0.75, 1], Si: [0.15, 0.35], Cr: [0.8, 1.1], Mo: [0.15, 0.25] },
  limitsFrom: J404,
  nominal: { C: 0.4, Mn: 0.88, Si: 0.25, Cr: 0.95, Mo: 0.2 },
  windows: [
    window('forge', 900, 1230, HTG),
    window('normalise', 870, 925, HTG, { note: '925 is the most' }),
    window('full-anneal', 790, 845, SAE_TABLE),
    window('austenitise', 845, 870, SAE_TABLE),
  ],
  notRecommended: [],
  quench: { fluids: ['oil'], from: HTG },
  quenched: { lowHrc: 54, highHrc: 59, from: HTG },
  temperSets: [GRANGE_BAUGHMAN_4140, PENHA_4140],
};

export const SAE_4340: Grade = {
  id: '4340',
  names: [sae('4340'), ...european('40NiCrMo7', '1.6565')],
  limits: {
    C: [0.38, 0.43],
    Mn: [0.6, 0.8],
    Si: [0.15, 0.35],
    Cr: [0.7, 0.9],
    Ni: [1.65, 2],
    Mo: [0.2, 0.3],
  },
  limitsFrom: J404,
  nominal: { C: 0.4, Mn: 0.7, Si: 0.25, Cr: 0.8, Ni: 1.83, Mo: 0.25 },
  windows: [
    window('forge', 980, 1230, HTG),
    window('normalise', 870, 925, SAE_TABLE),
    window('full-anneal', 790, 845, SAE_TABLE, cooling(11, 600)),
    window('austenitise', 815, 845, SAE_TABLE),
  ],
  notRecommended: [],
  quench: { fluids: ['oil', 'air'], note: 'air when small', from: HTG },
  quenched: { lowHrc: 54, highHrc: 58, from: HTG },
  temperSets: [HANDBOOK_4340],
};

export const SAE_6150: Grade = {
  id: '6150',
  names: [sae('6150'), ...european('51CrV4', '1.8159')],
  limits: { C: [0.48, 0.53], Mn: [0.7, 0.9], Si: [0.15, 0.35], Cr: [0.8, 1.1], V: [0.15, 0.3] },
  limitsFrom: fromMemory('SAE J404, which gives vanadium 0.15 % as the least; 0.30 is a reading aid'),
  nominal: { C: 0.5, Mn: 0.8, Si: 0.25, Cr: 0.95, V: 0.15 },
  windows: [
    window('forge', 870, 1205, HTG),
    window('normalise', 900, 900, HTG),
    window('full-anneal', 830, 845, HTG, cooling(8, 650, '8 to 11 °C/h')),
    window('austenitise', 845, 885, published("a spring maker's table gives 830 to 885"), {
      note: '870 usual',
    }),
  ],
  notRecommended: [],
  quench: { fluids: ['oil'], from: HTG },
  quenched: { lowHrc: 60, highHrc: 60, from: HTG },
  temperSets: [PENHA_6150],
};

export const LOW_ALLOY_GRADES: readonly Grade[] = [
  SAE_5160,
  SAE_52100,
  SAE_9260,
  SAE_4140,
  SAE_4340,
  SAE_6150,
];
