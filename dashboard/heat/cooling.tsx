import { useMemo, useState } from 'preact/hooks';
import { ProblemNote } from '../parts/problem.tsx';
import { useShell } from '../shell.ts';
import { temperature } from '../words/format.ts';
import { coolingWords } from '../words/heat.ts';
import { duration } from '../words/time.ts';
import { askCooling, type CoolAnswer } from './ask-cooling.ts';
import { Buried } from './buried.tsx';
import { CoolFields } from './cool-fields.tsx';
import { coolingPicture } from './cooling-picture.ts';
import { CoolingTable } from './cooling-table.tsx';
import { type HeatTexts, readCool } from './form.ts';
import { Sample } from './heat-key.tsx';
import { LineChart } from './line-chart.tsx';
import type { Cooling } from './questions.ts';
import { packingRefusals } from './refusal.ts';
import { Standing } from './standing.tsx';
import { useComputed } from './use-computed.ts';

interface CoolingHalfProps {
  readonly texts: HeatTexts;
  readonly change: (more: Partial<HeatTexts>) => void;
}

/** The second half of the page: how the same piece cools, and what an anneal's rule says to it. */
export function CoolingHalf({ texts, change }: CoolingHalfProps) {
  const { api, feed } = useShell();
  const { plan, faults } = readCool(texts);
  const computed = useComputed(plan && JSON.stringify([plan, feed.blind.value]), (isWanted) =>
    plan === null ? Promise.reject(new Error('no plan')) : askCooling(api.compute, plan, isWanted),
  );
  const { value, fresh, error } = computed;
  const refusals = fresh && value !== null ? packingRefusals(value.results) : {};
  return (
    <div class="heat-half">
      <h2>{coolingWords.title}</h2>
      <CoolFields texts={texts} faults={{ ...refusals, ...faults }} change={change} />
      <section
        class={`heat-answer${fresh || value === null ? '' : ' heat-old'}`}
        aria-label={coolingWords.title}
      >
        <Standing computed={computed} held={plan === null} />
        {error !== null && <ProblemNote error={error} />}
        {value && <Cooled answer={value} texts={texts} />}
      </section>
    </div>
  );
}

interface CooledProps {
  readonly answer: CoolAnswer;
  readonly texts: HeatTexts;
}

function Cooled({ answer, texts }: CooledProps) {
  const [first] = answer.results;
  // Where every way is refused it is for one reason, and six empty rows say it no better.
  if (first !== undefined && answer.results.every(({ curves }) => curves === null)) {
    return <p class="heat-older">{coolingWords.refused(first.why, first.code)}</p>;
  }
  return (
    <>
      <CoolingCurves answer={answer} texts={texts} />
      <CoolingTable answer={answer} unit={texts.unit} />
      <Buried answer={answer} unit={texts.unit} />
    </>
  );
}

function CoolingCurves({ answer, texts }: CooledProps) {
  const [picked, setPicked] = useState<Cooling>('still-air');
  const { unit } = texts;
  const picture = useMemo(() => coolingPicture(answer, picked, unit), [answer, picked, unit]);
  return (
    <figure class="heat-figure">
      <fieldset class="heat-ways">
        <legend>{coolingWords.pick}</legend>
        {answer.results.map(({ cooling }) => (
          <button
            key={cooling}
            type="button"
            class="button button-plain button-page"
            aria-pressed={cooling === picked}
            onClick={() => setPicked(cooling)}
          >
            {coolingWords.short[cooling]}
          </button>
        ))}
      </fieldset>
      <LineChart picture={picture} summary={summaryOf(answer, unit)} />
      <figcaption>
        <ul class="chart-key">
          <Sample kind="core" words={coolingWords.key.core} />
          <Sample kind="measured" words={coolingWords.key.surface} />
          <Sample kind="other" words={coolingWords.key.other} />
          <Sample kind="band" words={`${coolingWords.key.band}; ${coolingWords.ruleBand}`} />
        </ul>
        <p class="aside">{coolingWords.chartNote}</p>
      </figcaption>
    </figure>
  );
}

function summaryOf({ results }: CoolAnswer, unit: HeatTexts['unit']): string {
  const ways = results.flatMap(({ cooling, curves }) => {
    const [seconds, core] = [curves?.seconds.at(-1), curves?.core.at(-1)];
    if (seconds === undefined || core === undefined) return [];
    return coolingWords.summaryWay(coolingWords.short[cooling], duration(seconds), temperature(core, unit));
  });
  return coolingWords.summary(ways.join('; '));
}
