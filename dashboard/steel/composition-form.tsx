import { useState } from 'preact/hooks';
import { type Composition, ELEMENTS, type Element } from '../../hub/contract/compute/steel-choice.ts';
import { ApiError } from '../api/error.ts';
import { Button } from '../parts/button.tsx';
import { UnitField } from '../setup/unit-field.tsx';
import { steelWords } from '../words/steel.ts';
import {
  COMMON_ELEMENTS,
  type PercentFaults,
  type PercentTexts,
  percentTexts,
  readComposition,
  refusedElements,
} from './composition.ts';

export interface CompositionFormProps {
  /** The grade whose certificate this is, with its usual percents and its limits; null for a steel of no grade. */
  readonly grade: {
    readonly title: string;
    readonly nominal: Readonly<Record<string, number>>;
    readonly limits: Readonly<Record<string, { readonly low: number; readonly high: number }>>;
  } | null;
  /** What the hub refused of the composition sent last. */
  readonly refusal: unknown;
  /** Called with what was entered; null when everything was cleared. */
  readonly onUse: (composition: Composition | null) => void;
}

/** Percents by element. What is no number is said at once; what the hub refuses stands beside its field. */
export function CompositionForm({ grade, refusal, onUse }: CompositionFormProps) {
  const [texts, setTexts] = useState<PercentTexts>({});
  const [sent, setSent] = useState<PercentTexts>({});
  const [all, setAll] = useState(false);
  const read = readComposition(texts);
  // A refusal speaks of what was sent: it goes as soon as the field is changed.
  const refused = refusal instanceof ApiError ? refusedElements(refusal) : {};
  const faults: PercentFaults = read.ok ? refused : read.faults;
  const faultOf = (element: Element) =>
    read.ok && texts[element] !== sent[element] ? undefined : faults[element];
  const shown = ELEMENTS.filter(
    (element) => all || COMMON_ELEMENTS.includes(element) || (texts[element] ?? '') !== '' || faults[element],
  );
  const use = (next: PercentTexts) => {
    const entered = readComposition(next);
    setSent(next);
    if (entered.ok) onUse(entered.composition);
  };
  return (
    <form
      class="form steel-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        use(texts);
      }}
    >
      <p class="aside">{grade ? steelWords.madeCertificate(grade.title) : steelWords.madeHint}</p>
      <div class="steel-elements">
        {shown.map((element) => (
          <UnitField
            key={element}
            label={element}
            unit={steelWords.percent}
            value={texts[element] ?? ''}
            {...hintOf(grade?.limits[element])}
            error={faultOf(element)}
            onChange={(text) => setTexts({ ...texts, [element]: text })}
          />
        ))}
      </div>
      <div class="form-acts">
        <Button type="submit" tone="main" disabled={!read.ok}>
          {steelWords.useIt}
        </Button>
        {grade && (
          <Button onPress={() => setTexts(percentTexts(grade.nominal))}>
            {steelWords.useNominal(grade.title)}
          </Button>
        )}
        <Button onPress={() => setAll(!all)}>{all ? steelWords.fewer : steelWords.more}</Button>
        {Object.keys(sent).length > 0 && (
          <Button
            onPress={() => {
              setTexts({});
              setSent({});
              onUse(null);
            }}
          >
            {grade ? steelWords.forget(grade.title) : steelWords.clear}
          </Button>
        )}
      </div>
    </form>
  );
}

function hintOf(limits: { readonly low: number; readonly high: number } | undefined) {
  return limits === undefined ? {} : { hint: steelWords.limits(limits.low, limits.high) };
}
