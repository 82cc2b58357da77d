import '../parts/sheets.css';
import '../charts/charts.css';
import '../heat/heat.css';
import './review.css';
import { useState } from 'preact/hooks';
import { MEASURES, type Measure } from '../../hub/contract/batch-statistics.ts';
import type { Schedule } from '../../hub/contract/schedule.ts';
import { SelectField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { navigate } from '../router.ts';
import { useShell } from '../shell.ts';
import { temperature } from '../words/format.ts';
import { batchWords, MEASURE_WORDS } from '../words/review.ts';
import { duration } from '../words/time.ts';
import { BatchAnswer } from './batch-answer.tsx';
import { ChangeForm } from './change-form.tsx';
import { firstSchedule } from './first-schedule.ts';
import { Learned } from './learned.tsx';

/** Firings of one schedule, one after the other: control charts, and what the shop has learned of its steel. */
export function BatchesPage({ schedule }: { readonly schedule: string }) {
  const { api } = useShell();
  const { answer } = useAnswer('schedules', () => firstSchedule(api));
  const found = answer.state === 'here' ? answer.value : null;
  const chosen = schedule || (found?.first ?? '');
  return (
    <div class="review-page">
      <Page title={batchWords.title}>
        {answer.state === 'failed' && <ProblemNote error={answer.error} />}
        {found && chosen !== '' && <Charted key={chosen} schedules={found.schedules} schedule={chosen} />}
        {found && <Learned />}
      </Page>
    </div>
  );
}

interface ChartedProps {
  readonly schedules: readonly Schedule[];
  readonly schedule: string;
}

function Charted({ schedules, schedule }: ChartedProps) {
  const { api, feed } = useShell();
  const state = feed.state.value;
  const unit = state?.shop.settings.displayUnit ?? 'Cel';
  const furnaces = [...(state?.furnaces.values() ?? [])];
  const [furnace, setFurnace] = useState('');
  const [measure, setMeasure] = useState<Measure>('soak-mean');
  const [segment, setSegment] = useState<string | null>(null);
  const { answer, reload } = useAnswer(`${furnace} ${measure} ${segment}`, () =>
    api.review.statistics({
      ...{ schedule, measure, furnace: furnace || undefined },
      segment: segment === null ? undefined : Number(segment),
    }),
  );
  const statistics = answer.state === 'here' ? answer.value : null;
  return (
    <div class="heat-half review-half">
      <div class="heat-form">
        <SelectField
          label={batchWords.schedule}
          value={schedule}
          options={schedules.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(id) => navigate({ view: 'batches', schedule: id })}
        />
        <SelectField
          label={batchWords.furnace}
          value={furnace}
          options={[
            { value: '', label: batchWords.everyFurnace },
            ...furnaces.map(({ id, name }) => ({ value: id, label: name })),
          ]}
          onChange={setFurnace}
        />
        <SelectField
          label={batchWords.measure}
          value={measure}
          options={MEASURES.map((value) => ({ value, label: MEASURE_WORDS[value] }))}
          onChange={setMeasure}
        />
        {statistics && statistics.segment !== null && statistics.soaks.length > 1 && (
          <SelectField
            label={batchWords.soak}
            value={String(statistics.segment)}
            options={statistics.soaks.map(({ index, targetCelsius, durationSeconds }) => ({
              value: String(index),
              label: batchWords.soakAt(temperature(targetCelsius, unit), duration(durationSeconds)),
            }))}
            onChange={setSegment}
          />
        )}
        <ChangeForm furnaces={furnaces} onNoted={reload} />
      </div>
      <div class="heat-answer">
        {answer.state === 'waiting' && <p role="status">{batchWords.asking}</p>}
        {answer.state === 'failed' && <ProblemNote error={answer.error} />}
        {statistics && <BatchAnswer statistics={statistics} unit={unit} />}
      </div>
    </div>
  );
}
