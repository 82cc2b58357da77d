import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import type { z } from 'zod';
import { CriticalTemperaturesAnswer } from '../../hub/contract/compute/critical-temperatures.ts';
import { GlowAnswer } from '../../hub/contract/compute/glow.ts';
import { type SteelDetail, SteelWindowsAnswer } from '../../hub/contract/compute/steels.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { ProblemNote } from '../parts/problem.tsx';
import { disagreeWords, scaleWords, steelWords, windowWords } from '../words/steel.ts';
import { hardenWords, temperWords } from '../words/steel-hardness.ts';
import { magnetWords } from '../words/steel-magnet.ts';
import { Disagree } from './disagree.tsx';
import { Hardening } from './hardening.tsx';
import { Magnet } from './magnet.tsx';
import type { SteelQuestion } from './question.ts';
import { Temperatures } from './temperatures.tsx';
import { Tempering } from './tempering.tsx';
import { type Computed, useComputation } from './use-computation.ts';
import { Windows } from './windows.tsx';

interface AnswersProps {
  readonly question: SteelQuestion;
  readonly grade: z.infer<typeof SteelDetail> | null;
  readonly unit: DisplayUnit;
  /** Told what the hub refuses of the steel itself, so that the form can show it beside the field. */
  readonly onRefused: (error: unknown) => void;
}

/** Everything that the hub says about one steel. Each part that fails says so in its own place. */
export function Answers({ question, grade, unit, onRefused }: AnswersProps) {
  const critical = useComputation('critical-temperatures', question, CriticalTemperaturesAnswer);
  const windows = useComputation('steel-windows', question, SteelWindowsAnswer);
  const glow = useComputation('glow', {}, GlowAnswer);
  useEffect(() => {
    if (question.composition !== undefined && windows.error !== null) onRefused(windows.error);
  }, [windows.error]);
  const title = windows.value?.steel.title ?? grade?.title ?? steelWords.byComposition;
  // When the steel itself is refused every part would say the same: once is enough.
  if (windows.error !== null && critical.error !== null) return <ProblemNote error={windows.error} />;
  return (
    <>
      <Part id="scale" head={scaleWords.head} of={critical}>
        {(value) => (
          <>
            <Temperatures
              critical={value}
              windows={windows.value?.windows ?? []}
              glow={glow.value}
              unit={unit}
            />
            <ProblemNote error={glow.error} />
          </>
        )}
      </Part>
      <Part id="magnet" head={magnetWords.head} of={critical}>
        {(value) => <Magnet critical={value} title={title} unit={unit} />}
      </Part>
      <Part id="windows" head={windowWords.head} of={windows}>
        {(value) => <Windows answer={value} never={grade?.notRecommended ?? []} unit={unit} />}
      </Part>
      <Section id="hardening" head={hardenWords.head}>
        <Hardening steel={question} title={title} />
      </Section>
      <Section id="tempering" head={temperWords.head}>
        <Tempering
          steel={question}
          sets={question.composition === undefined ? (grade?.temperSets ?? []) : []}
          unit={unit}
        />
      </Section>
      <Part id="disagree" head={disagreeWords.head} of={critical}>
        {(value) => <Disagree critical={value} unit={unit} />}
      </Part>
    </>
  );
}

interface PartProps<T> {
  readonly id: string;
  readonly head: string;
  readonly of: Computed<T>;
  readonly children: (value: T) => ComponentChildren;
}

/** A part of the page that stands on one answer: the answer, that it is under way, or what went wrong. */
function Part<T>({ id, head, of, children }: PartProps<T>) {
  return (
    <Section id={id} head={head}>
      <ProblemNote error={of.error} />
      {of.isWaiting && <p role="status">{steelWords.working}</p>}
      {of.value !== null && children(of.value)}
    </Section>
  );
}

interface SectionProps {
  readonly id: string;
  readonly head: string;
  readonly children: ComponentChildren;
}

function Section({ id, head, children }: SectionProps) {
  return (
    <section class="steel-part" aria-labelledby={`steel-${id}`}>
      <h2 id={`steel-${id}`}>{head}</h2>
      {children}
    </section>
  );
}
