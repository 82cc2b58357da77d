import type { SteelSummary } from '../../hub/contract/compute/steels.ts';
import { SelectField, TextField } from '../parts/field.tsx';
import { piecesWords } from '../words/pieces.ts';
import type { PieceFilter } from './list.ts';
import { STEP_CHOICES } from './step-name.ts';

interface FiltersProps {
  readonly filter: PieceFilter;
  readonly onChange: (filter: PieceFilter) => void;
  readonly steels: readonly SteelSummary[];
  /** Steps that are due somewhere. */
  readonly due: ReadonlySet<string>;
}

export function Filters({ filter, onChange, steels, due }: FiltersProps) {
  const set = (change: Partial<PieceFilter>) => onChange({ ...filter, ...change });
  return (
    <fieldset class="form-row piece-filters">
      <legend class="sr-only">{piecesWords.filters}</legend>
      <TextField
        label={piecesWords.search}
        hint={piecesWords.searchHint}
        value={filter.text}
        maxLength={200}
        onChange={(text) => set({ text })}
      />
      <SelectField
        label={piecesWords.due}
        value={filter.due}
        options={[
          { value: '', label: piecesWords.everyDue },
          ...STEP_CHOICES.filter(({ value }) => due.has(value) || value === filter.due),
        ]}
        onChange={(key) => set({ due: key })}
      />
      <SelectField
        label={piecesWords.steel}
        value={filter.steel}
        options={[
          { value: '', label: piecesWords.everySteel },
          ...steels.map(({ id, title }) => ({ value: id, label: title })),
        ]}
        onChange={(steel) => set({ steel })}
      />
      <SelectField<PieceFilter['archived']>
        label={piecesWords.kept}
        value={filter.archived}
        options={[
          { value: 'no', label: piecesWords.keptNo },
          { value: 'yes', label: piecesWords.keptYes },
          { value: 'any', label: piecesWords.keptAny },
        ]}
        onChange={(archived) => set({ archived })}
      />
    </fieldset>
  );
}
