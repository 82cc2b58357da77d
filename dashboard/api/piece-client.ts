import { z } from 'zod';
import { Bench } from '../../hub/contract/bench.ts';
import { Observation, type ObservationDraft } from '../../hub/contract/observation.ts';
import {
  Piece,
  type PieceDraft,
  PieceHistory,
  PiecePage,
  type PiecePatch,
  type TickRequest,
} from '../../hub/contract/piece.ts';
import {
  PlanCheck,
  type PlanCheckRequest,
  Proposal,
  type ProposalRequest,
} from '../../hub/contract/planning.ts';
import { Reminder } from '../../hub/contract/reminder.ts';
import { RouteTemplate, type RouteTemplateDraft } from '../../hub/contract/route-template.ts';
import { API, asked, type Send, type SendForNothing } from './request.ts';

export type PieceInput = z.input<typeof PieceDraft>;
export type PieceChange = z.input<typeof PiecePatch>;
export type TickInput = z.input<typeof TickRequest>;
export type ObservationInput = z.input<typeof ObservationDraft>;
export type TemplateInput = z.input<typeof RouteTemplateDraft>;
export type ProposalInput = z.input<typeof ProposalRequest>;
export type PlanCheckInput = z.input<typeof PlanCheckRequest>;

export interface PieceQuery {
  /** The whole mark, in any case. */
  readonly mark?: string | undefined;
  /** Words that must all stand in mark, title, note or steel. */
  readonly q?: string | undefined;
  readonly archived?: 'no' | 'yes' | 'any';
  /** `next` of the page before. */
  readonly after?: string | undefined;
  readonly limit?: number;
}

export interface FileAbout {
  readonly fileName: string;
  readonly by?: string;
  readonly note?: string;
  readonly stepId?: string | undefined;
}

/** Pieces with their routes, what was seen on them, the bench list, and schedules out of the steel. */
export interface PieceApi {
  list(query?: PieceQuery): Promise<PiecePage>;
  read(id: string): Promise<Piece>;
  create(draft: PieceInput): Promise<Piece>;
  change(id: string, change: PieceChange): Promise<Piece>;
  putAway(id: string): Promise<void>;
  tick(id: string, stepId: string, tick: TickInput): Promise<Piece>;
  untick(id: string, stepId: string): Promise<Piece>;
  history(id: string): Promise<PieceHistory>;
  observe(id: string, seen: ObservationInput): Promise<Observation>;
  /** The body is the file itself; its own `type` says what it is. */
  attach(id: string, file: Blob, about: FileAbout): Promise<Observation>;
  removeObservation(id: string): Promise<void>;
  bench(): Promise<Bench>;
  listTemplates(): Promise<RouteTemplate[]>;
  template(id: string): Promise<RouteTemplate>;
  createTemplate(draft: TemplateInput): Promise<RouteTemplate>;
  saveTemplate(id: string, draft: TemplateInput): Promise<RouteTemplate>;
  removeTemplate(id: string): Promise<void>;
  listReminders(): Promise<Reminder[]>;
  propose(question: ProposalInput): Promise<Proposal>;
  checkPlan(question: PlanCheckInput): Promise<PlanCheck>;
}

/** Where the photo or file of an observation is fetched from. */
export function attachmentAddress(id: string): string {
  return `${API}/attachments/${encodeURIComponent(id)}`;
}

export function createPieceApi(send: Send, sendForNothing: SendForNothing): PieceApi {
  const pieces = `${API}/pieces`;
  const templates = `${API}/route-templates`;
  const within = (folder: string, id: string, rest = '') => `${folder}/${encodeURIComponent(id)}${rest}`;
  const done = (id: string, stepId: string) =>
    within(pieces, id, `/route/${encodeURIComponent(stepId)}/done`);
  return {
    list: (query) => send({ method: 'GET', path: `${pieces}${asked(query)}` }, PiecePage),
    read: (id) => send({ method: 'GET', path: within(pieces, id) }, Piece),
    create: (body) => send({ method: 'POST', path: pieces, body }, Piece),
    change: (id, body) => send({ method: 'PATCH', path: within(pieces, id), body }, Piece),
    putAway: (id) => sendForNothing({ method: 'DELETE', path: within(pieces, id) }),
    tick: (id, stepId, body) => send({ method: 'POST', path: done(id, stepId), body }, Piece),
    untick: (id, stepId) => send({ method: 'DELETE', path: done(id, stepId) }, Piece),
    history: (id) => send({ method: 'GET', path: within(pieces, id, '/history') }, PieceHistory),
    observe: (id, body) =>
      send({ method: 'POST', path: within(pieces, id, '/observations'), body }, Observation),
    attach: (id, file, about) =>
      send({ method: 'POST', path: within(pieces, id, `/attachments${asked(about)}`), file }, Observation),
    removeObservation: (id) => sendForNothing({ method: 'DELETE', path: within(`${API}/observations`, id) }),
    bench: () => send({ method: 'GET', path: `${API}/bench` }, Bench),
    listTemplates: () => send({ method: 'GET', path: templates }, z.array(RouteTemplate)),
    template: (id) => send({ method: 'GET', path: within(templates, id) }, RouteTemplate),
    createTemplate: (body) => send({ method: 'POST', path: templates, body }, RouteTemplate),
    saveTemplate: (id, body) => send({ method: 'PUT', path: within(templates, id), body }, RouteTemplate),
    removeTemplate: (id) => sendForNothing({ method: 'DELETE', path: within(templates, id) }),
    listReminders: () => send({ method: 'GET', path: `${API}/reminders` }, z.array(Reminder)),
    propose: (body) => send({ method: 'POST', path: `${API}/schedules/propose`, body }, Proposal),
    checkPlan: (body) => send({ method: 'POST', path: `${API}/schedules/check`, body }, PlanCheck),
  };
}
