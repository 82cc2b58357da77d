import '../parts/sheets.css';
import './alarms.css';
import './definitions.css';
import { useState } from 'preact/hooks';
import type { AlarmDefinitionEntry } from '../../hub/contract/alarm-definition.ts';
import { DEFINITIONS_ADDRESS } from '../api/alarm-client.ts';
import { LinkButton } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Shape } from '../parts/shape.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { shapeOf } from '../wall/alarm-order.ts';
import { definitionWords } from '../words/alarm-definitions.ts';
import { PRIORITY_WORD } from '../words/alarms.ts';
import { foundIn, type Names, numbersOf } from './definition-said.ts';

/** Every alarm that there is, with its rationalisation, the loudest first. */
export function AlarmDefinitionsPage() {
  const { api } = useShell();
  const { answer } = useAnswer('', () => api.alarms.definitions());
  return (
    <div class="alarms-page">
      <Page
        title={definitionWords.title}
        actions={
          <LinkButton href={DEFINITIONS_ADDRESS} download="alarm-definitions.csv">
            {definitionWords.save}
          </LinkButton>
        }
      >
        {answer.state === 'waiting' && <p role="status">{definitionWords.asking}</p>}
        {answer.state === 'failed' && <ProblemNote error={answer.error} />}
        {answer.state === 'here' && <Definitions entries={answer.value} />}
      </Page>
    </div>
  );
}

function Definitions({ entries }: { readonly entries: readonly AlarmDefinitionEntry[] }) {
  const [sought, setSought] = useState('');
  const names: Names = new Map(entries.map(({ kind, name }) => [kind, name]));
  const shown = foundIn(entries, sought);
  return (
    <>
      <p class="aside">{definitionWords.intro(entries.length)}</p>
      <div class="alarms-who">
        <TextField label={definitionWords.find} value={sought} onChange={setSought} maxLength={80} />
        <p role="status" class="aside">
          {definitionWords.found(shown.length, entries.length)}
        </p>
      </div>
      {shown.length === 0 && <p>{definitionWords.none}</p>}
      <ol class="definitions">
        {shown.map((entry) => (
          <Definition key={entry.kind} entry={entry} names={names} />
        ))}
      </ol>
    </>
  );
}

interface DefinitionProps {
  readonly entry: AlarmDefinitionEntry;
  readonly names: Names;
}

function Definition({ entry, names }: DefinitionProps) {
  const { kind, name, priority, rank, dangerToLife, cause, consequence, action } = entry;
  const why = [
    [definitionWords.cause, cause],
    [definitionWords.consequence, consequence],
    [definitionWords.action, action],
  ] as const;
  return (
    <li class="definition" id={`definition-${kind}`}>
      <div class="definition-name">
        <Shape of={shapeOf({ kind, priority })} />
        <div>
          <h2>{name}</h2>
          <p class="aside">
            {PRIORITY_WORD[priority]}, {definitionWords.rank(rank + 1)}
            {dangerToLife && `, ${definitionWords.dangerToLife}`}
          </p>
        </div>
      </div>
      <dl class="definition-why">
        {why.map(([head, text]) => (
          <div key={head} class={head === definitionWords.action ? 'definition-act' : undefined}>
            <dt>{head}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <dl class="definition-numbers">
        {numbersOf(entry, names).map(([head, text]) => (
          <div key={head}>
            <dt>{head}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </li>
  );
}
