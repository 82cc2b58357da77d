import '../parts/sheets.css';
import './pieces.css';
import './bench.css';
import { useState } from 'preact/hooks';
import type { RouteTemplate } from '../../hub/contract/route-template.ts';
import { Button, LinkButton } from '../parts/button.tsx';
import { Confirm } from '../parts/confirm.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo, NEW_ROUTE } from '../router.ts';
import { useShell } from '../shell.ts';
import { routesWords } from '../words/bench.ts';
import { pieceWords } from '../words/pieces.ts';
import { stepName } from './step-name.ts';

/** The templates that a new piece may take its route from. */
export function Routes() {
  const { api } = useShell();
  const { answer, reload } = useAnswer('routes', () => api.pieces.listTemplates());
  return (
    <Page
      title={routesWords.title}
      actions={<LinkButton href={hrefTo({ view: 'route', id: NEW_ROUTE })}>{routesWords.add}</LinkButton>}
    >
      <p class="aside">{routesWords.long}</p>
      {answer.state === 'waiting' && <p role="status">{routesWords.asking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && <List templates={answer.value} reload={reload} />}
    </Page>
  );
}

interface ListProps {
  readonly templates: readonly RouteTemplate[];
  readonly reload: () => void;
}

function List({ templates, reload }: ListProps) {
  const { api } = useShell();
  const [leaving, setLeaving] = useState<RouteTemplate | null>(null);
  if (templates.length === 0) return <p>{routesWords.empty}</p>;
  return (
    <ul class="plain-list routes-list">
      {templates.map((template) => (
        <li key={template.id}>
          <Template template={template} onRemove={() => setLeaving(template)} />
        </li>
      ))}
      {leaving && (
        <Confirm
          title={routesWords.removeTitle(leaving.name)}
          words={routesWords.removeLong}
          yes={routesWords.remove}
          no={routesWords.keep}
          act={() => api.pieces.removeTemplate(leaving.id)}
          onClose={() => setLeaving(null)}
          onDone={reload}
        />
      )}
    </ul>
  );
}

interface TemplateProps {
  readonly template: RouteTemplate;
  readonly onRemove: () => void;
}

function Template({ template, onRemove }: TemplateProps) {
  const { id, name, note, steps } = template;
  return (
    <>
      <h2>
        <a href={hrefTo({ view: 'route', id })}>{name}</a>
      </h2>
      {note !== '' && <p class="aside">{note}</p>}
      <ol class="route-line">
        {steps.map((step, index) => (
          // A step of a template has no id of its own; the list is never reordered in place.
          <li key={index}>
            {stepName(step)}
            {step.optional && <span class="quiet"> ({pieceWords.optional})</span>}
          </li>
        ))}
      </ol>
      <div class="form-acts">
        <LinkButton href={hrefTo({ view: 'route', id })} name={routesWords.editName(name)}>
          {routesWords.edit}
        </LinkButton>
        <Button name={routesWords.removeName(name)} onPress={onRemove}>
          {routesWords.remove}
        </Button>
      </div>
    </>
  );
}
