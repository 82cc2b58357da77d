import { useState } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { type Entry, readNumber } from '../parts/number-entry.ts';
import { UnitField } from '../setup/unit-field.tsx';
import { faultWords } from '../words/faults.ts';
import { CRACK_WORDS, FILE_WORDS, seenWords } from '../words/pieces-seen.ts';
import { refusedAt } from './refused.ts';
import type { Seen, SeenFormProps } from './seen-props.ts';

/** The short forms: out of straight, a file or a crack in one press, a note. */

export function StraightnessForm({ busy, refusal, send }: SeenFormProps) {
  const [out, setOut] = useState('');
  const [over, setOver] = useState('');
  const [tried, setTried] = useState(false);
  const outMm = readNumber(out);
  const overMm = readNumber(over);
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (!outMm.ok || outMm.value === null || !overMm.ok) return;
    send({ kind: 'straightness', outMm: outMm.value, overMm: overMm.value });
  };
  return (
    <form class="form" onSubmit={submit} noValidate>
      <UnitField
        label={seenWords.out}
        value={out}
        unit="mm"
        onChange={setOut}
        error={(tried ? faultIn(outMm, true) : undefined) ?? refusedAt(refusal, 'seen.outMm')}
      />
      <UnitField
        label={seenWords.over}
        hint={seenWords.overHint}
        value={over}
        unit="mm"
        onChange={setOver}
        error={(tried ? faultIn(overMm, false) : undefined) ?? refusedAt(refusal, 'seen.overMm')}
      />
      <Keep busy={busy} />
    </form>
  );
}

function faultIn(entry: Entry<number | null>, isNeeded: boolean): string | undefined {
  if (!entry.ok) return entry.message;
  return isNeeded && entry.value === null ? faultWords.missing : undefined;
}

interface TwoWayProps extends SeenFormProps {
  readonly of: 'file' | 'crack';
}

/** Two answers, each one press; the place may be said first. */
export function TwoWayForm({ of, busy, send }: TwoWayProps) {
  const [position, setPosition] = useState('');
  return (
    <div class="form">
      <TextField
        label={seenWords.position}
        hint={seenWords.positionHint}
        value={position}
        onChange={setPosition}
        maxLength={80}
      />
      <div class="form-acts">
        {answersOf(of, position).map(([word, seen]) => (
          <Button key={word} size="wall" busy={busy} onPress={() => send(seen)}>
            {word}
          </Button>
        ))}
      </div>
    </div>
  );
}

function answersOf(of: TwoWayProps['of'], position: string): readonly (readonly [string, Seen])[] {
  if (of === 'file') {
    return [
      [FILE_WORDS.skates, { kind: 'file', result: 'skates', position }],
      [FILE_WORDS.bites, { kind: 'file', result: 'bites', position }],
    ];
  }
  return [
    [CRACK_WORDS.none, { kind: 'crack', found: false, position }],
    [CRACK_WORDS.found, { kind: 'crack', found: true, position }],
  ];
}

export function NoteForm({ busy, refusal, send }: SeenFormProps) {
  const [text, setText] = useState('');
  const [tried, setTried] = useState(false);
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (text.trim() !== '') send({ kind: 'note', text: text.trim() });
  };
  const empty = tried && text.trim() === '' ? faultWords.missing : undefined;
  return (
    <form class="form" onSubmit={submit} noValidate>
      <TextField
        label={seenWords.noteText}
        value={text}
        onChange={setText}
        rows={3}
        maxLength={4000}
        error={empty ?? refusedAt(refusal, 'seen.text')}
      />
      <Keep busy={busy} />
    </form>
  );
}

function Keep({ busy }: { readonly busy: boolean }) {
  return (
    <div class="form-acts">
      <Button type="submit" tone="main" size="wall" busy={busy}>
        {seenWords.keep}
      </Button>
    </div>
  );
}
