import { UnitField } from '../setup/unit-field.tsx';
import { unitNamed } from '../words/format.ts';
import { coolingWords } from '../words/heat.ts';
import type { Faults, FieldName, HeatTexts } from './form.ts';

interface CoolFieldsProps {
  readonly texts: HeatTexts;
  readonly faults: Faults;
  readonly change: (more: Partial<HeatTexts>) => void;
}

/** Where the cooling begins, the rule of the anneal, and what a piece would be buried in. */
export function CoolFields({ texts, faults, change }: CoolFieldsProps) {
  const degree = unitNamed(texts.unit).label;
  const number = (field: FieldName, label: string, unit: string, hint?: string) => (
    <UnitField
      label={label}
      value={texts[field]}
      unit={unit}
      onChange={(text) => change({ [field]: text })}
      error={faults[field]}
      {...(hint ? { hint } : {})}
    />
  );
  return (
    <fieldset class="heat-form">
      <legend>{coolingWords.question}</legend>
      {number('coolFrom', coolingWords.from, degree, coolingWords.fromHint)}
      {number('ruleMost', coolingWords.rule, `${degree}/h`, coolingWords.ruleHint)}
      <div class="heat-pair">
        {number('ruleFrom', coolingWords.ruleFrom, degree)}
        {number('ruleTo', coolingWords.ruleTo, degree)}
      </div>
      {texts.shape !== 'sphere' && (
        <>
          <h3>{coolingWords.packing}</h3>
          {texts.shape === 'plate' && number('width', coolingWords.width, texts.length)}
          {number('canRadius', coolingWords.canRadius, texts.length, coolingWords.canHint)}
          {number(
            'companion',
            coolingWords.companion,
            coolingWords.companionUnit,
            coolingWords.companionHint,
          )}
        </>
      )}
    </fieldset>
  );
}
