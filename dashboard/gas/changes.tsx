import { useState } from 'preact/hooks';
import type { GasChange, GasSupplyNow } from '../../hub/contract/gas.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { shownUnit } from '../words/format.ts';
import { gasWords } from '../words/gas.ts';
import { dayAndTime } from '../words/time.ts';
import { massText, type Units } from './figures.ts';

interface ChangesProps {
  readonly changes: readonly GasChange[];
  readonly supplies: readonly GasSupplyNow[];
  readonly nameOf: (supply: string) => string;
  readonly units: Units;
  readonly onChanged: () => void;
}

/** Noted cylinders and fillings, and the form to note one. */
export function Changes({ changes, supplies, nameOf, units, onChanged }: ChangesProps) {
  const { api } = useShell();
  const press = useAction();
  const columns: Column<GasChange>[] = [
    { key: 'when', head: gasWords.when, cell: ({ at }) => dayAndTime(at) },
    {
      key: 'mass',
      head: gasWords.onLine,
      align: 'right',
      cell: ({ kilograms }) => massText(kilograms, units),
    },
    { key: 'supply', head: gasWords.supply, cell: ({ furnaceId }) => nameOf(furnaceId ?? 'shop') },
    { key: 'by', head: gasWords.by, cell: ({ by }) => by },
    { key: 'note', head: gasWords.note, cell: ({ note }) => note },
    {
      key: 'acts',
      head: '',
      cell: ({ id, at }) => (
        <Button
          name={gasWords.takeBackName(dayAndTime(at))}
          onPress={() =>
            press.run(async () => {
              await api.gas.takeBack(id);
              onChanged();
            })
          }
        >
          {gasWords.takeBack}
        </Button>
      ),
    },
  ];
  return (
    <>
      <ChangeForm supplies={supplies} nameOf={nameOf} units={units} onChanged={onChanged} />
      <ProblemNote error={press.error} />
      <Table
        caption={gasWords.changes}
        hideCaption
        columns={columns}
        rows={changes}
        rowKey={({ id }) => id}
        empty={gasWords.noChanges}
      />
    </>
  );
}

function ChangeForm({ supplies, nameOf, units, onChanged }: Omit<ChangesProps, 'changes'>) {
  const { api } = useShell();
  const press = useAction();
  const [kilograms, setKilograms] = useState<number | null>(null);
  const [supply, setSupply] = useState(supplies[0]?.id ?? 'shop');
  const [by, setBy] = useState('');
  const send = () =>
    press.run(async () => {
      const name = by.trim();
      const furnaceId = supply === 'shop' ? null : supply;
      await api.gas.note({ kilograms: kilograms ?? 0, furnaceId, ...(name === '' ? {} : { by: name }) });
      setKilograms(null);
      onChanged();
    });
  return (
    <form
      class="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (kilograms !== null) send();
      }}
    >
      <h3>{gasWords.newCylinder}</h3>
      <div class="form-row">
        <NumberField
          label={gasWords.onLine}
          hint={gasWords.newHint}
          value={kilograms}
          onChange={setKilograms}
          rule={{ unit: shownUnit('mass', units), meaning: 'difference', optional: true, low: 0, high: 3000 }}
        />
        {supplies.length > 1 && (
          <SelectField
            label={gasWords.supply}
            value={supply}
            options={supplies.map(({ id }) => ({ value: id, label: nameOf(id) }))}
            onChange={setSupply}
          />
        )}
        <TextField label={gasWords.by} value={by} onChange={setBy} maxLength={80} />
      </div>
      <ProblemNote error={press.error} />
      <div class="form-acts">
        <Button type="submit" tone="main" busy={press.busy} disabled={kilograms === null}>
          {gasWords.noteIt}
        </Button>
      </div>
    </form>
  );
}
