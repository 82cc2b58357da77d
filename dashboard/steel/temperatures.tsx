import type { z } from 'zod';
import type { GlowAnswer } from '../../hub/contract/compute/glow.ts';
import type { StepWindow } from '../../hub/contract/compute/steels.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type Column, Table } from '../parts/table.tsx';
import { rate, unbroken } from '../words/format.ts';
import { scaleWords } from '../words/steel.ts';
import { Known } from './known.tsx';
import { HeatScale } from './scale.tsx';
import { type Critical, type Refused, type ScaleMark, scaleRows } from './scale-rows.ts';
import { bandText } from './shown.ts';

export interface TemperaturesProps {
  readonly critical: Critical;
  readonly windows: readonly StepWindow[];
  readonly glow: z.infer<typeof GlowAnswer> | null;
  readonly unit: DisplayUnit;
}

/** The drawn scale and the same numbers as a table. */
export function Temperatures({ critical, windows, glow, unit }: TemperaturesProps) {
  const { marks, refused } = scaleRows(critical);
  return (
    <>
      <HeatScale marks={marks} windows={windows} glow={glow} unit={unit} />
      <RefusedList refused={refused} />
      <Table
        caption={scaleWords.table}
        columns={columns(unit)}
        // Hottest first, as the scale stands.
        rows={[...marks].reverse()}
        rowKey={({ key }) => key}
        empty={scaleWords.refused}
      />
      <p class="aside">{scaleWords.cooling(rate(critical.coolingCelsiusPerHour, unit))}</p>
    </>
  );
}

function RefusedList({ refused }: { readonly refused: readonly Refused[] }) {
  if (refused.length === 0) return null;
  return (
    <ul class="steel-refused">
      {refused.map(({ key, symbol, reason }) => (
        <li key={key}>
          <strong>{symbol}:</strong> {reason}
        </li>
      ))}
    </ul>
  );
}

function columns(unit: DisplayUnit): readonly Column<ScaleMark>[] {
  return [
    {
      key: 'what',
      head: scaleWords.what,
      cell: ({ symbol, meaning }) => (
        <>
          <strong>{symbol}</strong> <span class="steel-quiet">{meaning}</span>
        </>
      ),
    },
    { key: 'value', head: scaleWords.value, cell: ({ band }) => unbroken(bandText(band, unit)) },
    {
      key: 'from',
      head: scaleWords.from,
      cell: ({ standing, source, formula, cautions }) => (
        <>
          <Known from={{ standing, source: `${formula}. ${source}` }} />
          {cautions.map((caution) => (
            <span key={caution} class="known-source">
              {caution}
            </span>
          ))}
        </>
      ),
    },
  ];
}
