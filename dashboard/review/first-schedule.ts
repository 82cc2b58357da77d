import type { Schedule } from '../../hub/contract/schedule.ts';
import type { Api } from '../api/client.ts';

/** The schedules, and the one that these pages begin with: what was finished last. */
export async function firstSchedule(
  api: Pick<Api, 'listSchedules' | 'listFirings'>,
): Promise<{ readonly schedules: readonly Schedule[]; readonly first: string }> {
  const [schedules, [newest]] = await Promise.all([
    api.listSchedules(),
    api.listFirings({ status: 'finished', limit: 1 }),
  ]);
  // A summary names its schedule as it was called then; renamed since, the first in the list will do.
  const same = schedules.find(({ name }) => name === newest?.scheduleName) ?? schedules[0];
  return { schedules, first: same?.id ?? '' };
}
