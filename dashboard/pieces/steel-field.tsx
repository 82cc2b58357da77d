import { useState } from 'preact/hooks';
import type { SteelSummary } from '../../hub/contract/compute/steels.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { filterGrades } from '../steel/filter.ts';
import { pieceFormWords } from '../words/pieces.ts';

interface SteelFieldProps {
  readonly steels: readonly SteelSummary[];
  /** Id of the steel that is chosen; null: none. */
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
  readonly error?: string | undefined;
}

/** More buttons than this are no help to a thumb: another letter narrows them down. */
const MOST_SHOWN = 6;

/** A steel by any of its names: one types, and presses the one that is meant. */
export function SteelField({ steels, chosen, onChoose, error }: SteelFieldProps) {
  const [text, setText] = useState('');
  const found = text.trim() === '' ? [] : filterGrades(steels, text);
  const title = steels.find(({ id }) => id === chosen)?.title ?? chosen;
  const choose = (id: string) => {
    onChoose(id);
    setText('');
  };
  return (
    <div class="steel-field">
      <TextField
        label={pieceFormWords.steel}
        hint={pieceFormWords.steelHint}
        value={text}
        onChange={setText}
        maxLength={64}
        error={error}
      />
      <p role="status">{statusOf(text, found.length, title)}</p>
      {found.length > 0 && (
        <ul class="plain-list steel-found">
          {found.slice(0, MOST_SHOWN).map((steel) => (
            <li key={steel.id}>
              <Button name={pieceFormWords.choose(steel.title)} onPress={() => choose(steel.id)}>
                {steel.title}
              </Button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function statusOf(text: string, found: number, title: string | null): string {
  if (text.trim() === '') return title === null ? '' : pieceFormWords.chosen(title);
  return found === 0 ? pieceFormWords.noSteel(text) : pieceFormWords.found(found);
}
