import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { FiringFindings } from '../../hub/contract/firing-record.ts';
import type { RecordPiece } from '../../hub/contract/firing-record-piece.ts';
import type { ChartSeries } from '../charts/types.ts';
import { type Answer, useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';
import { findingWords } from '../words/findings.ts';

/** What came of a firing for its pieces; asked again when it ends, and when it was judged again. */
export function useFindings({ id, status, judgement }: FiringDetail): Answer<FiringFindings> {
  const { api } = useShell();
  const judged = status === 'running' ? '' : `${judgement.judgeVersion} ${judgement.verdict}`;
  return useAnswer(`${id} ${status} ${judged}`, () => api.findings(id)).answer;
}

/** The computed middles as curves: of the slowest piece and of the quickest, told by how hot each was on the whole. */
export function coreSeries(pieces: readonly RecordPiece[]): ChartSeries[] {
  const own = pieces.filter(({ coreOf, curve }) => coreOf === null && curve.length > 1);
  const sorted = [...own].sort((a, b) => meanOf(a) - meanOf(b));
  return [...new Set([...sorted.slice(0, 1), ...sorted.slice(-1)])].map(({ mark, curve }) => ({
    label: findingWords.core(mark),
    role: 'core',
    readings: curve.map(({ at, celsius }) => ({ at, value: celsius, quality: 'good' })),
    gaps: [],
  }));
}

function meanOf({ curve }: RecordPiece): number {
  const [first] = curve;
  const last = curve.at(-1);
  if (first === undefined || last === undefined || last.at === first.at) return 0;
  const area = curve.reduce(
    (sum, point, i) => sum + point.celsius * (point.at - (curve[i - 1] ?? point).at),
    0,
  );
  return area / (last.at - first.at);
}
