import type { PieceShape } from '../../hub/contract/compute/piece.ts';
import { type Piece, PieceDraft } from '../../hub/contract/piece.ts';
import type { Unit } from '../../hub/contract/units.ts';
import { type Faults, faultsOf, missing } from '../parts/faults.ts';
import { type Entry, readAmount, readNumber, writeAmount } from '../parts/number-entry.ts';
import { faultWords } from '../words/faults.ts';
import { pieceFormWords } from '../words/pieces.ts';

/** What is typed of a piece, and what it means. Lengths in mm, the mass in the shop's unit. Pure. */

export interface PieceTexts {
  readonly mark: string;
  readonly title: string;
  readonly note: string;
  /** Grade or own steel that was chosen; null: none. */
  readonly grade: string | null;
  readonly steelTitle: string;
  readonly certificateId: string;
  /** As it was entered elsewhere; goes when a steel is chosen here. */
  readonly composition: Piece['steel']['composition'];
  readonly shape: PieceShape;
  readonly thickness: string;
  readonly mass: string;
  readonly templateId: string;
}

export type PieceValue = ReturnType<typeof PieceDraft.parse>;

export function pieceTexts(piece: Piece | null, mark: string, massUnit: Unit): PieceTexts {
  if (piece === null) return { ...EMPTY, mark };
  const { steel, section } = piece;
  return {
    mark: piece.mark,
    title: piece.title,
    note: piece.note,
    grade: steel.grade,
    steelTitle: steel.title,
    certificateId: steel.certificateId ?? '',
    composition: steel.composition,
    shape: section.shape,
    thickness: String(section.thicknessMm),
    mass: writeAmount(section.massKilograms, { unit: massUnit, meaning: 'point' }),
    templateId: '',
  };
}

const EMPTY: PieceTexts = {
  mark: '',
  title: '',
  note: '',
  grade: null,
  steelTitle: '',
  certificateId: '',
  composition: null,
  shape: 'plate',
  thickness: '',
  mass: '',
  templateId: '',
};

/** Faults by the contract's paths: "mark", "steel.grade", "section.thicknessMm". */
export function checkPiece(
  texts: PieceTexts,
  massUnit: Unit,
): { readonly value: PieceValue | null; readonly faults: Faults } {
  const thickness = readNumber(texts.thickness);
  const mass = readAmount(texts.mass, { unit: massUnit, meaning: 'point', optional: true });
  const parsed = PieceDraft.safeParse({
    mark: texts.mark,
    title: texts.title,
    note: texts.note,
    steel: {
      grade: texts.grade,
      title: texts.steelTitle,
      certificateId: texts.certificateId === '' ? null : texts.certificateId,
      composition: texts.composition,
    },
    section: {
      shape: texts.shape,
      thicknessMm: readValue(thickness),
      massKilograms: readValue(mass) ?? null,
    },
    templateId: texts.templateId === '' ? null : texts.templateId,
  });
  const isSteelNamed = texts.grade !== null || texts.certificateId !== '' || texts.composition !== null;
  const faults: Faults = {
    ...(parsed.success ? {} : faultsOf(parsed.error.issues, sayLimit)),
    ...unread('section.thicknessMm', thickness),
    ...unread('section.massKilograms', mass),
    ...(isSteelNamed ? {} : { 'steel.grade': pieceFormWords.chooseOne }),
    ...missing({ mark: texts.mark, 'section.thicknessMm': texts.thickness }),
  };
  const isSound = parsed.success && Object.keys(faults).length === 0;
  return { value: isSound ? parsed.data : null, faults };
}

function readValue(entry: Entry<number | null>): number | undefined {
  return entry.ok ? (entry.value ?? undefined) : undefined;
}

function unread(path: string, entry: Entry<number | null>): Faults {
  return entry.ok ? {} : { [path]: entry.message };
}

function sayLimit(path: string, limit: number): string {
  return path.endsWith('Mm') ? `${limit} mm` : `${limit} kg`;
}

/** A fault that a person need not see before they tried to save: nothing was entered or chosen yet. */
export function isEmptyFault(fault: string): boolean {
  return fault === faultWords.missing || fault === pieceFormWords.chooseOne;
}
