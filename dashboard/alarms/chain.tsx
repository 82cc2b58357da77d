import { useState } from 'preact/hooks';
import type { AlarmJournalCheck } from '../../hub/contract/alarm-journal.ts';
import type { KeptHead } from '../api/alarm-client.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Shape } from '../parts/shape.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useTextForm } from '../setup/use-text-form.ts';
import { useShell } from '../shell.ts';
import { BREAK_WORDS, journalWords } from '../words/alarm-journal.ts';
import { checkHead, type HeadTexts } from './kept-head.ts';

/** Whether the chain of the journal holds, and where it breaks: a break is as loud as a danger. */
export function ChainPart() {
  const { api } = useShell();
  const [kept, setKept] = useState<KeptHead | null>(null);
  const { answer, reload } = useAnswer(kept === null ? '' : `${kept.seq} ${kept.hash}`, () =>
    api.alarms.verification(kept ?? undefined),
  );
  return (
    <section class="alarms-part" aria-live="polite">
      {answer.state === 'waiting' && <p>{journalWords.checking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && <Found check={answer.value} kept={kept} />}
      <details class="alarm-more">
        <summary>{journalWords.check}</summary>
        <HeadForm onCheck={setKept} />
      </details>
      <p>
        <Button onPress={reload}>{journalWords.checkAgain}</Button>
      </p>
    </section>
  );
}

interface FoundProps {
  readonly check: AlarmJournalCheck;
  readonly kept: KeptHead | null;
}

function Found({ check, kept }: FoundProps) {
  const { holds, entries, head, breaks } = check;
  if (!holds) {
    return (
      <div class="chain-broken" role="alert">
        <Shape of="danger" />
        <div>
          <p class="chain-title">{journalWords.broken}</p>
          <p>{journalWords.brokenLong(entries)}</p>
          <ul>
            {breaks.map(({ seq, code }) => (
              <li key={`${seq} ${code}`}>{journalWords.brokenAt(seq, BREAK_WORDS[code])}</li>
            ))}
          </ul>
          <p>
            <strong>{journalWords.brokenDo}</strong>
          </p>
        </div>
      </div>
    );
  }
  if (head === null) return <p>{journalWords.empty}</p>;
  return (
    <div class="chain-holds">
      <p>
        <strong>{journalWords.holds(entries)}</strong> {kept !== null && journalWords.keptHolds(kept.seq)}
      </p>
      <p class="chain-head">
        {journalWords.head(head.seq)} <code>{head.hash}</code>
      </p>
      <p class="aside">{journalWords.headLong}</p>
    </div>
  );
}

function HeadForm({ onCheck }: { readonly onCheck: (head: KeptHead) => void }) {
  const { texts, set, fault, submit } = useTextForm<HeadTexts, KeptHead>({ seq: '', hash: '' }, checkHead);
  const [tried, setTried] = useState(false);
  const shown = (path: string) => (tried ? fault(path) : undefined);
  const send = (event: Event) => {
    setTried(true);
    submit(event, onCheck);
  };
  return (
    <form class="form form-narrow" onSubmit={send} noValidate>
      <TextField
        label={journalWords.seq}
        value={texts.seq}
        onChange={(seq) => set({ seq })}
        error={shown('seq')}
        maxLength={15}
      />
      <TextField
        label={journalWords.hash}
        value={texts.hash}
        onChange={(hash) => set({ hash })}
        error={shown('hash')}
        maxLength={80}
      />
      <p>
        <Button type="submit">{journalWords.checkDo}</Button>
      </p>
    </form>
  );
}
