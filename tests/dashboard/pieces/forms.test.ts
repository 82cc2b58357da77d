import { describe, expect, it } from 'vitest';
import { ApiError } from '../../../dashboard/api/error.ts';
import { fileFault } from '../../../dashboard/pieces/attachment.ts';
import { checkHardness, EMPTY_HARDNESS, type HardnessTexts } from '../../../dashboard/pieces/hardness.ts';
import { checkPiece, pieceTexts } from '../../../dashboard/pieces/piece-form.ts';
import { refusedAt } from '../../../dashboard/pieces/refused.ts';
import { unitNamed } from '../../../dashboard/words/format.ts';
import { piece } from './kit.ts';

const NEEDED = 'Needed: please fill this in.';
const KG = unitNamed('kg');
const POUND = unitNamed('[lb_av]');

describe('a piece as it is typed', () => {
  const texts = { ...pieceTexts(null, 'K7', KG), grade: '1084', thickness: '3,5' };

  it('takes a decimal comma, and leaves the mass open', () => {
    expect(checkPiece(texts, KG).value).toMatchObject({
      mark: 'K7',
      steel: { grade: '1084', certificateId: null },
      section: { shape: 'plate', thicknessMm: 3.5, massKilograms: null },
    });
  });

  it('takes the mass in the unit of the shop', () => {
    // NIST SP 811 B.9: 1 lb = 0.453 592 37 kg.
    const { value } = checkPiece({ ...texts, mass: '2' }, POUND);
    expect(value?.section.massKilograms).toBeCloseTo(0.90718474, 8);
  });

  it('says what is missing at each field, and names no steel for the person', () => {
    const { value, faults } = checkPiece(pieceTexts(null, '', KG), KG);
    expect(value).toBeNull();
    expect(faults).toEqual({
      mark: NEEDED,
      'steel.grade': 'Choose one of the steels below.',
      'section.thicknessMm': NEEDED,
    });
  });

  it('refuses a mark that cannot be stamped and a section beyond the hub', () => {
    const { faults } = checkPiece({ ...texts, mark: 'K 7', thickness: '2000' }, KG);
    expect(faults.mark).toContain('letters, digits');
    expect(faults['section.thicknessMm']).toBe('At most 1000 mm.');
    expect(checkPiece({ ...texts, thickness: 'thick' }, KG).faults['section.thicknessMm']).toContain(
      'is not a number',
    );
  });

  it('writes a piece back as it was', () => {
    const known = piece({ section: { shape: 'bar', thicknessMm: 24, massKilograms: 0.8 } });
    const { value } = checkPiece(pieceTexts(known, '', KG), KG);
    expect(value).toMatchObject({ mark: 'K1', steel: known.steel, section: known.section });
  });
});

describe('hardness readings as they are typed', () => {
  const typed = (...values: string[]): HardnessTexts => ({
    scale: 'HRC',
    readings: values.map((value, key) => ({ key, value, position: '' })),
  });

  it('leaves empty rows out', () => {
    const { value } = checkHardness(typed('61', '', '62,5'));
    expect(value?.readings.map((reading) => reading.value)).toEqual([61, 62.5]);
  });

  it('asks for one at least, and for the number of a place', () => {
    expect(checkHardness(EMPTY_HARDNESS).faults).toEqual({ '0.value': NEEDED });
    const readings = [...typed('60').readings, { key: 9, value: '', position: 'edge' }];
    expect(checkHardness({ scale: 'HRC', readings }).faults).toEqual({ '1.value': NEEDED });
  });

  it('marks the row that the scale cannot read, empty rows counted', () => {
    const { value, faults } = checkHardness(typed('', '61', '615'));
    expect(value).toBeNull();
    expect(Object.keys(faults)).toEqual(['2.value']);
    expect(faults['2.value']).toContain('0 to 72');
    expect(checkHardness({ ...typed('615'), scale: 'HV' }).value).not.toBeNull();
  });
});

describe('a file before it is sent', () => {
  const limits = { types: ['image/png'], mostBytes: 8 * 1024 * 1024 };

  it('is refused when it is missing, too big or of another kind, and else not', () => {
    expect(fileFault(null, limits)).toContain('Choose');
    expect(fileFault({ type: 'image/png', size: limits.mostBytes + 1 }, limits)).toContain('8 MB');
    expect(fileFault({ type: 'text/html', size: 10 }, limits)).toContain('not taken');
    expect(fileFault({ type: 'image/png', size: limits.mostBytes }, limits)).toBeNull();
  });
});

describe('what the hub refuses', () => {
  const refusal = (code: string, path?: string) =>
    new ApiError('refused', 'taken', {
      status: 409,
      problem: {
        type: 'urn:x',
        title: 't',
        status: 409,
        code,
        errors: path === undefined ? undefined : [{ path, message: 'no' }],
      },
    });

  it('stands beside its field, by path or by what the code is about', () => {
    expect(refusedAt(refusal('invalid-request', '/section/thicknessMm'), 'section.thicknessMm')).toBe('no');
    expect(refusedAt(refusal('already-exists'), 'mark')).toBe('taken');
  });

  it('stands beside no other', () => {
    expect(refusedAt(refusal('already-exists'), 'title')).toBeUndefined();
    expect(refusedAt(new Error('x'), 'mark')).toBeUndefined();
  });
});
