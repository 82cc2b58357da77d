import '../parts/sheets.css';
import './pieces.css';
import './bench.css';
import { Button } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { UnitSwitch, useUnit } from '../parts/unit-switch.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { benchWords } from '../words/bench.ts';
import { AddPiece } from './add-piece.tsx';
import { Batches } from './batches.tsx';
import { firingsMark } from './burning.ts';
import { DueList } from './due-list.tsx';

/** What is due next for every piece, and which of them could share a firing. */
export function BenchPage() {
  const { api, feed } = useShell();
  const [unit, setUnit] = useUnit();
  // What burns decides what can be proposed: a firing that starts or ends asks anew.
  const { answer, reload } = useAnswer(firingsMark(feed.state.value), () =>
    Promise.all([api.pieces.bench(), api.listSchedules()]),
  );
  return (
    <Page
      title={benchWords.title}
      actions={
        <>
          <AddPiece />
          <Button onPress={reload}>{benchWords.refresh}</Button>
        </>
      }
    >
      {answer.state === 'waiting' && <p role="status">{benchWords.asking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && (
        <>
          <DueList due={answer.value[0].due} unit={unit} />
          <Batches bench={answer.value[0]} schedules={answer.value[1]} unit={unit} reload={reload} />
        </>
      )}
      <div class="form-row">
        <UnitSwitch unit={unit} onUnit={setUnit} />
      </div>
    </Page>
  );
}
