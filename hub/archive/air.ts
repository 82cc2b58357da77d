import type { AirChange, AirTags } from '../contract/air.ts';
import type { AirStore } from './air-types.ts';
import { type Context, fromJson } from './context.ts';

interface TagRow {
  at: number;
  tags: string;
  by: string;
}

/** How the shop stood, and the air changes measured in it. */
export function airPart({ db }: Context): AirStore {
  const tags = db.prepare<[], TagRow>('SELECT at, tags, by FROM air_tags ORDER BY at');
  const say = db.prepare(
    `INSERT INTO air_tags (at, tags, by) VALUES (?, ?, ?)
     ON CONFLICT (at) DO UPDATE SET tags = excluded.tags, by = excluded.by`,
  );
  const save = db.prepare(
    `INSERT INTO air_changes (channel_id, from_at, to_at, kept_at, measurement) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (channel_id, from_at) DO UPDATE SET
       to_at = excluded.to_at, measurement = excluded.measurement`,
  );
  const list = db
    .prepare<[number], string>('SELECT measurement FROM air_changes ORDER BY from_at DESC LIMIT ?')
    .pluck();
  return {
    airTags: () => tags.all().map(({ tags: text, ...row }): AirTags => ({ ...row, tags: fromJson(text) })),
    setAirTags({ at, tags: said, by }) {
      say.run(at, JSON.stringify(said), by);
    },
    saveAirChange(change, at) {
      save.run(change.channel, change.from, change.to, at, JSON.stringify(change));
    },
    airChanges: (limit) => list.all(limit).map((text): AirChange => fromJson(text)),
  };
}
