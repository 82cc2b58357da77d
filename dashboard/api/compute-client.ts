import { z } from 'zod';
import { SteelDetail, SteelSummary } from '../../hub/contract/compute/steels.ts';
import { API, type Send } from './request.ts';

/** What the hub works out when asked, and its catalogue of steels. */
export interface ComputeApi {
  listSteels(): Promise<SteelSummary[]>;
  /** A grade by any of its names; refused with `not-found` when the catalogue does not hold it. */
  steel(name: string): Promise<SteelDetail>;
  /** Asks the computation of this name (`critical-temperatures`); what it refuses is an `ApiError`. */
  ask<T>(name: string, question: object, answer: z.ZodType<T>): Promise<T>;
}

export function createComputeApi(send: Send): ComputeApi {
  return {
    listSteels: () => send({ method: 'GET', path: `${API}/steels` }, z.array(SteelSummary)),
    steel: (name) => send({ method: 'GET', path: `${API}/steels/${encodeURIComponent(name)}` }, SteelDetail),
    ask: (name, body, answer) => send({ method: 'POST', path: `${API}/compute/${name}`, body }, answer),
  };
}
