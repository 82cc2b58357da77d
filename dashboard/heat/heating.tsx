import { useMemo } from 'preact/hooks';
import { ProblemNote } from '../parts/problem.tsx';
import { temperature } from '../words/format.ts';
import { heatWords } from '../words/heat.ts';
import { tied } from '../words/tied.ts';
import { duration } from '../words/time.ts';
import type { HeatAnswer } from './ask.ts';
import type { HeatTexts } from './form.ts';
import type { FurnaceKind } from './furnace.ts';
import { HeatKey } from './heat-key.tsx';
import { heatingPicture } from './heating-picture.ts';
import { LineChart } from './line-chart.tsx';
import { chamberAt } from './questions.ts';
import { questionsLeft, saidOf } from './said.ts';
import { Sections } from './sections.tsx';
import { Standing } from './standing.tsx';
import type { Computed } from './use-computed.ts';

export interface HeatingAnswerProps {
  readonly computed: Computed<HeatAnswer>;
  readonly texts: HeatTexts;
  /** A field cannot be read, so that nothing new is asked. */
  readonly held: boolean;
  readonly kind: FurnaceKind;
}

/** The answer in words, the curves, and the same for thinner and thicker. */
export function HeatingAnswer({ computed, texts, held, kind }: HeatingAnswerProps) {
  const { value, error } = computed;
  return (
    <section
      class={`heat-answer${computed.fresh || value === null ? '' : ' heat-old'}`}
      aria-label={heatWords.answer}
    >
      <Standing computed={computed} held={held} />
      {error !== null && <ProblemNote error={error} />}
      {value && <Told answer={value} texts={texts} kind={kind} />}
      {value && <Curves answer={value} texts={texts} />}
      {value && <Sections answer={value} texts={texts} />}
    </section>
  );
}

interface PartProps {
  readonly answer: HeatAnswer;
  readonly texts: HeatTexts;
}

function Told({ answer, texts, kind }: PartProps & { readonly kind: FurnaceKind }) {
  const { headline, facts, notes } = saidOf(answer, texts.unit, kind);
  return (
    <>
      <p class="heat-headline">{tied(headline)}</p>
      <ul class="heat-facts">
        {facts.map((fact) => (
          <li key={fact}>{tied(fact)}</li>
        ))}
      </ul>
      {notes.map((note) => (
        <p key={note} class="aside">
          {tied(note)}
        </p>
      ))}
    </>
  );
}

function Curves({ answer, texts }: PartProps) {
  const { unit } = texts;
  const picture = useMemo(() => heatingPicture(answer, unit), [answer, unit]);
  const { seconds, coreCelsius, surfaceCelsius } = answer.conduction.curves;
  const at = (index: number) => {
    const second = seconds[index] ?? 0;
    const values = [chamberAt(answer.plan, second), surfaceCelsius[index] ?? 0, coreCelsius[index] ?? 0];
    const [furnace = '', skin = '', core = ''] = values.map((celsius) => temperature(celsius, unit));
    return heatWords.readout(duration(second), furnace, skin, core);
  };
  const [first = 0, last = 0] = [coreCelsius[0], coreCelsius.at(-1)];
  const summary = heatWords.summary(
    duration(seconds.at(-1) ?? 0),
    temperature(first, unit),
    temperature(last, unit),
  );
  return (
    <figure class="heat-figure">
      <LineChart picture={picture} summary={`${summary} ${questionsLeft(answer)}`} readout={at} />
      <figcaption>
        <HeatKey answer={answer} unit={unit} />
      </figcaption>
    </figure>
  );
}
