import type { PieceShape } from '../../hub/contract/compute/piece.ts';
import { pieceFormWords } from '../words/pieces.ts';

const NAMES: Readonly<Record<string, string>> = {
  mark: pieceFormWords.mark,
  title: pieceFormWords.title,
  note: pieceFormWords.note,
  'steel.grade': pieceFormWords.steel,
  'steel.title': pieceFormWords.steelTitle,
  'steel.certificateId': pieceFormWords.certificate,
  'section.massKilograms': pieceFormWords.mass,
  templateId: pieceFormWords.template,
};

/** What a field of the form is called, by its path in the contract. */
export function pieceFieldName(path: string, shape: PieceShape): string {
  if (path === 'section.thicknessMm') return pieceFormWords.thickness[shape];
  return NAMES[path] ?? path;
}
