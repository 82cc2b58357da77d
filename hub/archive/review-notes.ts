import type { ShopChange } from '../contract/batch-statistics.ts';
import type { ScheduleReference } from '../contract/comparison.ts';
import { type Context, mustChange } from './context.ts';
import type { ReviewNotes } from './review-types.ts';

/** More changes than this no chart marks apart. */
const MOST_CHANGES = 500;

/** What people decided and changed, to look back by: references of schedules, changes in the shop. */
export function reviewNotePart({ db, ids }: Context): ReviewNotes {
  const reference = db.prepare<[string], ScheduleReference>(
    `SELECT schedule_id AS scheduleId, firing_id AS firingId, chosen_at AS chosenAt
     FROM schedule_references WHERE schedule_id = ?`,
  );
  const choose = db.prepare(
    `INSERT INTO schedule_references (schedule_id, firing_id, chosen_at) VALUES (@scheduleId, @firingId, @chosenAt)
     ON CONFLICT (schedule_id) DO UPDATE SET firing_id = excluded.firing_id, chosen_at = excluded.chosen_at`,
  );
  const drop = db.prepare('DELETE FROM schedule_references WHERE schedule_id = ?');
  const changes = db.prepare<[object], ShopChange>(
    `SELECT id, at, kind, furnace_id AS furnaceId, channel_id AS channelId, text, by FROM shop_changes
     WHERE at BETWEEN @from AND @to ORDER BY at DESC, seq DESC LIMIT ${MOST_CHANGES}`,
  );
  const insert = db.prepare(
    `INSERT INTO shop_changes (id, at, kind, furnace_id, channel_id, text, by)
     VALUES (@id, @at, @kind, @furnaceId, @channelId, @text, @by)`,
  );
  return {
    scheduleReference: (scheduleId) => reference.get(scheduleId) ?? null,
    chooseReference(chosen) {
      mustChange(choose.run(chosen).changes, 'schedule', chosen.scheduleId);
      return chosen;
    },
    dropReference: (scheduleId) => drop.run(scheduleId).changes > 0,
    shopChanges: (from, to) => changes.all({ from, to }).reverse(),
    addShopChange(draft) {
      const made: ShopChange = { ...draft, id: ids() };
      insert.run(made);
      return made;
    },
  };
}
