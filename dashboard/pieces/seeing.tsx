import { useState } from 'preact/hooks';
import type { Observation } from '../../hub/contract/observation.ts';
import type { Piece } from '../../hub/contract/piece.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { Button } from '../parts/button.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { useAction } from '../parts/use-action.ts';
import { useShell } from '../shell.ts';
import { KIND_WORDS, seenWords } from '../words/pieces-seen.ts';
import { AttachForm } from './attach-form.tsx';
import { HardnessForm } from './hardness-form.tsx';
import { MagnetForm } from './magnet-form.tsx';
import { saidOf } from './said.ts';
import { NoteForm, StraightnessForm, TwoWayForm } from './seen-forms.tsx';
import type { Seen, SeenFormProps } from './seen-props.ts';
import { dueStep } from './step-name.ts';
import { whoIsHere } from './who.ts';

interface SeeingProps {
  readonly piece: Piece;
  readonly unit: DisplayUnit;
  readonly reload: () => void;
}

type Kind = keyof typeof KIND_WORDS;

const KINDS = Object.keys(KIND_WORDS) as readonly Kind[];

/** What the person sees, in a press or two: which kind, then only what that kind needs. */
export function Seeing({ piece, unit, reload }: SeeingProps) {
  const { api } = useShell();
  const [kind, setKind] = useState<Kind | null>(null);
  const [said, setSaid] = useState('');
  const press = useAction();
  const run = (send: () => Promise<Observation>) =>
    press.run(async () => {
      const kept = await send();
      setSaid(seenWords.noted(saidOf(kept, unit)));
      setKind(null);
      reload();
    });
  const about = () => ({ by: whoIsHere.value, stepId: stepFor(piece, kind) });
  const send = (seen: Seen) => run(() => api.pieces.observe(piece.id, { ...about(), seen }));
  const attach = (file: File, note: string) => {
    const { by, stepId } = about();
    run(() =>
      api.pieces.attach(piece.id, file, { fileName: file.name, by, note, stepId: stepId ?? undefined }),
    );
  };
  return (
    <section class="piece-part" aria-labelledby="piece-seeing-head">
      <h2 id="piece-seeing-head">{seenWords.title}</h2>
      {/* biome-ignore lint/a11y/useSemanticElements: buttons that unfold forms, not fields */}
      <div class="seen-kinds" role="group" aria-label={seenWords.choose}>
        {KINDS.map((each) => (
          <button
            key={each}
            type="button"
            class="button button-plain seen-kind"
            aria-expanded={kind === each}
            onClick={() => setKind(kind === each ? null : each)}
          >
            {KIND_WORDS[each]}
          </button>
        ))}
      </div>
      {kind && (
        <div class="seen-form" key={kind}>
          <h3>{KIND_WORDS[kind]}</h3>
          <SeenForm kind={kind} busy={press.busy} refusal={press.error} send={send} attach={attach} />
          <ProblemNote error={press.error} />
          <Button onPress={() => setKind(null)}>{seenWords.cancel}</Button>
        </div>
      )}
      <p role="status">{said}</p>
    </section>
  );
}

/** A check that is due is what is being looked at: its observation belongs to it. */
function stepFor(piece: Piece, kind: Kind | null): string | null {
  const due = dueStep(piece);
  return due?.kind === 'check' && due.check === kind ? due.id : null;
}

interface AnyFormProps extends SeenFormProps {
  readonly kind: Kind;
  readonly attach: (file: File, note: string) => void;
}

function SeenForm({ kind, attach, ...props }: AnyFormProps) {
  switch (kind) {
    case 'hardness':
      return <HardnessForm {...props} />;
    case 'straightness':
      return <StraightnessForm {...props} />;
    case 'file':
      return <TwoWayForm {...props} of="file" />;
    case 'crack':
      return <TwoWayForm {...props} of="crack" />;
    case 'magnet':
      return <MagnetForm {...props} />;
    case 'note':
      return <NoteForm {...props} />;
    case 'attachment':
      return <AttachForm busy={props.busy} refusal={props.refusal} attach={attach} />;
    default:
      return kind satisfies never;
  }
}
