import type { FeedState } from '../feed/state.ts';

/** Which of the five steps are done. Null: not known yet. */
export interface StepsDone {
  readonly connect: boolean;
  readonly furnace: boolean;
  readonly adopt: boolean;
  readonly channel: boolean;
  readonly schedule: boolean | null;
}

/** `schedules` is their count; null while it is asked for. */
export function stepsDone(
  state: Pick<FeedState, 'nodes' | 'furnaces' | 'channels'>,
  schedules: number | null,
): StepsDone {
  const adopted = [...state.channels.values()].some((channel) => channel.adopted && !channel.archived);
  return {
    connect: [...state.nodes.values()].some((node) => node.lastHeardAt !== null),
    furnace: state.furnaces.size > 0,
    adopt: adopted,
    channel: adopted,
    schedule: schedules === null ? null : schedules > 0,
  };
}
