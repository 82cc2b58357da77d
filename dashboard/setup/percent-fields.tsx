import { useState } from 'preact/hooks';
import { ELEMENTS } from '../../hub/contract/compute/steel-choice.ts';
import { ApiError } from '../api/error.ts';
import { Button } from '../parts/button.tsx';
import { COMMON_ELEMENTS, type PercentTexts, refusedElements } from '../steel/composition.ts';
import { ownSteelWords } from '../words/setup-steels.ts';
import { UnitField } from './unit-field.tsx';

interface PercentFieldsProps {
  readonly texts: PercentTexts;
  readonly onChange: (texts: PercentTexts) => void;
  /** By path: "composition.C". */
  readonly fault: (path: string) => string | undefined;
  /** What the hub refused last; what speaks of an element stands beside its field. */
  readonly refusal: unknown;
}

/** Mass percent by element, the rarer ones behind a button. */
export function PercentFields({ texts, onChange, fault, refusal }: PercentFieldsProps) {
  const [all, setAll] = useState(false);
  const refused = refusal instanceof ApiError ? refusedElements(refusal) : {};
  const shown = ELEMENTS.filter(
    (element) => all || COMMON_ELEMENTS.includes(element) || (texts[element] ?? '') !== '',
  );
  return (
    <fieldset class="setup-group">
      <legend>{ownSteelWords.composition}</legend>
      <p class="aside">{ownSteelWords.compositionHint}</p>
      <div class="setup-percents">
        {shown.map((element) => (
          <UnitField
            key={element}
            label={element}
            unit={ownSteelWords.percent}
            value={texts[element] ?? ''}
            onChange={(text) => onChange({ ...texts, [element]: text })}
            error={fault(`composition.${element}`) ?? refused[element]}
          />
        ))}
      </div>
      <div class="form-acts">
        <Button onPress={() => setAll(!all)}>{all ? ownSteelWords.fewer : ownSteelWords.more}</Button>
      </div>
    </fieldset>
  );
}
