import { useState } from 'preact/hooks';
import { ShopChangeDraft } from '../../hub/contract/batch-statistics.ts';
import { Button } from '../parts/button.tsx';
import { SelectField, TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useShell } from '../shell.ts';
import { batchWords, CHANGE_WORDS } from '../words/review.ts';

interface ChangeFormProps {
  readonly furnaces: readonly { readonly id: string; readonly name: string }[];
  readonly onNoted: () => void;
}

const KINDS = ShopChangeDraft.shape.kind.options;

/** Notes that something was changed in the shop, now. */
export function ChangeForm({ furnaces, onNoted }: ChangeFormProps) {
  const { api } = useShell();
  const [kind, setKind] = useState<(typeof KINDS)[number]>('probe');
  const [furnaceId, setFurnace] = useState('');
  const [text, setText] = useState('');
  const [outcome, setOutcome] = useState<{ readonly noted: boolean; readonly error: unknown } | null>(null);
  const note = () =>
    api.review.addShopChange({ kind, furnaceId: furnaceId || null, text }).then(
      () => {
        setText('');
        setOutcome({ noted: true, error: null });
        onNoted();
      },
      (error: unknown) => setOutcome({ noted: false, error }),
    );
  return (
    <details class="review-change">
      <summary>{batchWords.noteChange}</summary>
      <div class="heat-form">
        <SelectField
          label={batchWords.noteKind}
          value={kind}
          options={KINDS.map((value) => ({ value, label: CHANGE_WORDS[value] }))}
          onChange={setKind}
        />
        <SelectField
          label={batchWords.noteFurnace}
          value={furnaceId}
          options={[
            { value: '', label: batchWords.wholeShop },
            ...furnaces.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={setFurnace}
        />
        <TextField
          label={batchWords.noteText}
          value={text}
          hint={batchWords.noteHint}
          maxLength={200}
          onChange={setText}
        />
        <Button onPress={note}>{batchWords.addChange}</Button>
        {outcome?.noted && <p role="status">{batchWords.noted}</p>}
        <ProblemNote error={outcome?.error ?? null} />
      </div>
    </details>
  );
}
