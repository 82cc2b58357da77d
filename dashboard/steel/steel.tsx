import '../parts/sheets.css';
import './steel.css';
import './drawings.css';
import { useState } from 'preact/hooks';
import type { z } from 'zod';
import type { Composition } from '../../hub/contract/compute/steel-choice.ts';
import type { SteelDetail } from '../../hub/contract/compute/steels.ts';
import { ApiError } from '../api/error.ts';
import { LinkButton } from '../parts/button.tsx';
import { Page } from '../parts/page.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { UnitSwitch, useUnit } from '../parts/unit-switch.tsx';
import { useAnswer } from '../parts/use-answer.ts';
import { hrefTo } from '../router.ts';
import { useShell } from '../shell.ts';
import { steelWords } from '../words/steel.ts';
import { Answers } from './answers.tsx';
import { Choice } from './choice.tsx';
import { questionOf } from './question.ts';

type Grade = z.infer<typeof SteelDetail>;

/** What a steel does with heat. `name` is any name of a grade, or empty. Mount anew for another name. */
export function SteelPage({ name }: { readonly name: string }) {
  const { api } = useShell();
  const [unit, setUnit] = useUnit();
  const [composition, setComposition] = useState<Composition | null>(null);
  const [refusal, setRefusal] = useState<unknown>(null);
  const catalogue = useAnswer('steels', () => api.compute.listSteels()).answer;
  const known = useAnswer<Grade | null>(name, () =>
    name === '' ? Promise.resolve(null) : api.compute.steel(name),
  ).answer;
  const grade = known.state === 'here' ? known.value : null;
  const question = questionOf(grade?.id ?? '', composition);
  return (
    <Page
      title={titleOf(name, grade, composition)}
      actions={
        <>
          <div class="steel-unit">
            <UnitSwitch unit={unit} onUnit={setUnit} />
          </div>
          <LinkButton href={hrefTo({ view: 'wall' })}>{steelWords.toWall}</LinkButton>
        </>
      }
    >
      {known.state === 'failed' && <GradeProblem name={name} error={known.error} />}
      {catalogue.state === 'failed' && <ProblemNote error={catalogue.error} />}
      {(catalogue.state === 'waiting' || known.state === 'waiting') && (
        <p role="status">{steelWords.asking}</p>
      )}
      <Choice
        grades={catalogue.state === 'here' ? catalogue.value : []}
        grade={grade}
        isOpen={question === null}
        composition={composition}
        refusal={refusal}
        onUse={(next) => {
          setRefusal(null);
          setComposition(next);
        }}
      />
      {question && (
        <Answers
          key={JSON.stringify(question)}
          question={question}
          grade={grade}
          unit={unit}
          onRefused={setRefusal}
        />
      )}
    </Page>
  );
}

function titleOf(name: string, grade: Grade | null, composition: Composition | null): string {
  if (grade !== null) return composition === null ? grade.title : steelWords.certificateOf(grade.title);
  if (composition !== null) return steelWords.byComposition;
  return name === '' ? steelWords.title : name;
}

/** A name that the catalogue does not hold is no fault of anything: it is said, and the catalogue offered. */
function GradeProblem({ name, error }: { readonly name: string; readonly error: unknown }) {
  if (error instanceof ApiError && error.code === 'not-found') {
    return (
      <p class="steel-say" role="alert">
        {steelWords.unknownGrade(name)}
      </p>
    );
  }
  return <ProblemNote error={error} />;
}
