/** SAE 1045 to 1095. */
import type { Element } from './composition.ts';
import { cooling, european, fromMemory, type Grade, published, sae, window } from './grade.ts';
import {
  GRANGE_BAUGHMAN_1045,
  GRANGE_BAUGHMAN_1065,
  GRANGE_BAUGHMAN_1080,
} from './temper-sets-grange-baughman.ts';
import { HANDBOOK_1095 } from './temper-sets-handbook.ts';
import { HOLLOMON_JAFFE_074, HOLLOMON_JAFFE_089, HOLLOMON_JAFFE_098 } from './temper-sets-hollomon-jaffe.ts';

const LIMITS_FROM = published('lists of ASTM A576 and SAE J403, four copies agree');
const HTG = fromMemory("Heat Treater's Guide");
const HTG_EXTRACT = published("Heat Treater's Guide extract for a 0.35 to 0.45 % C grade");
const HTG_1095 = published("Heat Treater's Guide extract and a bladesmith data page");

function limits(
  c: [number, number],
  mn: [number, number],
): Partial<Record<Element, readonly [number, number]>> {
  return { C: c, Mn: mn, Si: [0.15, 0.35], P: [0, 0.04], S: [0, 0.05] };
}

export const SAE_1045: Grade = {
  id: '1045',
  names: [sae('1045'), ...european('C45', '1.0503')],
  limits: limits([0.43, 0.5], [0.6, 0.9]),
  limitsFrom: LIMITS_FROM,
  nominal: { C: 0.45, Mn: 0.75, Si: 0.25 },
  windows: [
    window('forge', 870, 1245, HTG),
    window('normalise', 900, 900, HTG_EXTRACT),
    window('full-anneal', 845, 845, HTG_EXTRACT, cooling(28, 650)),
    window('austenitise', 820, 860, HTG_EXTRACT),
  ],
  notRecommended: [],
  quench: { fluids: ['water', 'brine', 'oil'], oilBelowMm: 6, from: HTG },
  quenched: { lowHrc: 55, highHrc: 59, from: HTG },
  temperSets: [GRANGE_BAUGHMAN_1045],
};

export const SAE_1060: Grade = {
  id: '1060',
  names: [sae('1060'), ...european('C60', '1.0601')],
  limits: limits([0.55, 0.65], [0.6, 0.9]),
  limitsFrom: LIMITS_FROM,
  nominal: { C: 0.6, Mn: 0.75, Si: 0.25 },
  windows: [
    window('forge', 845, 1205, HTG),
    window('normalise', 885, 885, HTG),
    window('full-anneal', 830, 830, HTG, cooling(28, 650)),
    window('austenitise', 815, 845, HTG),
  ],
  notRecommended: [],
  quench: { fluids: ['water', 'oil'], note: 'oil for thin sections', from: HTG },
  quenched: { lowHrc: 62, highHrc: 65, from: HTG },
  temperSets: [GRANGE_BAUGHMAN_1065],
};

export const SAE_1075: Grade = {
  id: '1075',
  names: [sae('1075'), ...european('C75S', '1.1248')],
  limits: limits([0.7, 0.8], [0.4, 0.7]),
  limitsFrom: LIMITS_FROM,
  nominal: { C: 0.75, Mn: 0.55, Si: 0.25 },
  windows: [
    window('forge', 845, 1180, HTG),
    window('normalise', 870, 870, HTG),
    window('full-anneal', 830, 830, HTG, cooling(28, 650)),
    window('spheroidise', 700, 720, HTG, { holdHours: [8, 16], note: 'hold 8 h or more' }),
    window('austenitise', 800, 815, HTG),
  ],
  notRecommended: [],
  quench: { fluids: ['fast-oil', 'water'], from: HTG },
  quenched: { lowHrc: 65, highHrc: 65, from: HTG },
  temperSets: [HOLLOMON_JAFFE_074],
};

const EUTECTOID_WINDOWS = [
  window('forge', 845, 1175, HTG),
  window('normalise', 870, 870, HTG),
  window('full-anneal', 815, 830, HTG, cooling(28, 650)),
  window('spheroidise', 720, 720, HTG, { note: 'hold, or cycle about Ac1' }),
  window('austenitise', 800, 815, HTG),
];

export const SAE_1080: Grade = {
  id: '1080',
  names: [sae('1080')],
  limits: limits([0.75, 0.88], [0.6, 0.9]),
  limitsFrom: LIMITS_FROM,
  nominal: { C: 0.8, Mn: 0.75, Si: 0.25 },
  windows: EUTECTOID_WINDOWS,
  notRecommended: [],
  quench: { fluids: ['fast-oil', 'water'], note: 'fast oil for thin sections', from: HTG },
  quenched: { lowHrc: 65, highHrc: 65, from: HTG },
  temperSets: [GRANGE_BAUGHMAN_1080],
};

export const SAE_1084: Grade = {
  ...SAE_1080,
  id: '1084',
  names: [sae('1084')],
  limits: limits([0.8, 0.93], [0.6, 0.9]),
  nominal: { C: 0.85, Mn: 0.75, Si: 0.25 },
  temperSets: [GRANGE_BAUGHMAN_1080, HOLLOMON_JAFFE_089],
};

export const SAE_1095: Grade = {
  id: '1095',
  names: [sae('1095'), ...european('C100S', '1.1274')],
  limits: limits([0.9, 1.03], [0.3, 0.5]),
  limitsFrom: LIMITS_FROM,
  nominal: { C: 0.95, Mn: 0.4, Si: 0.25 },
  windows: [
    window('forge', 815, 1150, HTG_1095, { note: '1150 is the most' }),
    window('normalise', 855, 855, HTG_1095),
    window(
      'full-anneal',
      800,
      800,
      HTG_1095,
      cooling(28, 650, 'mostly spheroidised; below 650 the rate is free'),
    ),
    window(
      'spheroidise',
      800,
      800,
      HTG_1095,
      cooling(28, 650, 'the full anneal cycle gives mostly spheroidised steel'),
    ),
    window('austenitise', 800, 800, HTG_1095, { note: 'about 5 min for thin blades' }),
  ],
  notRecommended: [],
  quench: { fluids: ['water', 'brine', 'oil'], oilBelowMm: 5, from: HTG_1095 },
  quenched: { lowHrc: 64, highHrc: 66, from: HTG_1095 },
  temperSets: [HANDBOOK_1095, HOLLOMON_JAFFE_098],
};

export const PLAIN_CARBON_GRADES: readonly Grade[] = [
  SAE_1045,
  SAE_1060,
  SAE_1075,
  SAE_1080,
  SAE_1084,
  SAE_1095,
];
