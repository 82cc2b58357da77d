import type { z } from 'zod';
import type { Composition } from '../../hub/contract/compute/steel-choice.ts';
import type { SteelDetail, SteelSummary } from '../../hub/contract/compute/steels.ts';
import type { MillCertificate } from '../../hub/contract/own-steel.ts';
import { Button } from '../parts/button.tsx';
import { steelWords } from '../words/steel.ts';
import { compositionText } from './composition.ts';
import { CompositionForm } from './composition-form.tsx';
import { otherNames } from './filter.ts';
import { Known } from './known.tsx';
import { Picker } from './picker.tsx';

interface ChoiceProps {
  readonly grades: readonly z.infer<typeof SteelSummary>[];
  readonly grade: z.infer<typeof SteelDetail> | null;
  /** True while nothing is chosen: everything lies open then. */
  readonly isOpen: boolean;
  /** What was entered and sent; null for the usual composition of the grade. */
  readonly composition: Composition | null;
  readonly refusal: unknown;
  readonly onUse: (composition: Composition | null) => void;
}

/** Which steel: what it is called and made of, and the two ways to choose another. */
export function Choice({ grades, grade, isOpen, composition, refusal, onUse }: ChoiceProps) {
  return (
    <div class="steel-head">
      {grade && <Passport grade={grade} composition={composition} />}
      <div class="steel-choice">
        <details open={isOpen}>
          <summary>{grade ? steelWords.pickAnother : steelWords.pick}</summary>
          <Picker grades={grades} here={grade?.id ?? ''} />
        </details>
        <details open={isOpen || refusal !== null || (grade === null && composition !== null)}>
          <summary>{grade ? steelWords.enterCertificate : steelWords.madeOwn}</summary>
          <KeptCertificates certificates={grade?.certificates ?? []} onUse={onUse} />
          <CompositionForm grade={grade} refusal={refusal} onUse={onUse} />
        </details>
      </div>
    </div>
  );
}

interface KeptProps {
  readonly certificates: readonly MillCertificate[];
  readonly onUse: (composition: Composition) => void;
}

/** The certificates that the shop keeps of this grade, each a press away. */
function KeptCertificates({ certificates, onUse }: KeptProps) {
  const current = certificates.filter(({ archived }) => !archived);
  if (current.length === 0) return null;
  return (
    <div class="steel-kept">
      <p>{steelWords.kept}</p>
      <div class="form-acts">
        {current.map(({ id, heatNumber, date, composition }) => (
          <Button key={id} onPress={() => onUse(composition)}>
            {steelWords.heat(heatNumber, date)}
          </Button>
        ))}
      </div>
    </div>
  );
}

interface PassportProps {
  readonly grade: z.infer<typeof SteelDetail>;
  readonly composition: Composition | null;
}

/** The names of a grade and what it is made of. */
function Passport({ grade, composition }: PassportProps) {
  const names = otherNames(grade);
  return (
    <dl class="facts steel-passport">
      {names.length > 0 && (
        <div>
          <dt>{steelWords.alsoCalled}</dt>
          <dd>{names.map(({ name, same }) => (same ? name : steelWords.nearly(name))).join(', ')}</dd>
        </div>
      )}
      <div>
        <dt>{composition === null ? steelWords.nominal : steelWords.asEntered}</dt>
        <dd>{compositionText(composition ?? grade.nominal)}</dd>
        <dd class="steel-note">
          {composition === null ? (
            <Known from={grade.limitsFrom} />
          ) : (
            compositionText(grade.nominal, steelWords.usually)
          )}
        </dd>
      </div>
    </dl>
  );
}
