import type { Unit } from '../../hub/contract/units.ts';
import { gasWords } from '../words/gas.ts';
import type { BurnerTexts } from './burner-form.ts';
import { UnitField } from './unit-field.tsx';

interface BurnerFieldsProps {
  readonly texts: BurnerTexts;
  readonly unit: Unit;
  readonly set: (more: Partial<BurnerTexts>) => void;
  readonly fault: (path: string) => string | undefined;
}

/** The burners of a gas furnace. */
export function BurnerFields({ texts, unit, set, fault }: BurnerFieldsProps) {
  return (
    <>
      <div class="form-row">
        <UnitField
          label={gasWords.bore}
          hint={gasWords.boreHint}
          unit="mm"
          value={texts.bore}
          onChange={(bore) => set({ bore })}
          error={fault('gas.boreMm')}
        />
        <UnitField
          label={gasWords.burners}
          unit=""
          value={texts.burners}
          onChange={(burners) => set({ burners })}
          error={fault('gas.burners')}
        />
      </div>
      <UnitField
        label={gasWords.coefficient}
        hint={gasWords.coefficientHint}
        unit=""
        value={texts.coefficient}
        onChange={(coefficient) => set({ coefficient })}
        error={fault('gas.dischargeCoefficient')}
      />
      <div class="form-row">
        <UnitField
          label={gasWords.low}
          hint={gasWords.bandHint}
          unit={unit.label}
          value={texts.low}
          onChange={(low) => set({ low })}
          error={fault('gas.lowPascals')}
        />
        <UnitField
          label={gasWords.high}
          unit={unit.label}
          value={texts.high}
          onChange={(high) => set({ high })}
          error={fault('gas.highPascals')}
        />
      </div>
    </>
  );
}
