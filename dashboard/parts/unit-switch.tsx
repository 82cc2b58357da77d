import { useState } from 'preact/hooks';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { useShell } from '../shell.ts';
import { partWords } from '../words/parts.ts';
import { SelectField } from './field.tsx';

/** The unit of the shop, until another is chosen on this page. */
export function useUnit(): readonly [DisplayUnit, (unit: DisplayUnit) => void] {
  const { feed } = useShell();
  const [chosen, setChosen] = useState<DisplayUnit | null>(null);
  return [chosen ?? feed.state.value?.shop.settings.displayUnit ?? 'Cel', setChosen];
}

interface UnitSwitchProps {
  readonly unit: DisplayUnit;
  readonly onUnit: (unit: DisplayUnit) => void;
}

export function UnitSwitch({ unit, onUnit }: UnitSwitchProps) {
  return (
    <SelectField<DisplayUnit>
      label={partWords.temperaturesIn}
      value={unit}
      options={[
        { value: 'Cel', label: '°C' },
        { value: '[degF]', label: '°F' },
      ]}
      onChange={onUnit}
    />
  );
}
