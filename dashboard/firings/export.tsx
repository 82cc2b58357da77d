import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { recordAddress } from '../api/client.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { SelectField } from '../parts/field.tsx';
import { firingWords } from '../words/firings.ts';

interface ExportProps {
  readonly firingId: string;
  readonly unit: DisplayUnit;
  readonly onUnit: (unit: DisplayUnit) => void;
}

/** The record as a file or on paper. The hub names the file, so the links only say that it is to be saved. */
export function Export({ firingId, unit, onUnit }: ExportProps) {
  return (
    <section class="firing-section" aria-labelledby="export-head">
      <h2 id="export-head">{firingWords.export}</h2>
      <div class="form form-narrow">
        <SelectField<DisplayUnit>
          label={firingWords.unit}
          hint={firingWords.unitHint}
          value={unit}
          options={[
            { value: 'Cel', label: '°C' },
            { value: '[degF]', label: '°F' },
          ]}
          onChange={onUnit}
        />
      </div>
      <div class="form-acts">
        <LinkButton href={recordAddress(firingId, 'csv', unit)} download="">
          {firingWords.csv}
        </LinkButton>
        <LinkButton href={recordAddress(firingId, 'json', unit)} download="">
          {firingWords.json}
        </LinkButton>
        <Button onPress={() => window.print()}>{firingWords.print}</Button>
      </div>
      <p class="aside">{firingWords.printHint}</p>
    </section>
  );
}
