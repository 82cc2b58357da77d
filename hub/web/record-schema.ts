import { z } from 'zod';
import { FIRING_RECORD_SCHEMA, FiringRecord } from '../contract/firing-record.ts';

let made: Readonly<Record<string, unknown>> | null = null;

/** The JSON Schema (draft 2020-12) of a firing's record as it is given out, named by the path it is read at. */
export function firingRecordSchema(): Readonly<Record<string, unknown>> {
  made ??= { ...z.toJSONSchema(FiringRecord, { io: 'output' }), $id: FIRING_RECORD_SCHEMA };
  return made;
}
