import '../parts/sheets.css';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { steelWords } from '../words/steel.ts';

/** What a steel does with heat: picked from the catalogue. `name` is any name of a grade, or empty. */
export function SteelPage({ name }: { readonly name: string }) {
  const { api } = useShell();
  const { answer } = useAnswer('steels', () => api.compute.listSteels());
  return (
    <Page title={name === '' ? steelWords.title : name}>
      {answer.state === 'waiting' && <p role="status">{steelWords.asking}</p>}
      {answer.state === 'failed' && <ProblemNote error={answer.error} />}
      {answer.state === 'here' && (
        <ul aria-label={steelWords.catalogue}>
          {answer.value.map(({ id, title }) => (
            <li key={id}>
              <a href={hrefTo({ view: 'steel', name: id })}>{title}</a>
            </li>
          ))}
        </ul>
      )}
    </Page>
  );
}
