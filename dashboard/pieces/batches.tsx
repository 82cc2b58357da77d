import { useState } from 'preact/hooks';
import type { Bench } from '../../hub/contract/bench.ts';
import type { DisplayUnit, Schedule } from '../../hub/contract/schedule.ts';
import { words } from '../../hub/contract/words/words.ts';
import { Button } from '../parts/button.tsx';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { benchWords } from '../words/bench.ts';
import { degreesDifference, temperature, unitNamed } from '../words/format.ts';
import { HEAT_WORDS } from '../words/pieces.ts';
import { type FurnaceBatches, furnaceBatches, type KnownBatch, knownBatch, marksOf } from './batch.ts';
import { ProposeDialog } from './propose-dialog.tsx';
import { StartDialog } from './start-dialog.tsx';

interface BatchesProps {
  readonly bench: Bench;
  readonly schedules: readonly Schedule[];
  readonly unit: DisplayUnit;
  readonly reload: () => void;
}

type Open = { readonly what: 'propose' | 'start'; readonly batch: KnownBatch; readonly furnaceId: string };

/** What could be fired together, furnace by furnace, in the order proposed. */
export function Batches({ bench, schedules, unit, reload }: BatchesProps) {
  const [open, setOpen] = useState<Open | null>(null);
  const close = () => setOpen(null);
  const furnaces = furnaceBatches(bench);
  const unplaced = bench.unplaced.map((batch) => knownBatch(batch, bench.due, null));
  return (
    <section class="piece-part" aria-labelledby="together-head">
      <h2 id="together-head">{benchWords.together}</h2>
      <p class="aside">{benchWords.togetherLong}</p>
      {furnaces.length === 0 && unplaced.length === 0 && <p>{benchWords.noHeat}</p>}
      {furnaces.map((furnace) => (
        <FurnacePart
          key={furnace.furnaceId}
          furnace={furnace}
          schedules={schedules}
          unit={unit}
          onOpen={setOpen}
        />
      ))}
      {unplaced.length > 0 && (
        <div class="furnace-part">
          <h3>{benchWords.unplaced}</h3>
          {unplaced.map((known, index) => (
            <BatchCard key={known.batch.pieceIds.join()} known={known} index={index} unit={unit} />
          ))}
        </div>
      )}
      {open?.what === 'propose' && (
        <ProposeDialog
          known={open.batch}
          furnaceId={open.furnaceId}
          unit={unit}
          onClose={close}
          onDone={() => {
            close();
            reload();
          }}
        />
      )}
      {open?.what === 'start' && (
        <StartDialog
          known={open.batch}
          furnaceId={open.furnaceId}
          schedules={schedules}
          unit={unit}
          onClose={close}
        />
      )}
    </section>
  );
}

interface FurnacePartProps {
  readonly furnace: FurnaceBatches;
  readonly schedules: readonly Schedule[];
  readonly unit: DisplayUnit;
  readonly onOpen: (open: Open) => void;
}

function FurnacePart({ furnace, schedules, unit, onOpen }: FurnacePartProps) {
  const { feed } = useShell();
  const { furnaceId, presentCelsius, travelCelsius, order } = furnace;
  const name = feed.state.value?.furnaces.get(furnaceId)?.name ?? furnaceId;
  const present =
    presentCelsius === null
      ? benchWords.presentUnknown
      : benchWords.present(temperature(presentCelsius, unit));
  const travel = `${degreesDifference(travelCelsius, unit)} ${unitNamed(unit).label}`;
  return (
    <div class="furnace-part">
      <h3>{name}</h3>
      <p class="quiet">
        {present}; {benchWords.travel(travel)}, {benchWords.order[order]}
      </p>
      {furnace.batches.map((known, index) => (
        <BatchCard
          key={known.batch.pieceIds.join()}
          known={known}
          index={index}
          unit={unit}
          schedule={schedules.find(({ id }) => id === known.batch.scheduleId)}
          onPropose={() => onOpen({ what: 'propose', batch: known, furnaceId })}
          onStart={() => onOpen({ what: 'start', batch: known, furnaceId })}
        />
      ))}
    </div>
  );
}

interface BatchCardProps {
  readonly known: KnownBatch;
  readonly index: number;
  readonly unit: DisplayUnit;
  readonly schedule?: Schedule | undefined;
  readonly onPropose?: () => void;
  readonly onStart?: () => void;
}

function BatchCard({ known, index, unit, schedule, onPropose, onStart }: BatchCardProps) {
  const { batch, items } = known;
  const step = HEAT_WORDS[batch.step];
  const marks = marksOf(known);
  return (
    <article class="batch">
      <h4>{benchWords.firing(index + 1, step)}</h4>
      <p>
        {heatSaid(known, unit)}
        {onStart && (
          <span class="quiet">
            {' · '}
            {schedule ? benchWords.schedule(schedule.name) : benchWords.noSchedule}
          </span>
        )}
      </p>
      <p class="batch-pieces">
        {items.map(({ pieceId, mark }) => (
          <a key={pieceId} class="mark-link" href={hrefTo({ view: 'piece', id: pieceId })}>
            {mark}
          </a>
        ))}
      </p>
      <details open={index === 0}>
        <summary>{benchWords.why}</summary>
        <ul class="batch-reasons">
          {batch.reasons.map(({ code, params }) => (
            <li key={code}>{words('en').bench(code, params, unit)}</li>
          ))}
        </ul>
      </details>
      {onPropose && onStart && (
        <div class="form-acts">
          <Button size="page" name={benchWords.makeScheduleName(step, marks)} onPress={onPropose}>
            {benchWords.makeSchedule}
          </Button>
          <Button
            tone={index === 0 ? 'main' : 'plain'}
            name={benchWords.startName(step, marks)}
            onPress={onStart}
          >
            {benchWords.start}
          </Button>
        </div>
      )}
    </article>
  );
}

function heatSaid({ batch: { window, targetCelsius } }: KnownBatch, unit: DisplayUnit): string {
  if (window === null) return benchWords.windowUnknown;
  const said = benchWords.window(temperature(window.lowCelsius, unit), temperature(window.highCelsius, unit));
  return targetCelsius === null ? said : `${said}, ${benchWords.target(temperature(targetCelsius, unit))}`;
}
