import type { z } from 'zod';
import {
  BatchStatistics,
  type Measure,
  ShopChange,
  type ShopChangeDraft,
  TemperingLearned,
} from '../../hub/contract/batch-statistics.ts';
import { type ComparedBy, FiringComparison, ScheduleReference } from '../../hub/contract/comparison.ts';
import { API, asked, type Send, type SendForNothing } from './request.ts';

export interface CompareQuery {
  readonly ids: readonly string[];
  readonly by: ComparedBy;
  readonly points?: number;
}

export interface StatisticsQuery {
  readonly schedule: string;
  readonly furnace?: string | undefined;
  readonly measure: Measure;
  readonly segment?: number | undefined;
}

export type ShopChangeInput = z.input<typeof ShopChangeDraft>;

/** Many firings looked back upon together. */
export interface ReviewApi {
  compare(query: CompareQuery): Promise<FiringComparison>;
  statistics(query: StatisticsQuery): Promise<BatchStatistics>;
  /** Without a steel: the one with the most pieces. */
  tempering(steel?: string): Promise<TemperingLearned>;
  reference(scheduleId: string): Promise<ScheduleReference | null>;
  chooseReference(scheduleId: string, firingId: string): Promise<ScheduleReference>;
  dropReference(scheduleId: string): Promise<void>;
  addShopChange(draft: ShopChangeInput): Promise<ShopChange>;
}

export function createReviewApi(send: Send, sendForNothing: SendForNothing): ReviewApi {
  const referenceOf = (id: string) => `${API}/schedules/${encodeURIComponent(id)}/reference`;
  return {
    compare: ({ ids, ...more }) =>
      send(
        { method: 'GET', path: `${API}/firings/compare${asked({ ids: ids.join(), ...more })}` },
        FiringComparison,
      ),
    statistics: (query) => send({ method: 'GET', path: `${API}/statistics${asked(query)}` }, BatchStatistics),
    tempering: (steel) =>
      send({ method: 'GET', path: `${API}/statistics/tempering${asked({ steel })}` }, TemperingLearned),
    reference: (id) => send({ method: 'GET', path: referenceOf(id) }, ScheduleReference.nullable()),
    chooseReference: (id, firingId) =>
      send({ method: 'PUT', path: referenceOf(id), body: { firingId } }, ScheduleReference),
    dropReference: (id) => sendForNothing({ method: 'DELETE', path: referenceOf(id) }),
    addShopChange: (body) => send({ method: 'POST', path: `${API}/shop-changes`, body }, ShopChange),
  };
}
