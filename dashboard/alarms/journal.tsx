import '../parts/sheets.css';
import './alarms.css';
import './journal.css';
import { useEffect, useState } from 'preact/hooks';
import type { AlarmJournalEntry } from '../../hub/contract/alarm-journal.ts';
import { journalAddress } from '../api/alarm-client.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { journalWords } from '../words/alarm-journal.ts';
import { day, timeOfDaySeconds } from '../words/time.ts';
import { ChainPart } from './chain.tsx';
import { saidEntry } from './journal-said.ts';

const PAGE = 100;

/** Everything that happened to every alarm, and whether the journal is as it was written. */
export function AlarmJournalPage() {
  return (
    <div class="alarms-page">
      <Page
        title={journalWords.title}
        actions={
          <>
            <LinkButton href={journalAddress('jsonl')} download="alarm-journal.jsonl">
              {journalWords.saveJsonl}
            </LinkButton>
            <LinkButton href={journalAddress('csv')} download="alarm-journal.csv">
              {journalWords.saveCsv}
            </LinkButton>
          </>
        }
      >
        <p class="aside">{journalWords.intro}</p>
        <ChainPart />
        <Entries />
      </Page>
    </div>
  );
}

/** Read page by page; what is read stays. New entries come by asking again, so that nothing moves while one reads. */
function Entries() {
  const { api } = useShell();
  const [entries, setEntries] = useState<readonly AlarmJournalEntry[] | null>(null);
  const press = useAction();
  const read = (known: readonly AlarmJournalEntry[]) =>
    press.run(async () => {
      const before = known.at(-1)?.seq;
      const page = await api.alarms.journal({ limit: PAGE, ...(before === undefined ? {} : { before }) });
      setEntries([...known, ...page]);
    });
  useEffect(() => read([]), []);
  const oldest = entries?.at(-1)?.seq;
  return (
    <section class="alarms-part" aria-labelledby="journal-entries">
      <div class="form-acts">
        <h2 id="journal-entries">{journalWords.entries}</h2>
        <Button busy={press.busy} onPress={() => read([])}>
          {journalWords.newest}
        </Button>
      </div>
      <ProblemNote error={press.error} />
      {entries === null && press.error === null && <p role="status">{journalWords.asking}</p>}
      {entries?.length === 0 && <p>{journalWords.noEntries}</p>}
      <ol class="journal-entries">
        {entries?.map((entry) => (
          <EntryView key={entry.seq} entry={entry} />
        ))}
      </ol>
      {oldest === 1 && <p class="aside">{journalWords.end}</p>}
      {oldest !== undefined && oldest > 1 && (
        <p>
          <Button busy={press.busy} onPress={() => read(entries ?? [])}>
            {journalWords.older}
          </Button>
        </p>
      )}
    </section>
  );
}

function EntryView({ entry }: { readonly entry: AlarmJournalEntry }) {
  const { feed } = useShell();
  const unit = feed.state.value?.shop.settings.displayUnit ?? 'Cel';
  const { title, happened, step } = saidEntry(entry, unit);
  return (
    <li class="journal-entry">
      <time class="journal-time" dateTime={new Date(entry.at).toISOString()}>
        {day(entry.at)} <strong>{timeOfDaySeconds(entry.at)}</strong>
      </time>
      <div class="journal-words">
        <p class="journal-title">{title}</p>
        <p>
          {happened} <span class="journal-step">{step}</span>
        </p>
      </div>
      <span class="journal-seq" title={entry.hash}>
        {journalWords.entry(entry.seq)}
      </span>
    </li>
  );
}
