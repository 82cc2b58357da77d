import type { AirView } from '../../hub/contract/air.ts';
import { type Column, Table } from '../parts/table.tsx';
import { airWords, LIMIT_WORDS } from '../words/air.ts';
import { since } from '../words/time.ts';
import { percentOf, ppmText } from './bars.ts';

type Shift = NonNullable<AirView['lastShift']>;
type Row = Shift['exposure'][number];

/** What the working day before this one came to. */
export function LastShiftPart({ view: { lastShift, now } }: { readonly view: AirView }) {
  return (
    <section class="air-part" aria-labelledby="air-last">
      <h2 id="air-last">{airWords.lastShiftTitle}</h2>
      {lastShift === null ? (
        <p>{airWords.lastShiftNone}</p>
      ) : (
        <>
          <p class="air-lead">
            {airWords.lastShiftSpan(since(lastShift.from, now), since(lastShift.to, now))}
          </p>
          <Table
            caption={airWords.lastShiftTitle}
            hideCaption
            columns={columns(now)}
            rows={lastShift.exposure}
            rowKey={({ channel }) => channel}
            empty={airWords.noExposure}
          />
        </>
      )}
    </section>
  );
}

function columns(now: number): readonly Column<Row>[] {
  return [
    { key: 'sensor', head: airWords.sensor, cell: ({ label }) => label },
    { key: 'mean', head: airWords.dayMean, cell: meanText, align: 'right' },
    {
      key: 'short',
      head: airWords.highest15,
      cell: ({ highestStel }) => levelText(highestStel, now),
      align: 'right',
    },
    { key: 'peak', head: airWords.highest, cell: ({ peak }) => levelText(peak, now), align: 'right' },
    {
      key: 'coverage',
      head: airWords.measured,
      cell: ({ coverage }) => (coverage === 0 ? airWords.unknown : `${percentOf(coverage)} %`),
      align: 'right',
    },
    { key: 'above', head: airWords.aboveLimits, cell: aboveText },
  ];
}

function meanText({ twa }: Row): string {
  if (twa.ppm !== null) return `${ppmText(twa.ppm)} ppm`;
  return twa.measuredSeconds > 0 ? airWords.atLeastPpm(ppmText(twa.atLeastPpm)) : airWords.unknown;
}

function levelText(level: Row['peak'], now: number): string {
  return level === null ? airWords.unknown : `${ppmText(level.ppm)} ppm, ${since(level.at, now)}`;
}

/** Each limit that the level was above, with for how long. A dash is no claim: the coverage stands beside it. */
function aboveText({ limits, coverage }: Row): string {
  const above = limits
    .filter(({ minutesAbove }) => minutesAbove > 0)
    .map(({ kind, limit, minutesAbove }) => {
      const minutes = airWords.minutesAbove(minutesAbove < 1 ? '<1' : minutesAbove.toFixed(0));
      return `${LIMIT_WORDS[kind].name} ${limit.ppm} ppm: ${minutes}`;
    });
  if (above.length > 0) return above.join('; ');
  return coverage === 0 ? airWords.unknown : airWords.none;
}
