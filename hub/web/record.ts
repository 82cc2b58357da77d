import type { Archive } from '../archive/types.ts';
import type { FiringDetail, PlanPoint } from '../contract/firing.ts';
import { FIRING_RECORD_SCHEMA, type FiringRecord } from '../contract/firing-record.ts';
import type { DisplayUnit } from '../contract/schedule.ts';
import type { Channel } from '../contract/shop.ts';
import { findUnit, fromBase } from '../contract/units.ts';
import { words } from '../contract/words/words.ts';
import { worded } from '../watch/alarm-words.ts';
import type { Watch } from '../watch/watch.ts';
import { csvRow } from './csv.ts';
import { firingFindings } from './record-findings.ts';

/** Every reading of a firing goes out; this only bounds a firing that somebody forgot to finish. */
const MOST_READINGS = 2_000_000;

/** The whole record of a firing: nothing thinned, everything that was judged, said and noted. */
export function firingRecord(
  archive: Archive,
  watch: Watch,
  firing: FiringDetail,
  now: number,
): FiringRecord {
  const { firingId: _, ...findings } = firingFindings({ archive, watch, now }, firing);
  const shop = archive.shop();
  const channels = recordChannels(archive, firing);
  const to = firing.endedAt ?? now;
  return {
    schema: FIRING_RECORD_SCHEMA,
    format: 'soakwatch-firing-record',
    formatVersion: 2,
    exportedAt: now,
    shop: { id: shop.id, name: shop.settings.name },
    firing,
    furnaceName: archive.furnace(firing.furnaceId)?.name ?? '',
    notes: [...archive.notes(firing.id)],
    alarms: archive
      .alarms({ firingId: firing.id, limit: 10_000 })
      .map((row) => worded(row, shop.settings.displayUnit)),
    channels: channels.map(({ id, node, name, label, role, baseUnit }) => ({
      id,
      node,
      name,
      label,
      role,
      unit: baseUnit,
    })),
    series: channels.map((channel) => archive.readings.series(channel, firing.startedAt, to, MOST_READINGS)),
    ...findings,
    caution: words('en').caution,
  };
}

/** The watched channels first, then the furnace's and the shop's others. */
function recordChannels(archive: Archive, firing: FiringDetail): Channel[] {
  const channels = archive.channels().filter((c) => c.adopted || firing.watchedChannels.includes(c.id));
  const watched = channels.filter((c) => firing.watchedChannels.includes(c.id));
  const others = channels.filter(
    (c) => !watched.includes(c) && (c.furnaceId === null || c.furnaceId === firing.furnaceId),
  );
  return [...watched, ...others];
}

const HEADER = [
  'time_utc',
  'elapsed_seconds',
  'channel',
  'role',
  'value',
  'unit',
  'quality',
  'planned',
  'segment',
] as const;

/** The readings as CSV, one row a reading, piece by piece so that a long firing does not stand in memory. */
export function* firingCsv(record: FiringRecord, unit: DisplayUnit): Generator<string> {
  yield csvRow([...HEADER]);
  const shown = findUnit(unit);
  for (const series of record.series) {
    const channel = record.channels.find((c) => c.id === series.channel);
    const celsius = series.unit === 'Cel' && shown !== undefined;
    const show = (value: number): number => (celsius && shown ? rounded(fromBase(value, shown)) : value);
    let chunk = '';
    for (const reading of series.readings) {
      const planned = celsius ? plannedAt(record.firing.judgement.plan, reading.at) : null;
      chunk += csvRow([
        new Date(reading.at).toISOString(),
        (reading.at - record.firing.startedAt) / 1000,
        channel ? `${channel.node}/${channel.name}` : series.channel,
        channel?.role ?? '',
        show(reading.value),
        celsius ? unit : series.unit,
        reading.quality,
        planned === null ? null : show(planned),
        segmentAt(record.firing, reading.at),
      ]);
      if (chunk.length > 65_536) {
        yield chunk;
        chunk = '';
      }
    }
    if (chunk) yield chunk;
  }
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}

function plannedAt(plan: readonly PlanPoint[], at: number): number | null {
  const next = plan.findIndex((point) => point.at >= at);
  const after = plan[next];
  if (!after) return null;
  const before = plan[next - 1];
  if (!before || after.at === before.at) return after.at === at ? after.celsius : null;
  return before.celsius + ((after.celsius - before.celsius) * (at - before.at)) / (after.at - before.at);
}

function segmentAt(firing: FiringDetail, at: number): number | null {
  const segment = firing.judgement.segments.find(
    (s) => s.startedAt !== null && s.startedAt <= at && (s.endedAt === null || at < s.endedAt),
  );
  return segment ? segment.index + 1 : null;
}
