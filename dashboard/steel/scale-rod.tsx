import type { z } from 'zod';
import type { Glow } from '../../hub/contract/compute/glow.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase, toBase } from '../../hub/contract/units.ts';
import { glowAt } from '../wall/glow.ts';
import { number, unitNamed } from '../words/format.ts';
import { rulerTicks } from './ruler.ts';
import { shareOf, yOf } from './scale-geometry.ts';
import type { ScaleLayout } from './scale-layout.ts';

type GlowRow = z.infer<typeof Glow>;

interface ScaleRodProps {
  readonly layout: ScaleLayout;
  readonly glow: readonly GlowRow[];
  readonly unit: DisplayUnit;
}

/** The rod itself: its colour at each heat, its numbers, the names of the colours. */
export function ScaleRod({ layout, glow, unit }: ScaleRodProps) {
  const { rod, stretch, isNarrow } = layout;
  return (
    <>
      <defs>
        <linearGradient id="glow-rod" x1="0" y1="1" x2="0" y2="0">
          {glow.map((row) => (
            <stop
              key={row.name}
              offset={shareOf(middleOf(row, stretch), stretch)}
              stop-color={colourOf(row)}
            />
          ))}
        </linearGradient>
      </defs>
      <rect
        class="scale-rod"
        x={rod.x}
        y={stretch.topPx}
        width={rod.width}
        height={stretch.heightPx}
        fill={glow.length > 0 ? 'url(#glow-rod)' : undefined}
      />
      <Ruler layout={layout} unit={unit} />
      {!isNarrow &&
        glow
          .filter((row) => row.highCelsius > stretch.lowCelsius && row.lowCelsius < stretch.highCelsius)
          .map((row) => (
            <text
              key={row.name}
              class="scale-glow"
              x={rod.x + rod.width + 10}
              y={yOf(middleOf(row, stretch), stretch) + 5}
            >
              {row.name}
            </text>
          ))}
    </>
  );
}

function Ruler({ layout, unit }: { readonly layout: ScaleLayout; readonly unit: DisplayUnit }) {
  const { rod, stretch } = layout;
  const shown = unitNamed(unit);
  const ticks = rulerTicks(stretch, (celsius) => fromBase(celsius, shown));
  return (
    <>
      <text class="scale-number" x={rod.x + rod.width / 2} y={stretch.topPx - 8} text-anchor="middle">
        {shown.label}
      </text>
      {ticks.map((value) => {
        const y = yOf(toBase(value, shown), stretch);
        return (
          <g key={value}>
            <path class="scale-tick" d={`M${rod.x - 6} ${y}h${rod.width + 6}`} />
            <text class="scale-number" x={rod.x - 9} y={y + 5} text-anchor="end">
              {number(value)}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** The colour that the wall gives this heat, so that one heat has one colour on every screen. */
function colourOf({ lowCelsius, highCelsius }: GlowRow): string {
  return glowAt((lowCelsius + highCelsius) / 2).colour ?? '#28282c';
}

/** The middle of the part of a row that the scale shows. */
function middleOf(row: GlowRow, { lowCelsius, highCelsius }: ScaleLayout['stretch']): number {
  return (Math.max(row.lowCelsius, lowCelsius) + Math.min(row.highCelsius, highCelsius)) / 2;
}
