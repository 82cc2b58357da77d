import '../parts/sheets.css';
import '../charts/charts.css';
import '../heat/heat.css';
import './review.css';
import { useEffect, useState } from 'preact/hooks';
import type { ComparedBy, FiringComparison } from '../../hub/contract/comparison.ts';
import type { Schedule } from '../../hub/contract/schedule.ts';
import { SelectField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { compareWords } from '../words/review.ts';
import { segmentName } from '../words/segments.ts';
import { CompareChart } from './compare-chart.tsx';
import { Choice } from './compare-choice.tsx';
import { mainSegment } from './compare-picture.ts';
import { CompareTable } from './compare-table.tsx';
import { firstSchedule } from './first-schedule.ts';

interface ComparePageProps {
  /** Empty: the one that was fired last. */
  readonly schedule: string;
  readonly ids: readonly string[];
}

/** Firings of one schedule laid over each other. The address holds the choice, so that it can be sent on. */
export function ComparePage({ schedule, ids }: ComparePageProps) {
  const { api } = useShell();
  const { answer } = useAnswer('schedules', () => firstSchedule(api));
  const found = answer.state === 'here' ? answer.value : null;
  const chosen = schedule || (found?.first ?? '');
  return (
    <div class="review-page">
      <Page title={compareWords.title}>
        {answer.state === 'failed' && <ProblemNote error={answer.error} />}
        {found?.schedules.length === 0 && <p>{compareWords.noSchedule}</p>}
        {found && chosen !== '' && (
          <Compared key={chosen} schedules={found.schedules} schedule={chosen} start={ids} />
        )}
      </Page>
    </div>
  );
}

interface ComparedProps {
  readonly schedules: readonly Schedule[];
  readonly schedule: string;
  readonly start: readonly string[];
}

function Compared({ schedules, schedule, start }: ComparedProps) {
  const { api } = useShell();
  const [ids, setIds] = useState(start);
  const [by, setBy] = useState<ComparedBy>('seconds');
  const [round, setRound] = useState(0);
  useEffect(() => {
    // The address follows without an entry in the history for every tick of a box.
    history.replaceState(null, '', hrefTo({ view: 'compare', schedule, ids: ids.join() }));
  }, [ids]);
  const { answer } = useAnswer(`${ids.join()} ${by} ${round}`, async () =>
    ids.length === 0 ? null : api.review.compare({ ids, by }),
  );
  const comparison = answer.state === 'here' ? answer.value : null;
  return (
    <div class="heat-half review-half">
      <div class="heat-form">
        <SelectField
          label={compareWords.schedule}
          value={schedule}
          options={schedules.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(id) => {
            window.location.hash = hrefTo({ view: 'compare', schedule: id, ids: '' });
          }}
        />
        <SelectField
          label={compareWords.by}
          value={by}
          options={[
            { value: 'seconds', label: compareWords.bySeconds },
            { value: 'share', label: compareWords.byShare },
          ]}
          onChange={setBy}
        />
        <Choice schedule={schedule} ids={ids} onChange={setIds} onReference={() => setRound((n) => n + 1)} />
      </div>
      <div class="heat-answer">
        {answer.state === 'waiting' && <p role="status">{compareWords.asking}</p>}
        {answer.state === 'failed' && <ProblemNote error={answer.error} />}
        {ids.length === 0 && <p>{compareWords.pick}</p>}
        {comparison && comparison.firings.length > 0 && <Overlay comparison={comparison} />}
      </div>
    </div>
  );
}

const EVERY = 'every';

function Overlay({ comparison }: { readonly comparison: FiringComparison }) {
  const { feed } = useShell();
  const unit = feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  const [segment, setSegment] = useState(EVERY);
  const { segments } = comparison;
  const shown = segments.find(({ index }) => String(index) === segment) ?? null;
  const told = shown ?? mainSegment(segments);
  return (
    <>
      <SelectField
        label={compareWords.segment}
        value={shown === null ? EVERY : segment}
        options={[
          { value: EVERY, label: compareWords.everySegment },
          ...segments.map((one) => ({ value: String(one.index), label: segmentName(one, unit) })),
        ]}
        onChange={setSegment}
      />
      <CompareChart comparison={comparison} shown={shown} unit={unit} />
      {told && <CompareTable comparison={comparison} segment={told} unit={unit} />}
    </>
  );
}
