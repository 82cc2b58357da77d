import type { z } from 'zod';
import { AirTags, type AirTagsRequest, AirView } from '../../hub/contract/air.ts';
import { API, type Send } from './request.ts';

export type AirTagsInput = z.input<typeof AirTagsRequest>;

/** What the hub knows of the air, and how the shop is said to stand. */
export interface AirApi {
  view(): Promise<AirView>;
  sayTags(said: AirTagsInput): Promise<AirTags>;
}

export function createAirApi(send: Send): AirApi {
  return {
    view: () => send({ method: 'GET', path: `${API}/air` }, AirView),
    sayTags: (body) => send({ method: 'PUT', path: `${API}/air/tags`, body }, AirTags),
  };
}
