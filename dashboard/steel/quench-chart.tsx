import { valueTicks } from '../firings/paper-scale.ts';
import { number } from '../words/format.ts';
import { QUENCH_WORDS } from '../words/steel.ts';
import { hardenWords } from '../words/steel-hardness.ts';
import { drawnToMm, type MediumRow } from './quench-rows.ts';
import { useWidth } from './use-width.ts';

interface QuenchChartProps {
  readonly media: readonly MediumRow[];
  readonly sectionMm: number;
  readonly chosen: string;
}

const ROW = 34;
const HEAD = 30;
const FOOT = 30;
const NARROW_BELOW_PX = 620;

/** How thick this steel hardens through in each medium, with the section as a line across. */
export function QuenchChart({ media, sectionMm, chosen }: QuenchChartProps) {
  const { ref, width } = useWidth<HTMLDivElement>(900);
  const left = width < NARROW_BELOW_PX ? 128 : 220;
  const to = drawnToMm(media, sectionMm);
  const x = (mm: number) => left + (mm / to) * (width - left - 14);
  const height = HEAD + media.length * ROW + FOOT;
  const foot = HEAD + media.length * ROW;
  return (
    <div ref={ref} class="quench-chart">
      <svg
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={hardenWords.drawn}
      >
        {valueTicks(0, to, width < NARROW_BELOW_PX ? 4 : 8).map((mm) => (
          <g key={mm}>
            <path class="chart-line" d={`M${x(mm)} ${HEAD}V${foot}`} />
            <text class="scale-number" x={x(mm)} y={foot + 20} text-anchor="middle">
              {number(mm)}
            </text>
          </g>
        ))}
        <text class="scale-number" x={left - 10} y={foot + 20} text-anchor="end">
          {hardenWords.axis}
        </text>
        {media.map((row, index) => (
          <Row
            key={row.medium}
            row={row}
            y={HEAD + (index + 0.5) * ROW}
            x={x}
            left={left}
            isChosen={row.medium === chosen}
          />
        ))}
        <path class="quench-section" d={`M${x(sectionMm)} ${HEAD - 4}V${foot}`} />
        <text class="scale-symbol scale-label" x={x(sectionMm)} y={HEAD - 10} text-anchor="middle">
          {hardenWords.section(sectionMm)}
        </text>
      </svg>
    </div>
  );
}

interface RowProps {
  readonly row: MediumRow;
  readonly y: number;
  readonly x: (mm: number) => number;
  readonly left: number;
  readonly isChosen: boolean;
}

function Row({ row, y, x, left, isChosen }: RowProps) {
  const { medium, criticalMm } = row;
  return (
    <>
      <text
        class={isChosen ? 'scale-label scale-symbol' : 'scale-label'}
        x={left - 10}
        y={y + 5}
        text-anchor="end"
      >
        {left < 200 ? hardenWords.shortMedium[medium] : QUENCH_WORDS[medium]}
      </text>
      {criticalMm.value !== null && (
        <>
          <path class="quench-solid" d={`M${x(0)} ${y}H${x(criticalMm.low)}`} />
          <rect
            class="scale-band"
            x={x(criticalMm.low)}
            y={y - 8}
            width={Math.max(2, x(criticalMm.high) - x(criticalMm.low))}
            height={16}
          />
          <path class="scale-value" d={`M${x(criticalMm.value)} ${y - 6}l6 6l-6 6l-6 -6z`} />
        </>
      )}
    </>
  );
}
