import type { BatchStatistics, ChartPoint } from '../../hub/contract/batch-statistics.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { type Column, Table } from '../parts/table.tsx';
import { hrefTo } from '../router.ts';
import { batchWords, CHANGE_WORDS, MEASURE_WORDS } from '../words/review.ts';
import { dayAndTime } from '../words/time.ts';
import {
  capabilitySaid,
  controlSaid,
  individualsPicture,
  leftOutSaid,
  limitsSaid,
  rangesPicture,
  rulesSaid,
  shiftWords,
  stagesSaid,
  toleranceSaid,
  unitLabel,
  valueSaid,
} from './batch-said.ts';
import { ControlChart, ControlKey } from './control-chart.tsx';

interface BatchAnswerProps {
  readonly statistics: BatchStatistics;
  readonly unit: DisplayUnit;
}

/** The two charts, what they say in words, the marked firings and the changes. */
export function BatchAnswer({ statistics, unit }: BatchAnswerProps) {
  const { measure, points, chart } = statistics;
  const ranges = rangesPicture(statistics, unit);
  const axis = `${MEASURE_WORDS[measure]}, ${unitLabel(statistics.unit, unit)}`;
  return (
    <>
      <p class="review-headline">{controlSaid(statistics)}</p>
      <ul class="heat-facts">
        {[
          stagesSaid(statistics),
          limitsSaid(statistics, unit),
          toleranceSaid(statistics, unit),
          ...(points.length > 0 ? [capabilitySaid(statistics)] : []),
        ]
          .filter((text) => text !== '')
          .map((text) => (
            <li key={text}>{text}</li>
          ))}
      </ul>
      {points.length > 0 && (
        <figure class="heat-figure review-figure">
          <ControlChart
            picture={individualsPicture(statistics, unit)}
            summary={batchWords.individualsDrawn(axis, controlSaid(statistics))}
            height={360}
            axis={axis}
          />
          {ranges && (
            <ControlChart
              picture={ranges}
              summary={batchWords.rangesDrawn}
              height={190}
              axis={`${batchWords.ranges}, ${unitLabel(statistics.unit, unit)}`}
            />
          )}
          <figcaption>
            <ControlKey />
          </figcaption>
        </figure>
      )}
      {leftOutSaid(statistics).map((text) => (
        <p key={text} class="aside">
          {text}
        </p>
      ))}
      {chart && <Marked statistics={statistics} unit={unit} />}
      {points.length > 0 && <Changes statistics={statistics} unit={unit} />}
    </>
  );
}

interface NumberedPoint extends ChartPoint {
  readonly number: number;
}

/** A chart with a step in it marks half of its values: the newest say enough, the chart shows the others. */
const MOST_MARKED = 10;

function Marked({ statistics, unit }: BatchAnswerProps) {
  const marked = statistics.points
    .filter(({ rules }) => rules.length > 0)
    .map((point, index) => ({ ...point, number: index + 1 }));
  const { heads } = batchWords;
  const columns: Column<NumberedPoint>[] = [
    { key: 'firing', head: heads.firing, cell: firingLink },
    {
      key: 'value',
      head: heads.value,
      cell: (row) => valueSaid(row.value, statistics.unit, unit),
      align: 'right',
    },
    { key: 'why', head: heads.why, cell: (row) => <span class="review-why">{rulesSaid(row)}</span> },
    { key: 'furnace', head: heads.furnace, cell: (row) => row.furnaceName },
  ];
  const shown = marked.slice(-MOST_MARKED).reverse();
  return (
    <Table
      caption={
        shown.length < marked.length
          ? batchWords.newestMarked(shown.length, marked.length)
          : batchWords.marked
      }
      columns={columns}
      rows={shown}
      rowKey={(row) => `${row.number}`}
      empty={batchWords.noMarked}
    />
  );
}

function firingLink({ firingId, title, marks, at, number }: NumberedPoint) {
  const name = title || marks.join(', ') || dayAndTime(at);
  const words = batchWords.numbered(number, name);
  const when = name === dayAndTime(at) ? null : <span class="review-when">{dayAndTime(at)}</span>;
  if (firingId === null) return words;
  return (
    <>
      <a href={hrefTo({ view: 'firing', id: firingId })}>{words}</a>
      {when}
    </>
  );
}

function Changes({ statistics, unit }: BatchAnswerProps) {
  const { changeHeads } = batchWords;
  const columns: Column<BatchStatistics['changes'][number]>[] = [
    { key: 'at', head: changeHeads.at, cell: ({ at }) => dayAndTime(at) },
    { key: 'what', head: changeHeads.what, cell: ({ kind, text }) => `${CHANGE_WORDS[kind]} ${text}`.trim() },
    {
      key: 'shift',
      head: changeHeads.shift,
      cell: ({ shift }) => shiftWords(shift, statistics.unit, unit),
    },
  ];
  return (
    <Table
      caption={batchWords.changes}
      columns={columns}
      rows={statistics.changes}
      rowKey={({ at, kind, text }) => `${at} ${kind} ${text}`}
      empty={batchWords.noChanges}
    />
  );
}
