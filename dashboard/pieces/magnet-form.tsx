import { Button } from '../parts/button.tsx';
import { useShell } from '../shell.ts';
import { seenWords } from '../words/pieces-seen.ts';
import { burningFurnaces } from './burning.ts';
import type { SeenFormProps } from './seen-props.ts';

/** One tap at the moment that the magnet lets go: a button for each furnace, those that burn first. */
export function MagnetForm({ busy, send }: SeenFormProps) {
  const { feed } = useShell();
  const state = feed.state.value;
  const burning = burningFurnaces(state);
  const furnaces = [...(state?.furnaces.values() ?? [])]
    .filter(({ archived }) => !archived)
    .sort((a, b) => Number(burning.has(b.id)) - Number(burning.has(a.id)));
  return (
    <div class="form">
      <p>{seenWords.magnetHead}</p>
      <p class="aside">{seenWords.magnetHint}</p>
      {furnaces.length === 0 && <p>{seenWords.noFurnace}</p>}
      <div class="form-acts">
        {furnaces.map(({ id, name }) => (
          <Button
            key={id}
            size="wall"
            tone={burning.has(id) ? 'main' : 'plain'}
            busy={busy}
            onPress={() => send({ kind: 'magnet', furnaceId: id })}
          >
            {seenWords.magnetIn(name)}
          </Button>
        ))}
      </div>
    </div>
  );
}
