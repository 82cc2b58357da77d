/**
 * Limits for the general public, planning values for rare releases, and limits
 * on the blood, for orientation beside the workplace table. None of them drives
 * an alarm of the shop.
 */
import {
  HOUR_SECONDS,
  type LimitEdition,
  type LimitRow,
  type LimitUse,
  limitRows,
  MINUTE_SECONDS,
} from './limit-row.ts';
import type { Provenance } from './provenance.ts';

const M = MINUTE_SECONDS;
const H = HOUR_SECONDS;

const NAAQS: LimitEdition = {
  body: 'US EPA NAAQS',
  edition: '76 FR 54294, 2011, retained',
  force: 'in-force',
  from: {
    standing: 'published-secondary',
    source: 'EPA criteria document abstract; 76 FR 54294',
    note: 'each exceeded not more than once a year',
  },
};
const EU_AMBIENT: LimitEdition = {
  body: 'European Union, ambient air',
  edition: 'Directive 2008/50/EC',
  force: 'in-force',
  from: {
    standing: 'published-secondary',
    source: 'EEA note on 2008/50/EC',
    note: 'highest 8 h mean of the day',
  },
};
const WHO_2000: LimitEdition = {
  body: 'WHO Europe',
  edition: '2000',
  force: 'guideline',
  from: {
    standing: 'published-secondary',
    source: 'WHO Air Quality Guidelines for Europe, table restated in an open-access paper',
    note: 'set so that carboxyhaemoglobin stays at or under 2.5 %',
  },
};
const WHO_2010: LimitEdition = {
  body: 'WHO, indoor air',
  edition: '2010',
  force: 'guideline',
  from: {
    standing: 'from-memory',
    source: 'WHO guidelines for indoor air quality, 2010',
    note: 'ppm computed at 25 °C',
  },
};
const WHO_2021: LimitEdition = {
  body: 'WHO',
  edition: '2021',
  force: 'guideline',
  from: { standing: 'published-secondary', source: 'WHO global air quality guidelines 2021, table quoted' },
};
const EEGL: LimitEdition = {
  body: 'NRC emergency guidance',
  edition: '1987',
  force: 'guideline',
  from: { standing: 'published-secondary', source: 'NIOSH IDLH page for carbon monoxide' },
};
const AEGL: LimitEdition = {
  body: 'US AEGL',
  edition: 'NRC volume 8, 2010',
  force: 'guideline',
  from: {
    standing: 'from-memory',
    source: 'NRC Acute Exposure Guideline Levels, volume 8, 2010',
    note: 'AEGL-1 not recommended; five flat blood levels under the Coburn-Forster-Kane equation support the figures',
  },
};

const emergency: LimitUse = 'emergency';

/** Rows for the public and for emergencies. */
export const PUBLIC_LIMITS: readonly LimitRow[] = [
  ...limitRows(NAAQS, [
    ['naaqs-8h', 'ambient', 9, 10, 8 * H],
    ['naaqs-1h', 'ambient', 35, 40, H],
  ]),
  ...limitRows(EU_AMBIENT, [['eu-ambient-8h', 'ambient', null, 10, 8 * H]]),
  ...limitRows(WHO_2000, [
    ['who-2000-15min', 'ambient', 90, 100, 15 * M],
    ['who-2000-30min', 'ambient', 50, 60, 30 * M],
    ['who-2000-1h', 'ambient', 25, 30, H],
    ['who-2000-8h', 'ambient', 10, 10, 8 * H],
  ]),
  ...limitRows(WHO_2010, [
    ['who-2010-15min', 'ambient', 87, 100, 15 * M],
    ['who-2010-1h', 'ambient', 31, 35, H],
    ['who-2010-8h', 'ambient', 8.7, 10, 8 * H],
    ['who-2010-24h', 'ambient', 6.1, 7, 24 * H],
  ]),
  ...limitRows(WHO_2021, [['who-2021-24h', 'ambient', 3.5, 4, 24 * H]]),
  ...limitRows(EEGL, [
    ['eegl-10min', emergency, 1500, null, 10 * M],
    ['eegl-30min', emergency, 800, null, 30 * M],
    ['eegl-1h', emergency, 400, null, H],
    ['eegl-24h', emergency, 50, null, 24 * H],
  ]),
  ...limitRows(AEGL, [
    ['aegl-2-10min', emergency, 420, null, 10 * M],
    ['aegl-2-30min', emergency, 150, null, 30 * M],
    ['aegl-2-1h', emergency, 83, null, H],
    ['aegl-2-4h', emergency, 33, null, 4 * H],
    ['aegl-2-8h', emergency, 27, null, 8 * H],
    ['aegl-3-10min', emergency, 1700, null, 10 * M],
    ['aegl-3-30min', emergency, 600, null, 30 * M],
    ['aegl-3-1h', emergency, 330, null, H],
    ['aegl-3-4h', emergency, 150, null, 4 * H],
    ['aegl-3-8h', emergency, 130, null, 8 * H],
  ]),
];

/** A limit on what a person carries, measured at the end of the exposure. */
export interface BiologicalLimit {
  readonly id: string;
  readonly body: string;
  readonly measured: 'carboxyhaemoglobin-percent' | 'exhaled-ppm';
  readonly value: number;
  readonly from: Provenance;
}

/** Orientation for the estimate of the blood; a measured sample is a clinician's matter. */
export const BIOLOGICAL_LIMITS: readonly BiologicalLimit[] = [
  {
    id: 'acgih-bei-blood',
    body: 'ACGIH',
    measured: 'carboxyhaemoglobin-percent',
    value: 3.5,
    from: { standing: 'from-memory', source: 'ACGIH TLVs and BEIs', note: 'end of shift' },
  },
  {
    id: 'acgih-bei-breath',
    body: 'ACGIH',
    measured: 'exhaled-ppm',
    value: 20,
    from: { standing: 'from-memory', source: 'ACGIH TLVs and BEIs', note: 'end of shift' },
  },
  {
    id: 'germany-bgw',
    body: 'Germany',
    measured: 'carboxyhaemoglobin-percent',
    value: 5,
    from: {
      standing: 'published-secondary',
      source: 'TRGS 903, quoted in an older DGUV document',
      note: 'end of exposure',
    },
  },
];
