import '../parts/sheets.css';
import './heat.css';
import { useState } from 'preact/hooks';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import type { Furnace } from '../../hub/contract/shop.ts';
import { SelectField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { useShell } from '../shell.ts';
import { heatWords } from '../words/heat.ts';
import { askHeat } from './ask.ts';
import { CoolingHalf } from './cooling.tsx';
import { type Faults, type HeatTexts, inLengthUnit, inTemperature, readHeat, startTexts } from './form.ts';
import { furnaceOf, heatOf } from './furnace.ts';
import { HeatFields } from './heat-fields.tsx';
import { HeatingAnswer } from './heating.tsx';
import type { LengthUnit } from './lengths.ts';
import { fieldOfRefusal } from './refusal.ts';
import { useComputed } from './use-computed.ts';

/** What heat does in a piece: how long it takes to get through, what thicker and thinner would do, how it cools. */
export function HeatPage() {
  const { feed } = useShell();
  const shop = feed.state.value;
  // The first snapshot says in which unit the shop thinks; a form begun before it would change under the hands.
  if (shop === null || shop === undefined) {
    return (
      <Page title={heatWords.title}>
        <p role="status">{heatWords.waiting}</p>
      </Page>
    );
  }
  const furnaces = [...shop.furnaces.values()].filter((furnace) => !furnace.archived);
  return <Bench unit={shop.shop.settings.displayUnit} furnaces={furnaces} />;
}

interface BenchProps {
  readonly unit: DisplayUnit;
  readonly furnaces: readonly Furnace[];
}

function Bench({ unit, furnaces }: BenchProps) {
  const { api, feed } = useShell();
  const [texts, setTexts] = useState(() => startTexts(unit, furnaces[0]?.id ?? 'kind:gas-forge'));
  const furnace = furnaceOf(texts.furnace, furnaces);
  const { plan, faults } = readHeat(texts);
  const heat = heatOf(furnace);
  // A hub that was away is asked again when it is back.
  const key = plan && JSON.stringify([plan, heat, feed.blind.value]);
  const computed = useComputed(key, (isWanted) =>
    plan === null ? Promise.reject(new Error('no plan')) : askHeat(api.compute, plan, heat, isWanted),
  );
  const change = (more: Partial<HeatTexts>) => setTexts((before) => ({ ...before, ...more }));
  return (
    <div class="heat-page">
      <Page title={heatWords.title} actions={<Units texts={texts} onChange={setTexts} />}>
        <div class="heat-half">
          <HeatFields
            texts={texts}
            faults={withRefusal(faults, computed.error)}
            furnaces={furnaces}
            furnace={furnace}
            heat={heat}
            plan={plan}
            change={change}
          />
          <HeatingAnswer computed={computed} texts={texts} held={plan === null} kind={furnace.kind} />
        </div>
        <CoolingHalf texts={texts} change={change} />
      </Page>
    </div>
  );
}

/** What the hub refuses stands beside the field that it is about, under what the field itself finds wrong. */
function withRefusal(faults: Faults, error: unknown): Faults {
  const field = fieldOfRefusal(error);
  return field === null || !(error instanceof Error) ? faults : { [field]: error.message, ...faults };
}

interface UnitsProps {
  readonly texts: HeatTexts;
  readonly onChange: (texts: HeatTexts) => void;
}

function Units({ texts, onChange }: UnitsProps) {
  return (
    <>
      <SelectField<DisplayUnit>
        label={heatWords.temperatureUnit}
        value={texts.unit}
        options={[
          { value: 'Cel', label: '°C' },
          { value: '[degF]', label: '°F' },
        ]}
        onChange={(unit) => onChange(inTemperature(texts, unit))}
      />
      <SelectField<LengthUnit>
        label={heatWords.lengthUnit}
        value={texts.length}
        options={[
          { value: 'mm', label: heatWords.millimetres },
          { value: 'in', label: heatWords.inches },
        ]}
        onChange={(length) => onChange(inLengthUnit(texts, length))}
      />
    </>
  );
}
