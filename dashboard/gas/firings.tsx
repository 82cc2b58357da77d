import type { GasFiringRow } from '../../hub/contract/gas.ts';
import { hrefTo } from '../router.ts';
import { number } from '../words/format.ts';
import { gasWords } from '../words/gas.ts';
import { dayAndTime } from '../words/time.ts';
import { along, costText, massText, type Units } from './figures.ts';

/** What each firing burned, as bars on one scale, with its range. */
export function GasFirings({
  rows,
  units,
}: {
  readonly rows: readonly GasFiringRow[];
  readonly units: Units;
}) {
  if (rows.length === 0) return <p>{gasWords.noUse}</p>;
  const end = Math.max(0.1, ...rows.map(({ used }) => used?.kilograms.high ?? 0));
  return (
    <ul class="gas-firings">
      {rows.map((row) => (
        <FiringBar key={row.firingId} row={row} end={end} units={units} />
      ))}
    </ul>
  );
}

interface FiringBarProps {
  readonly row: GasFiringRow;
  readonly end: number;
  readonly units: Units;
}

function FiringBar({ row, end, units }: FiringBarProps) {
  const { firingId, title, startedAt, endedAt, used } = row;
  const facts =
    used === null
      ? gasWords.notMeasured
      : [
          `${number(used.kilowattHoursNet.value, 1)} ${gasWords.energy}`,
          costText(used),
          used.method === 'scale' ? gasWords.weighed : gasWords.jet,
        ]
          .filter((text) => text !== '')
          .join(' · ');
  return (
    <li>
      <p class="gas-firing-name">
        <a href={hrefTo({ view: 'firing', id: firingId })}>{title}</a>{' '}
        <span class="gas-small">
          {dayAndTime(startedAt)}
          {endedAt === null && `, ${gasWords.running}`}
        </span>
      </p>
      <svg class="gas-use" viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
        <rect class="gas-bar-ground" x="0" y="0" width="100" height="8" />
        {used && (
          <rect class="gas-use-value" x="0" y="0" width={along(used.kilograms.value, end)} height="8" />
        )}
        {used && (
          <rect
            class="gas-use-range"
            x={along(used.kilograms.low, end)}
            y="3"
            width={Math.max(0.4, along(used.kilograms.high, end) - along(used.kilograms.low, end))}
            height="2"
          />
        )}
      </svg>
      <p class="gas-firing-mass">
        {used === null ? gasWords.unknown : massText(used.kilograms.value, units)}
      </p>
      <p class="gas-small gas-firing-facts">{facts}</p>
    </li>
  );
}
