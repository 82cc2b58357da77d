import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type Column, Table } from '../parts/table.tsx';
import { rate, temperature } from '../words/format.ts';
import { coolingWords } from '../words/heat.ts';
import { tied } from '../words/tied.ts';
import type { CoolAnswer, CoolingResult } from './ask-cooling.ts';
import { rateSaid, ruleSaid, t85Said } from './cooling-said.ts';
import type { Cooling } from './questions.ts';

interface CoolingTableProps {
  readonly answer: CoolAnswer;
  readonly unit: DisplayUnit;
}

/** Every way to cool in figures, with what to know before trusting them. */
export function CoolingTable({ answer, unit }: CoolingTableProps) {
  return (
    <div class="heat-cooling-table">
      <Table
        caption={coolingWords.caption}
        columns={columnsOf(answer, unit)}
        rows={answer.results}
        rowKey={({ cooling }) => cooling}
        empty={coolingWords.notPassed}
      />
      <p class="aside">{coolingWords.doubt}</p>
      <p class="aside">{unit === 'Cel' ? coolingWords.furnaceDoubt : coolingWords.furnaceDoubtFahrenheit}</p>
    </div>
  );
}

const STEEL_FROM = 800;
const STEEL_TO = 500;
const RATE_AT = 700;

function columnsOf({ plan }: CoolAnswer, unit: DisplayUnit): Column<CoolingResult>[] {
  const { fromCelsius, toCelsius, mostCelsiusPerHour } = plan.rule;
  const [from, to] = [temperature(fromCelsius, unit), temperature(toCelsius, unit)];
  const answered = (say: (result: CoolingResult) => string) => (result: CoolingResult) =>
    result.core === null ? '–' : tied(say(result));
  return [
    { key: 'way', head: coolingWords.way, cell: ({ cooling }) => wayOf(cooling, unit) },
    {
      key: 't85',
      head: coolingWords.t85Head(temperature(STEEL_FROM, unit), temperature(STEEL_TO, unit)),
      cell: answered(t85Said),
    },
    {
      key: 'rate',
      head: coolingWords.rateHead(temperature(RATE_AT, unit)),
      align: 'right',
      cell: answered((result) => rateSaid(result, unit)),
    },
    {
      key: 'rule',
      head: coolingWords.ruleHead(rate(mostCelsiusPerHour, unit), from, to),
      cell: (result) =>
        result.core === null ? coolingWords.refused(result.why, result.code) : tied(ruleSaid(result, unit)),
    },
  ];
}

function wayOf(cooling: Cooling, unit: DisplayUnit): string {
  if (cooling === 'still-oil' && unit === '[degF]') return coolingWords.longFahrenheit['still-oil'];
  return coolingWords.long[cooling];
}
