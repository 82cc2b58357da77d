import { useShell } from '../shell.ts';
import { shellWords } from '../words/parts.ts';

export function Wall() {
  const { feed } = useShell();
  const state = feed.state.value;
  if (state === null) return <main class="wall-starting">{shellWords.starting}</main>;
  return <main class="wall">{[...state.furnaces.values()].map((furnace) => furnace.name).join(', ')}</main>;
}
