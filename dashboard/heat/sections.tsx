import { useMemo } from 'preact/hooks';
import { type Column, Table } from '../parts/table.tsx';
import { heatWords } from '../words/heat.ts';
import { tied } from '../words/tied.ts';
import { aboutDifference, aboutTime, timeBand } from './about.ts';
import { type Arrival, type HeatAnswer, isOwn } from './ask.ts';
import type { HeatTexts } from './form.ts';
import { sectionPicture } from './heating-picture.ts';
import { length } from './lengths.ts';
import { LineChart } from './line-chart.tsx';
import { growthSaid } from './said.ts';

interface SectionsProps {
  readonly answer: HeatAnswer;
  readonly texts: HeatTexts;
}

/** What thinner and thicker would do: in figures, and as minutes against the section. */
export function Sections({ answer, texts }: SectionsProps) {
  const picture = useMemo(() => sectionPicture(answer, texts.length), [answer, texts.length]);
  if (answer.usual.length === 0) return null;
  return (
    <>
      <h3>{heatWords.others}</h3>
      <p>{growthSaid(answer)}</p>
      <div class="heat-sections">
        <Table
          caption={heatWords.othersCaption}
          hideCaption
          columns={columnsOf(answer, texts)}
          rows={answer.usual}
          rowKey={({ thicknessMm }) => String(thicknessMm)}
          empty={heatWords.othersNone}
        />
        <figure class="heat-figure">
          <LineChart picture={picture} summary={summaryOf(answer, texts)} />
          <figcaption class="aside">{heatWords.minutesAgainst(texts.length)}</figcaption>
        </figure>
      </div>
    </>
  );
}

function columnsOf(answer: HeatAnswer, texts: HeatTexts): Column<Arrival>[] {
  const { plan } = answer;
  const own = isOwn(plan);
  const ends = ({ thicknessMm }: Arrival) => {
    const known = [...answer.weak, ...answer.strong].filter((one) => one.thicknessMm === thicknessMm);
    return known.flatMap(({ seconds }) => seconds ?? []);
  };
  return [
    {
      key: 'section',
      head: heatWords.sectionHead,
      cell: (row) => twoLines(tied(length(row.thicknessMm, texts.length)), own(row) ? heatWords.thisOne : ''),
    },
    {
      key: 'arrival',
      head: heatWords.arrivalHead,
      align: 'right',
      cell: (row) => {
        if (row.seconds === null) return row.why;
        const band = ends(row).length === 2 ? timeBand(...both(ends(row))) : null;
        return twoLines(tied(aboutTime(row.seconds, ...pair(ends(row)))), band === null ? '' : tied(band));
      },
    },
    {
      key: 'skin',
      head: heatWords.skinHead,
      align: 'right',
      cell: (row) =>
        row.lagCelsius === null ? '–' : twoLines(tied(aboutDifference(row.lagCelsius, texts.unit)), ''),
    },
    {
      key: 'out',
      head: heatWords.outHead,
      align: 'right',
      cell: (row) =>
        row.seconds === null
          ? '–'
          : tied(aboutTime(row.seconds + plan.holdSeconds, ...held(ends(row), plan.holdSeconds))),
    },
  ];
}

/** A figure, and under it what goes with it. */
function twoLines(figure: string, under: string) {
  return (
    <>
      <span class="heat-figure-said">{figure}</span>
      {under !== '' && <span class="heat-under">{under}</span>}
    </>
  );
}

function both(ends: readonly number[]): [number, number] {
  return [Math.min(...ends), Math.max(...ends)];
}

function pair(ends: readonly number[]): [number, number] | [] {
  return ends.length === 2 ? both(ends) : [];
}

function held(ends: readonly number[], holdSeconds: number): [number, number] | [] {
  return pair(ends.map((end) => end + holdSeconds));
}

function summaryOf({ usual }: HeatAnswer, texts: HeatTexts): string {
  const parts = usual.map(({ thicknessMm, seconds }) => {
    const time = seconds === null ? heatWords.notAnswered : aboutTime(seconds);
    return `${length(thicknessMm, texts.length)}: ${time}`;
  });
  return `${heatWords.minutesAgainst(texts.length)}. ${parts.join(', ')}.`;
}
