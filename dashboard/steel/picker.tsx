import { useState } from 'preact/hooks';
import type { z } from 'zod';
import type { SteelSummary } from '../../hub/contract/compute/steels.ts';
import { TextField } from '../parts/field.tsx';
import { hrefTo } from '../router.ts';
import { steelWords } from '../words/steel.ts';
import { filterGrades, otherNames } from './filter.ts';

interface PickerProps {
  readonly grades: readonly z.infer<typeof SteelSummary>[];
  /** The grade that is shown now, if any. */
  readonly here: string;
}

/** The catalogue as links, narrowed down while one types. */
export function Picker({ grades, here }: PickerProps) {
  const [text, setText] = useState('');
  const found = filterGrades(grades, text);
  return (
    <div class="steel-picker">
      <TextField
        label={steelWords.find}
        hint={steelWords.findHint}
        value={text}
        maxLength={64}
        onChange={setText}
      />
      <p class="steel-quiet" role="status">
        {found.length === 0 ? steelWords.noneFound(text) : steelWords.found(found.length, grades.length)}
      </p>
      <ul class="steel-grades">
        {found.map((grade) => (
          <li key={grade.id}>
            <a
              href={hrefTo({ view: 'steel', name: grade.id })}
              aria-current={grade.id === here ? 'true' : undefined}
            >
              <strong>{grade.title}</strong>
              <span class="steel-names">
                {otherNames(grade)
                  .map(({ name, same }) => (same ? name : `~\u00a0${name}`))
                  .join(', ')}
              </span>
            </a>
          </li>
        ))}
      </ul>
      <p class="aside">{steelWords.nearKey}</p>
    </div>
  );
}
