import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { fromBase, toBase } from '../../hub/contract/units.ts';
import { valueTicks } from '../firings/paper-scale.ts';
import { type Column, Table } from '../parts/table.tsx';
import { number, temperature, unbroken, unitNamed } from '../words/format.ts';
import { disagreeWords } from '../words/steel.ts';
import { type Disagreement, disagreements, type Opinion, stripEnds } from './disagree-rows.ts';
import { Known } from './known.tsx';
import type { Critical } from './scale-rows.ts';
import { rangeText } from './shown.ts';
import { useWidth } from './use-width.ts';

interface DisagreeProps {
  readonly critical: Critical;
  readonly unit: DisplayUnit;
}

/** For Ac1, Ac3 and Ms: every formula on one line, the spread in words, each with its source on asking. */
export function Disagree({ critical, unit }: DisagreeProps) {
  return (
    <>
      <p class="aside">{disagreeWords.lead}</p>
      {disagreements(critical).map((one) => (
        <div key={one.key} class="steel-spread">
          <h3>{headOf(one, unit)}</h3>
          <p class="steel-quiet">
            {one.answer.value === null
              ? disagreeWords.refused(one.symbol, one.answer.reason.message)
              : disagreeWords.used(one.answer.formula)}
          </p>
          {one.opinions.length > 0 && <Strip one={one} unit={unit} />}
          <details>
            <summary>{disagreeWords.show}</summary>
            <Table
              caption={disagreeWords.caption(one.symbol)}
              hideCaption
              columns={columns(unit)}
              rows={one.opinions}
              rowKey={({ formula }) => formula}
              empty={disagreeWords.caption(one.symbol)}
            />
          </details>
        </div>
      ))}
    </>
  );
}

function headOf({ symbol, spread, opinions, inside }: Disagreement, unit: DisplayUnit): string {
  const range = spread === null ? '' : unbroken(rangeText(spread.low, spread.high, unit));
  return disagreeWords.spread(symbol, range, opinions.length, inside);
}

const HEIGHT = 62;
const LINE_Y = 24;

/** One line with a point for each formula: filled when the formula was made for such a steel, a ring when not. */
function Strip({ one, unit }: { readonly one: Disagreement; readonly unit: DisplayUnit }) {
  const { ref, width } = useWidth<HTMLDivElement>(900);
  const { low, high } = stripEnds(one);
  const shown = unitNamed(unit);
  const x = (celsius: number) => 12 + ((celsius - low) / (high - low)) * (width - 24);
  const { answer } = one;
  return (
    <div ref={ref}>
      <svg
        class="spread-strip"
        width={width}
        height={HEIGHT}
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-label={disagreeWords.drawn(one.symbol)}
      >
        {answer.value !== null && (
          <rect
            class="scale-band"
            x={x(answer.low)}
            y={LINE_Y - 12}
            width={x(answer.high) - x(answer.low)}
            height={24}
          />
        )}
        <path class="scale-tick" d={`M12 ${LINE_Y}H${width - 12}`} />
        {valueTicks(fromBase(low, shown), fromBase(high, shown), width < 600 ? 5 : 10).map((value) => (
          <g key={value}>
            <path class="scale-tick" d={`M${x(toBase(value, shown))} ${LINE_Y + 12}v6`} />
            <text class="scale-number" x={x(toBase(value, shown))} y={HEIGHT - 5} text-anchor="middle">
              {number(value)}
            </text>
          </g>
        ))}
        {one.opinions.map(({ formula, celsius, inValidity }) => (
          <circle
            key={formula}
            class={inValidity ? 'spread-in' : 'spread-out'}
            cx={x(celsius)}
            cy={LINE_Y}
            r={inValidity ? 6 : 5}
          />
        ))}
        {answer.value !== null && (
          <path class="scale-value" d={`M${x(answer.value)} ${LINE_Y - 15}l6 6l-6 6l-6 -6z`} />
        )}
      </svg>
    </div>
  );
}

function columns(unit: DisplayUnit): readonly Column<Opinion>[] {
  return [
    { key: 'formula', head: disagreeWords.formula, cell: ({ formula }) => formula },
    {
      key: 'says',
      head: disagreeWords.says,
      align: 'right',
      cell: ({ celsius }) => unbroken(temperature(celsius, unit)),
    },
    {
      key: 'fits',
      head: disagreeWords.fits,
      cell: ({ inValidity, outside }) =>
        inValidity ? disagreeWords.yes : disagreeWords.no(outside.join(', ')),
    },
    { key: 'from', head: disagreeWords.from, cell: ({ from }) => <Known from={from} /> },
  ];
}
