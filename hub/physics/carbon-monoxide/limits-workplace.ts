/**
 * Workplace limits for carbon monoxide, row by row.
 *
 * A limit is a ceiling on risk and never a line below which air is good. Check
 * the edition in force where the shop stands: the law there comes before this table.
 */
import {
  HOUR_SECONDS,
  INSTANT,
  type LimitEdition,
  type LimitRow,
  limitRows,
  MINUTE_SECONDS,
} from './limit-row.ts';

const DAY = 8 * HOUR_SECONDS;
const QUARTER = 15 * MINUTE_SECONDS;
const published = (source: string) => ({ standing: 'published-secondary', source }) as const;
const remembered = (source: string) => ({ standing: 'from-memory', source }) as const;

const NIOSH_PAGE = 'NIOSH IDLH page for carbon monoxide';
const MIOSHA = 'MIOSHA memorandum on the Coburn equation, 2014';

const OSHA: LimitEdition = {
  body: 'OSHA general industry',
  edition: '29 CFR 1910.1000 Table Z-1',
  force: 'in-force',
  from: published(NIOSH_PAGE),
};
const OSHA_MARITIME: LimitEdition = {
  body: 'OSHA marine terminals',
  edition: '29 CFR 1917.24',
  force: 'in-force',
  from: published('29 CFR 1917.24, quoted'),
};
const OSHA_ROLL_ON: LimitEdition = {
  body: 'OSHA roll-on/roll-off work',
  edition: 'OSHA fact sheet on carbon monoxide',
  force: 'in-force',
  from: published('OSHA fact sheet on carbon monoxide, quoted'),
};
const OSHA_1989: LimitEdition = {
  body: 'OSHA 1989 rule',
  edition: '1989, vacated federally',
  force: 'superseded',
  from: published(NIOSH_PAGE),
};
const MICHIGAN: LimitEdition = {
  body: 'Michigan OSHA general industry',
  edition: '2014',
  force: 'in-force',
  from: published(MIOSHA),
};
const NIOSH: LimitEdition = {
  body: 'NIOSH',
  edition: 'criteria document 1972',
  force: 'guideline',
  from: published(NIOSH_PAGE),
};
const NIOSH_IDLH: LimitEdition = {
  body: 'NIOSH',
  edition: 'IDLH revised 1994',
  force: 'guideline',
  from: published('NIOSH IDLH list, quoted'),
};
const ACGIH: LimitEdition = {
  body: 'ACGIH',
  edition: 'TLV as listed by NIOSH and OSHA',
  force: 'guideline',
  from: published('NIOSH IDLH page; OSHA sampling page'),
};
const ACGIH_EXCURSION: LimitEdition = {
  body: 'ACGIH',
  edition: 'TLV introduction',
  force: 'guideline',
  from: remembered('ACGIH TLV introduction'),
};
const EU: LimitEdition = {
  body: 'European Union',
  edition: 'Directive 2004/37/EC Annex III, as amended by (EU) 2022/431',
  force: 'in-force',
  from: published('ECHA list of the limits of Directive 2004/37/EC Annex III'),
};
const UK: LimitEdition = {
  body: 'United Kingdom',
  edition: 'EH40/2005, 4th edition, January 2020',
  force: 'in-force',
  from: {
    ...published('EH40/2005 edition and its 2018 reduction; numbers of Directive (EU) 2017/164'),
    note: 'the row of the table itself is from memory',
  },
};
const UK_OLD: LimitEdition = {
  body: 'United Kingdom until August 2018',
  edition: 'EH40/2005, earlier; mines and tunnels until 21 August 2023',
  force: 'superseded',
  from: published('text on the transition of the workplace limit'),
};
const GERMANY: LimitEdition = {
  body: 'Germany',
  edition: 'TRGS 900, January 2024',
  force: 'in-force',
  from: published('TRGS 900 as of January 2024, quoted in a text that cites BAuA'),
};

/** Every workplace row, in force and superseded. */
export const WORKPLACE_LIMITS: readonly LimitRow[] = [
  ...limitRows(OSHA, [['osha-pel', 'twa', 50, 55, DAY, '55 mg/m³ is rounded; 50 ppm computes to 57.2']]),
  ...limitRows(OSHA_MARITIME, [
    ['osha-maritime', 'twa', 50, null, DAY, 'area average'],
    ['osha-maritime-removal', 'removal', 100, null, INSTANT],
  ]),
  ...limitRows(OSHA_ROLL_ON, [['osha-roll-on', 'ceiling', 200, null, INSTANT]]),
  ...limitRows(OSHA_1989, [
    ['osha-1989-twa', 'twa', 35, 40, DAY],
    ['osha-1989-ceiling', 'ceiling', 200, 229, INSTANT],
  ]),
  ...limitRows(MICHIGAN, [
    ['michigan-twa', 'twa', 35, null, DAY],
    ['michigan-ceiling', 'ceiling', 200, null, 5 * MINUTE_SECONDS, 'assessed as a 5 min mean'],
  ]),
  ...limitRows(NIOSH, [
    ['niosh-rel', 'twa', 35, 40, 10 * HOUR_SECONDS, 'a working day of up to 10 h in a 40 h week'],
    ['niosh-ceiling', 'ceiling', 200, 229, INSTANT],
  ]),
  ...limitRows(NIOSH_IDLH, [['niosh-idlh', 'idlh', 1200, null, INSTANT, '1500 before 1994']]),
  ...limitRows(ACGIH, [['acgih-tlv', 'twa', 25, 29, DAY]]),
  ...limitRows(ACGIH_EXCURSION, [
    ['acgih-excursion', 'excursion', 75, null, INSTANT, 'three times the TLV: short peaks only'],
    ['acgih-excursion-never', 'excursion', 125, null, INSTANT, 'five times the TLV: never'],
  ]),
  ...limitRows(EU, [
    ['eu-twa', 'twa', 20, 23, DAY],
    ['eu-stel', 'stel', 100, 117, QUARTER],
  ]),
  ...limitRows(UK, [
    ['uk-twa', 'twa', 20, 23, DAY],
    ['uk-stel', 'stel', 100, 117, QUARTER],
  ]),
  ...limitRows(UK_OLD, [
    ['uk-old-twa', 'twa', 30, 35, DAY],
    ['uk-old-stel', 'stel', 200, 232, QUARTER, '200 ppm from memory'],
  ]),
  ...limitRows(GERMANY, [
    ['germany-twa', 'twa', 20, 23, DAY, 'the older 30 ppm is out of date'],
    ['germany-stel', 'stel', 60, 70, QUARTER],
  ]),
];
