import type { AirView } from '../../hub/contract/air.ts';
import { QUANTITY_FACTS } from '../../hub/contract/quantity.ts';
import { Shape } from '../parts/shape.tsx';
import { type Column, Table } from '../parts/table.tsx';
import { END_WORDS, ventilationWords } from '../words/air-ventilation.ts';
import { number } from '../words/format.ts';
import { since } from '../words/time.ts';
import { percentOf } from './bars.ts';
import { TagToggles } from './tags.tsx';
import {
  brokenText,
  byStanding,
  type Fall,
  rateText,
  sourceLitres,
  tagsText,
  waitText,
} from './ventilation.ts';

interface VentilationProps {
  readonly view: AirView;
  readonly onSaid: () => void;
}

/** How the shop stands, how fast its air changes then, and what follows from it. */
export function VentilationPart({ view, onSaid }: VentilationProps) {
  const { ventilation, now } = view;
  return (
    <section class="air-part air-ventilation" aria-labelledby="air-ventilation">
      <h2 id="air-ventilation">{ventilationWords.title}</h2>
      <TagToggles ventilation={ventilation} now={now} onSaid={onSaid} />
      {ventilation.following && <p class="air-lead">{ventilationWords.following}</p>}
      <dl class="air-figures">
        <Changes view={view} />
        <Wait view={view} />
        <Source view={view} />
      </dl>
      <Table
        caption={ventilationWords.history}
        columns={historyColumns(now)}
        rows={byStanding(ventilation.history)}
        rowKey={({ channel, from }) => `${channel} ${from}`}
        empty={ventilationWords.historyEmpty}
      />
    </section>
  );
}

function Changes({ view: { ventilation, now } }: { readonly view: AirView }) {
  const { measured } = ventilation;
  const rate = measured === null ? null : rateText(measured.fit);
  return (
    <div>
      <dt>{ventilationWords.changes}</dt>
      {measured === null || rate === null ? (
        <>
          <dd class="air-figure-value">
            <Shape of="blind" /> {ventilationWords.notMeasured}
          </dd>
          <dd>{ventilationWords.notMeasuredLong}</dd>
        </>
      ) : (
        <>
          <dd class="air-figure-value value">{rate.value}</dd>
          <dd>{ventilationWords.changesBand(percentOf(measured.fit.confidence), rate.low, rate.high)}</dd>
          <dd>{ventilationWords.measuredAt(since(measured.to, now))}</dd>
        </>
      )}
    </div>
  );
}

function Wait({ view: { ventilation } }: { readonly view: AirView }) {
  const { secondsUntilBelow, limitPpm } = ventilation;
  if (limitPpm === null) return null;
  return (
    <div>
      <dt>{ventilationWords.wait(number(limitPpm))}</dt>
      {secondsUntilBelow === null ? (
        <>
          <dd class="air-figure-value">
            <Shape of="blind" /> {ventilationWords.unknown}
          </dd>
          <dd>{ventilationWords.waitNone}</dd>
        </>
      ) : (
        <>
          <dd class="air-figure-value value">{waitText(secondsUntilBelow)}</dd>
          <dd>{ventilationWords.waitLong}</dd>
        </>
      )}
    </div>
  );
}

function Source({ view: { ventilation } }: { readonly view: AirView }) {
  const { highestSourceCubicMetresPerHour: source, limitPpm } = ventilation;
  const litres = source === null ? null : sourceLitres(source);
  return (
    <div>
      <dt>{ventilationWords.source}</dt>
      {litres === null || limitPpm === null ? (
        <>
          <dd class="air-figure-value">
            <Shape of="blind" /> {ventilationWords.unknown}
          </dd>
          <dd>{ventilationWords.sourceNone}</dd>
        </>
      ) : (
        <>
          <dd class="air-figure-value value">
            {litres.high === null ? litres.low : ventilationWords.sourceRange(litres.low, litres.high)}{' '}
            <small>{ventilationWords.sourceUnit}</small>
          </dd>
          <dd>{ventilationWords.sourcePlan(litres.low, number(limitPpm))}</dd>
        </>
      )}
    </div>
  );
}

function historyColumns(now: number): readonly Column<Fall>[] {
  return [
    { key: 'stood', head: ventilationWords.stood, cell: ({ tags }) => tagsText(tags) },
    {
      key: 'rate',
      head: ventilationWords.rate,
      cell: ({ fit }) => <strong>{rateText(fit).value}</strong>,
      align: 'right',
    },
    {
      key: 'interval',
      head: ventilationWords.interval,
      cell: ({ fit }) => {
        const { low, high } = rateText(fit);
        return ventilationWords.changesBand(percentOf(fit.confidence), low, high);
      },
    },
    { key: 'held', head: ventilationWords.held, cell: heldText },
    { key: 'gas', head: ventilationWords.gas, cell: ({ gas }) => QUANTITY_FACTS[gas].label },
    { key: 'when', head: ventilationWords.when, cell: ({ to }) => since(to, now) },
    { key: 'end', head: ventilationWords.ended, cell: ({ end }) => END_WORDS[end] },
  ];
}

function heldText(fall: Fall): string {
  if (fall.fit.conditionsHeld === false) return ventilationWords.broken(brokenText(fall));
  return fall.fit.conditionsHeld === null ? ventilationWords.heldUnknown : ventilationWords.heldAll;
}
