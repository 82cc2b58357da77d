import type { Furnace } from '../../hub/contract/shop.ts';
import { SelectField } from '../parts/field.tsx';
import { UnitField } from '../setup/unit-field.tsx';
import { temperature, unitNamed } from '../words/format.ts';
import { heatWords } from '../words/heat.ts';
import { aboutDifference } from './about.ts';
import type { Faults, FieldName, HeatPlan, HeatShape, HeatTexts } from './form.ts';
import { ANY_OF_KIND, type ChosenFurnace, type FurnaceHeat } from './furnace.ts';

export interface HeatFieldsProps {
  readonly texts: HeatTexts;
  readonly faults: Faults;
  readonly furnaces: readonly Furnace[];
  readonly furnace: ChosenFurnace;
  readonly heat: FurnaceHeat;
  readonly plan: HeatPlan | null;
  readonly change: (more: Partial<HeatTexts>) => void;
}

/** Piece, furnace and target. */
export function HeatFields(props: HeatFieldsProps) {
  const { texts, faults, change } = props;
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
      <legend>{heatWords.question}</legend>
      <SelectField<HeatShape>
        label={heatWords.shape}
        value={texts.shape}
        options={SHAPES.map((value) => ({ value, label: heatWords.shapes[value] }))}
        onChange={(shape) => change({ shape })}
      />
      {number('thickness', heatWords.section[texts.shape], texts.length, sectionHint(texts))}
      <FurnaceField {...props} />
      <SelectField<HeatTexts['lit']>
        label={heatWords.lit}
        value={texts.lit}
        options={[
          { value: 'at-heat', label: heatWords.atHeat },
          { value: 'cold', label: heatWords.cold },
        ]}
        onChange={(lit) => change({ lit })}
      />
      {texts.lit === 'cold' && number('rate', heatWords.rate, `${degree}/h`)}
      <div class="heat-pair">
        {number('target', heatWords.target, degree)}
        {number('tolerance', heatWords.tolerance, degree)}
        {number('chamber', heatWords.chamber, degree, heatWords.chamberHint)}
        {number('start', heatWords.start, degree)}
      </div>
      {number('hold', heatWords.hold, '', heatWords.holdHint)}
    </fieldset>
  );
}

const SHAPES: readonly HeatShape[] = ['bar', 'plate', 'sphere'];

function sectionHint({ shape, length }: HeatTexts): string {
  const hint = heatWords.sectionHint[shape];
  return length === 'in' ? `${hint} ${heatWords.inchHint}` : hint;
}

function FurnaceField({ texts, furnaces, furnace, heat, plan, change }: HeatFieldsProps) {
  const { kind, name, ratedCelsius } = furnace;
  const tooHot = plan !== null && ratedCelsius !== null && plan.chamberCelsius > ratedCelsius;
  return (
    <SelectField
      label={heatWords.furnacePick}
      value={texts.furnace}
      options={[
        ...furnaces.map(({ id, name: own }) => ({ value: id, label: own })),
        ...ANY_OF_KIND.map((any) => ({ value: any.value, label: heatWords.anyKind(any.kind) })),
      ]}
      onChange={(chosen) => change({ furnace: chosen })}
      hint={
        heat.fit === null
          ? heatWords.usualOf(kind)
          : heatWords.fitted(name, aboutDifference(heat.fit.residualCelsius, texts.unit))
      }
      error={tooHot ? heatWords.beyondRating(temperature(ratedCelsius, texts.unit)) : undefined}
    />
  );
}
