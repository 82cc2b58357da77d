import type { FiringJudgement, SegmentResult } from '../contract/firing.ts';
import { type Context, fromJson, mustChange } from './context.ts';

/** Column by field of a segment result; `reasons` is kept apart, as JSON. */
const COLUMNS = {
  index: 'segment',
  state: 'state',
  startedAt: 'started_at',
  endedAt: 'ended_at',
  startCelsius: 'start_celsius',
  endCelsius: 'end_celsius',
  soakSeconds: 'soak_seconds',
  elapsedSeconds: 'elapsed_seconds',
  blindSeconds: 'blind_seconds',
  peakCelsius: 'peak_celsius',
  lowestCelsius: 'lowest_celsius',
  meanCelsius: 'mean_celsius',
  overshootCelsius: 'overshoot_celsius',
  secondsAboveTolerance: 'seconds_above_tolerance',
  meanRateCelsiusPerHour: 'mean_rate_celsius_per_hour',
  steepestRateCelsiusPerHour: 'steepest_rate_celsius_per_hour',
  verdict: 'verdict',
  reasons: 'reasons',
} as const satisfies Record<Exclude<keyof SegmentResult, keyof Soaks>, string>;

/** The two clocks of a soak beside each other are kept with the document. */
type Soaks = Pick<SegmentResult, 'soakSecondsCore' | 'soakSecondsAir'>;

const FIELDS = Object.keys(COLUMNS);
const NAMES = Object.values(COLUMNS);

type ResultRow = Omit<SegmentResult, 'reasons' | keyof Soaks> & { reasons: string };
type Document = Omit<FiringJudgement, 'segments'> & { readonly soaks: readonly Soaks[] };

/** What a judgement of the first judge did not know yet. */
const BEFORE_CORES = {
  soakClockOn: 'coldest-thermocouple',
  soakClockText: '',
  pieces: [],
  forecast: null,
  soaks: [],
} as const;

function highest(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length > 0 ? Math.max(...known) : null;
}

export interface JudgementPart {
  readonly save: (firingId: string, judgement: FiringJudgement) => void;
  readonly read: (firingId: string) => FiringJudgement | null;
}

/** The kept judgement: segment results as rows, the rest as one document, and the list's figures on the firing. */
export function judgementPart({ db }: Context): JudgementPart {
  const document = db
    .prepare<[string], string>('SELECT document FROM judgements WHERE firing_id = ?')
    .pluck();
  const results = db.prepare<[string], ResultRow>(
    `SELECT ${Object.entries(COLUMNS)
      .map(([field, column]) => `${column} AS "${field}"`)
      .join(', ')} FROM segment_results WHERE firing_id = ? ORDER BY segment`,
  );
  const saveDocument = db.prepare(
    `INSERT INTO judgements (firing_id, judged_to, judge_version, document) VALUES (?, ?, ?, ?)
     ON CONFLICT (firing_id) DO UPDATE SET judged_to = excluded.judged_to,
       judge_version = excluded.judge_version, document = excluded.document`,
  );
  const clearResults = db.prepare('DELETE FROM segment_results WHERE firing_id = ? AND segment >= ?');
  const saveResult = db.prepare(
    `INSERT INTO segment_results (firing_id, ${NAMES.join(', ')})
     VALUES (@firingId, ${FIELDS.map((field) => `@${field}`).join(', ')})
     ON CONFLICT (firing_id, segment) DO UPDATE SET
       ${NAMES.filter((name) => name !== 'segment')
         .map((name) => `${name} = excluded.${name}`)
         .join(', ')}`,
  );
  const saveFigures = db.prepare(
    'UPDATE firings SET verdict = ?, peak_celsius = ?, soak_seconds = ? WHERE id = ?',
  );

  return {
    save(firingId, judgement) {
      const { segments, ...rest } = judgement;
      const peak = highest(segments.map((segment) => segment.peakCelsius));
      const soak = segments.reduce((sum, segment) => sum + segment.soakSeconds, 0);
      mustChange(saveFigures.run(judgement.verdict, peak, soak, firingId).changes, 'firing', firingId);
      const soaks = segments.map(({ soakSecondsCore, soakSecondsAir }) => ({
        soakSecondsCore,
        soakSecondsAir,
      }));
      // What was foretold is of no use once it is past, and the document is read at every tick.
      const document = JSON.stringify({ ...rest, forecast: null, soaks });
      saveDocument.run(firingId, judgement.judgedTo, judgement.judgeVersion, document);
      for (const { soakSecondsCore: _core, soakSecondsAir: _air, ...segment } of segments) {
        saveResult.run({ ...segment, firingId, reasons: JSON.stringify(segment.reasons) });
      }
      clearResults.run(firingId, segments.length);
    },
    read(firingId) {
      const text = document.get(firingId);
      if (text === undefined) return null;
      const { soaks, ...rest } = { ...BEFORE_CORES, ...fromJson<Document>(text) };
      const segments = results.all(firingId).map((row, i) => ({
        ...row,
        soakSecondsCore: soaks[i]?.soakSecondsCore ?? null,
        soakSecondsAir: soaks[i]?.soakSecondsAir ?? row.soakSeconds,
        reasons: fromJson<SegmentResult['reasons']>(row.reasons),
      }));
      return { ...rest, pieces: [...rest.pieces], segments };
    },
  };
}
