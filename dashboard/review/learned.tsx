import { useState } from 'preact/hooks';
import type { TemperedPoint, TemperingLearned } from '../../hub/contract/batch-statistics.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { valueTicks } from '../firings/paper-scale.ts';
import { Sample } from '../heat/heat-key.tsx';
import { SelectField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { bandOutline, middleLine } from '../steel/temper-geometry.ts';
import { useWidth } from '../steel/use-width.ts';
import { number, temperature } from '../words/format.ts';
import { batchWords } from '../words/review.ts';
import { hardnessEnds, learnedSaid, parameterEnds } from './learned-geometry.ts';

/** Hardness against tempering parameter, from the shop's own pieces. */
export function Learned() {
  const { api, feed } = useShell();
  const unit = feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  const [steel, setSteel] = useState<string | undefined>(undefined);
  const { answer } = useAnswer(steel ?? '', () => api.review.tempering(steel));
  const learned = answer.state === 'here' ? answer.value : null;
  return (
    <section class="review-part">
      <h2>{batchWords.learned}</h2>
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {learned?.steelId === null && <p>{batchWords.noSteel}</p>}
      {learned && learned.steelId !== null && (
        <>
          <div class="review-form">
            <SelectField
              label={batchWords.steel}
              value={learned.steelId}
              options={learned.steels.map(({ id, title, pieces }) => ({
                value: id,
                label: `${title} (${pieces})`,
              }))}
              onChange={setSteel}
            />
          </div>
          <LearnedAnswer learned={learned} unit={unit} />
        </>
      )}
    </section>
  );
}

interface LearnedProps {
  readonly learned: TemperingLearned;
  readonly unit: DisplayUnit;
}

function LearnedAnswer({ learned, unit }: LearnedProps) {
  const { learnedKey, pieceHeads } = batchWords;
  const columns: Column<TemperedPoint>[] = [
    {
      key: 'mark',
      head: pieceHeads.mark,
      cell: ({ mark, pieceId }) => <a href={hrefTo({ view: 'piece', id: pieceId })}>{mark}</a>,
    },
    { key: 'tempers', head: pieceHeads.tempers, cell: ({ tempers }) => String(tempers), align: 'right' },
    {
      key: 'parameter',
      head: pieceHeads.parameter,
      cell: ({ parameter }) => number(parameter),
      align: 'right',
    },
    {
      key: 'hardness',
      head: pieceHeads.hardness,
      cell: ({ hardnessHrc }) => number(hardnessHrc, 1),
      align: 'right',
    },
  ];
  return (
    <>
      {learnedSaid(learned, (celsius) => temperature(celsius, unit)).map((text) => (
        <p key={text}>{text}</p>
      ))}
      {learned.points.length > 0 && (
        <figure class="heat-figure review-figure">
          <LearnedChart learned={learned} />
          <figcaption>
            <ul class="chart-key">
              <li>{`+ ${learnedKey.piece}`}</li>
              {learned.curve.length > 0 && <Sample kind="measured" words={learnedKey.line} />}
              {learned.curve.length > 0 && <Sample kind="band" words={learnedKey.band} />}
            </ul>
            <p class="aside">{batchWords.learnedNote}</p>
          </figcaption>
        </figure>
      )}
      <Table
        caption={batchWords.pieces}
        columns={columns}
        rows={learned.points}
        rowKey={({ pieceId, at }) => `${pieceId} ${at}`}
        empty={batchWords.noSteel}
      />
    </>
  );
}

const HEIGHT = 380;
const FRAME = { left: 58, top: 34, right: 26, bottom: 44 };

function LearnedChart({ learned }: { readonly learned: TemperingLearned }) {
  const { ref, width } = useWidth<HTMLDivElement>(900);
  const [across, up] = [parameterEnds(learned), hardnessEnds(learned)];
  const [foot, right] = [HEIGHT - FRAME.bottom, width - FRAME.right];
  const x = (value: number) =>
    FRAME.left + ((value - across.low) / (across.high - across.low)) * (right - FRAME.left);
  const y = (hrc: number) => foot - ((hrc - up.low) / (up.high - up.low)) * (foot - FRAME.top);
  const curve = learned.curve.map(({ parameter, hardnessHrc, low, high }) => ({
    ...{ celsius: parameter, value: hardnessHrc, low, high },
  }));
  return (
    <div ref={ref} class="control-room">
      <svg
        class="control-chart"
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={batchWords.learnedDrawn(learned.points.length)}
      >
        {valueTicks(up.low, up.high, 6).map((hrc) => (
          <text key={hrc} x={FRAME.left - 8} y={y(hrc) + 5} text-anchor="end">
            {number(hrc)}
          </text>
        ))}
        {valueTicks(across.low, across.high, width < 600 ? 4 : 9).map((value) => (
          <text key={value} x={x(value)} y={foot + 20} text-anchor="middle">
            {number(value)}
          </text>
        ))}
        <text x={0} y={16}>
          HRC
        </text>
        <text x={right} y={foot + 39} text-anchor="end">
          {batchWords.axis}
        </text>
        <path class="control-centre" d={`M${FRAME.left} ${FRAME.top}V${foot}H${right}`} />
        <path class="control-tolerance" d={bandOutline(curve, x, y)} />
        <path class="learned-line" d={middleLine(curve, x, y)} />
        {learned.points.map(({ pieceId, at, parameter, hardnessHrc }) => (
          <path
            key={`${pieceId} ${at}`}
            class="learned-piece"
            d={`M${x(parameter) - 6} ${y(hardnessHrc)}h12M${x(parameter)} ${y(hardnessHrc) - 6}v12`}
          />
        ))}
      </svg>
    </div>
  );
}
