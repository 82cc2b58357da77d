import type { Channel } from '../contract/shop.ts';
import type { Quantity } from '../contract/units.ts';
import type { Context } from './context.ts';

export type ChannelRow = Omit<Channel, 'adopted' | 'archived' | 'baseUnit' | 'latest' | 'probe'> & {
  series: number;
  adopted: number;
  archived: number;
  /** A JSON document. */
  probe: string | null;
};

export interface LocatedRow {
  series: number;
  id: string;
  quantity: Quantity;
  adopted: number;
}

const SELECT = `
  SELECT series, id, node, name, label, quantity, unit, role, furnace_id AS furnaceId,
    possible_low AS possibleLow, possible_high AS possibleHigh, stale_after_seconds AS staleAfterSeconds,
    probe, calibrated_at AS calibratedAt, calibration_due_at AS calibrationDueAt, end_of_life_at AS endOfLifeAt,
    adopted, archived, created_at AS createdAt
  FROM channels`;

/** Above every number in use and every number that readings were kept under: none is ever given twice. */
const NEXT_SERIES = `1 + max(coalesce((SELECT max(series) FROM channels), 0),
                             coalesce((SELECT max(series) FROM readings), 0))`;

const INSERT = `
  INSERT INTO channels (series, id, node, name, label, quantity, unit, role, furnace_id, possible_low,
    possible_high, stale_after_seconds, probe, calibrated_at, calibration_due_at, end_of_life_at, adopted, archived,
    created_at)
  VALUES (${NEXT_SERIES}, @id, @node, @name, @label, @quantity, @unit, @role, @furnaceId, @possibleLow,
    @possibleHigh, @staleAfterSeconds, @probe, @calibratedAt, @calibrationDueAt, @endOfLifeAt, @adopted, @archived,
    @createdAt)
  RETURNING series`;

const UPDATE = `
  UPDATE channels SET node = @node, name = @name, label = @label, quantity = @quantity, unit = @unit,
    role = @role, furnace_id = @furnaceId, possible_low = @possibleLow, possible_high = @possibleHigh,
    stale_after_seconds = @staleAfterSeconds, probe = @probe, calibrated_at = @calibratedAt,
    calibration_due_at = @calibrationDueAt, end_of_life_at = @endOfLifeAt, adopted = @adopted, archived = @archived
  WHERE id = @id`;

/** Every question that is put to the channels table, prepared once. */
export function channelStatements({ db }: Context) {
  return {
    all: db.prepare<[], ChannelRow>(`${SELECT} ORDER BY node, name`),
    byId: db.prepare<[string], ChannelRow>(`${SELECT} WHERE id = ?`),
    named: db.prepare<[string, string], ChannelRow>(`${SELECT} WHERE node = ? AND name = ?`),
    located: db.prepare<[string, string], LocatedRow>(
      'SELECT series, id, quantity, adopted FROM channels WHERE node = ? AND name = ?',
    ),
    offered: db
      .prepare<[string], number>('SELECT count(*) FROM channels WHERE node = ? AND adopted = 0')
      .pluck(),
    insert: db.prepare<[object], number>(INSERT).pluck(),
    update: db.prepare(UPDATE),
    renumber: db.prepare(`UPDATE channels SET series = ${NEXT_SERIES} WHERE id = ?`),
  };
}
