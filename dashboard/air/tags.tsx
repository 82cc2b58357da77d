import { useState } from 'preact/hooks';
import type { AirTags, AirView } from '../../hub/contract/air.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/field.tsx';
import { ProblemNote } from '../parts/problem.tsx';
import { Shape } from '../parts/shape.tsx';
import { useAction } from '../parts/use-action.ts';
import { whoIsHere } from '../pieces/who.ts';
import { useShell } from '../shell.ts';
import { ventilationWords } from '../words/air-ventilation.ts';
import { since } from '../words/time.ts';
import { offeredTags, tagsText, toggled } from './ventilation.ts';

/** The hub takes so many at once. */
const MOST_TAGS = 8;
const LONGEST_TAG = 40;

interface TagsProps {
  readonly ventilation: AirView['ventilation'];
  readonly now: number;
  readonly onSaid: () => void;
}

/** How the shop stands now, in big presses for gloves. */
export function TagToggles({ ventilation, now, onSaid }: TagsProps) {
  const { api } = useShell();
  const press = useAction();
  const [own, setOwn] = useState('');
  const [said, setSaid] = useState<AirTags | null>(null);
  const { tags, since: tagsSince } = present(ventilation, said);
  const say = (next: readonly string[]) =>
    press.run(async () => {
      const by = whoIsHere.value.trim();
      const kept = await api.air.sayTags({ tags: [...next], ...(by === '' ? {} : { by }) });
      setSaid(kept);
      onSaid();
    });
  const full = (tags?.length ?? 0) >= MOST_TAGS;
  const add = (event: Event) => {
    event.preventDefault();
    const tag = own.trim();
    if (tag === '' || full) return;
    say([...new Set([...(tags ?? []), tag])]);
    setOwn('');
  };
  return (
    <div class="air-tags">
      <h3 id="air-tags">{ventilationWords.tagsTitle}</h3>
      <p class="aside">{ventilationWords.tagsHint}</p>
      {tags === null ? (
        <p class="air-lead">
          <Shape of="blind" /> {ventilationWords.nobodySaid}
        </p>
      ) : (
        <p class="air-lead">
          {ventilationWords.saidSince(tagsText(tags), tagsSince === null ? '' : since(tagsSince, now))}
        </p>
      )}
      {/* biome-ignore lint/a11y/useSemanticElements: presses that act at once are no form */}
      <div class="air-toggles" role="group" aria-labelledby="air-tags">
        <Toggle
          word={ventilationWords.allShut}
          pressed={tags !== null && tags.length === 0}
          busy={press.busy}
          onPress={() => say([])}
        />
        {offeredTags(ventilation.knownTags, tags).map((tag) => (
          <Toggle
            key={tag}
            word={tag}
            pressed={tags?.includes(tag) ?? false}
            busy={press.busy}
            onPress={() => say(toggled(tags, tag))}
          />
        ))}
      </div>
      <ProblemNote error={press.error} />
      <form class="air-own" onSubmit={add}>
        <TextField
          label={ventilationWords.ownLabel}
          hint={full ? ventilationWords.tooMany : ventilationWords.ownHint}
          value={own}
          onChange={setOwn}
          maxLength={LONGEST_TAG}
        />
        <Button type="submit" busy={press.busy} disabled={full}>
          {ventilationWords.ownAdd}
        </Button>
      </form>
    </div>
  );
}

/** What was said here a moment ago goes before an answer that does not know it yet. */
function present(
  { tags, tagsSince }: AirView['ventilation'],
  said: AirTags | null,
): { readonly tags: readonly string[] | null; readonly since: number | null } {
  return said !== null && said.at >= (tagsSince ?? 0)
    ? { tags: said.tags, since: said.at }
    : { tags, since: tagsSince };
}

interface ToggleProps {
  readonly word: string;
  readonly pressed: boolean;
  readonly busy: boolean;
  readonly onPress: () => void;
}

function Toggle({ word, pressed, busy, onPress }: ToggleProps) {
  return (
    <button
      type="button"
      class="button button-plain air-toggle"
      aria-pressed={pressed}
      aria-disabled={busy}
      onClick={() => !busy && onPress()}
    >
      {word}
    </button>
  );
}
