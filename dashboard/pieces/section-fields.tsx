import { PIECE_SHAPES } from '../../hub/contract/compute/piece.ts';
import type { Unit } from '../../hub/contract/units.ts';
import { SelectField } from '../parts/field.tsx';
import { UnitField } from '../setup/unit-field.tsx';
import { pieceFormWords, SHAPE_WORDS } from '../words/pieces.ts';
import type { PieceTexts } from './piece-form.ts';

interface SectionFieldsProps {
  readonly texts: PieceTexts;
  readonly set: (change: Partial<PieceTexts>) => void;
  readonly massUnit: Unit;
  readonly fault: (path: string) => string | undefined;
}

/** The section that decides how long heat takes to reach the middle. */
export function SectionFields({ texts, set, massUnit, fault }: SectionFieldsProps) {
  return (
    <div class="form-row">
      <SelectField
        label={pieceFormWords.shape}
        value={texts.shape}
        options={PIECE_SHAPES.filter((shape) => shape !== 'cylinder' || texts.shape === 'cylinder').map(
          (shape) => ({ value: shape, label: SHAPE_WORDS[shape] }),
        )}
        onChange={(shape) => set({ shape })}
      />
      <UnitField
        label={pieceFormWords.thickness[texts.shape]}
        hint={pieceFormWords.thicknessHint}
        value={texts.thickness}
        unit="mm"
        onChange={(thickness) => set({ thickness })}
        error={fault('section.thicknessMm')}
      />
      <UnitField
        label={pieceFormWords.mass}
        hint={pieceFormWords.massHint}
        value={texts.mass}
        unit={massUnit.label}
        onChange={(mass) => set({ mass })}
        error={fault('section.massKilograms')}
      />
    </div>
  );
}
