import { ALARM_DEFINITIONS } from '../alarms/definitions.ts';
import type { Finding } from '../contract/alarm.ts';
import type { FurnaceGasState, GasConfig, GasState } from './types.ts';
import { WATCH_KINDS } from './types.ts';

/** What the judge of the gas found, read off its state, loudest first. */
export function gasFindings(config: GasConfig, state: GasState): Finding[] {
  const names = new Map(
    config.supplies.flatMap(({ furnaces }) => furnaces.map(({ id, name }) => [id, name])),
  );
  return state.furnaces
    .flatMap((furnace) => findingsOf(furnace, names.get(furnace.id) ?? ''))
    .sort((a, b) => ALARM_DEFINITIONS[a.kind].rank - ALARM_DEFINITIONS[b.kind].rank);
}

function findingsOf(state: FurnaceGasState, furnaceName: string): Finding[] {
  const { id, trouble, firing } = state;
  const about = { furnaceId: id, furnaceName, firingId: firing?.firingId ?? null };
  const watched = WATCH_KINDS.flatMap((kind): Finding[] => {
    const { raised, since } = state.watch[kind];
    const params = { ...state.params[kind], ...about };
    return raised && since !== null ? [{ kind, subject: id, since, params }] : [];
  });
  if (trouble?.raised !== true) return watched;
  const { kind, since, params } = trouble;
  return [{ kind, subject: id, since, params: { ...params, ...about } }, ...watched];
}
