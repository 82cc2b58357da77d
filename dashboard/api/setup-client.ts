import { z } from 'zod';
import { type FurnaceFitKeep, FurnaceFitTried, type FurnaceFitTry } from '../../hub/contract/furnace-fit.ts';
import { TimeAboveLimit } from '../../hub/contract/probe.ts';
import {
  About,
  type AdoptRequest,
  Binding,
  type BindingDraft,
  Channel,
  type ChannelDraft,
  type ChannelPatch,
  Furnace,
  type FurnaceDraft,
  type FurnacePatch,
  type NodeDraft,
  type NodePatch,
  Refusal,
  Shop,
  type ShopNode,
  ShopNode as ShopNodeSchema,
  type ShopSettingsPatch,
} from '../../hub/contract/shop.ts';
import { API, type Send, type SendForNothing } from './request.ts';

export type FurnaceInput = z.input<typeof FurnaceDraft>;
export type FurnaceChange = z.input<typeof FurnacePatch>;
export type FitTryInput = z.input<typeof FurnaceFitTry>;
export type FitKeepInput = z.input<typeof FurnaceFitKeep>;
export type NodeInput = z.input<typeof NodeDraft>;
export type NodeChange = z.input<typeof NodePatch>;
export type ChannelInput = z.input<typeof ChannelDraft>;
export type ChannelChange = z.input<typeof ChannelPatch>;
export type BindingInput = z.input<typeof BindingDraft>;
export type SettingsChange = z.input<typeof ShopSettingsPatch>;
export type AdoptInput = z.input<typeof AdoptRequest>;

/** The questions of the setup pages: what the shop is made of. */
export interface SetupApi {
  about(): Promise<About>;
  changeSettings(change: SettingsChange): Promise<Shop>;
  listFurnaces(): Promise<Furnace[]>;
  createFurnace(draft: FurnaceInput): Promise<Furnace>;
  changeFurnace(id: string, change: FurnaceChange): Promise<Furnace>;
  removeFurnace(id: string): Promise<void>;
  /** Fits a furnace to a finished firing and keeps nothing. */
  tryFit(id: string, question: FitTryInput): Promise<FurnaceFitTried>;
  keepFit(id: string, fit: FitKeepInput): Promise<Furnace>;
  forgetFit(id: string): Promise<void>;
  listNodes(): Promise<ShopNode[]>;
  createNode(draft: NodeInput): Promise<ShopNode>;
  changeNode(id: string, change: NodeChange): Promise<ShopNode>;
  /** Takes in a node with every channel it offers. */
  adoptNode(id: string, adopt: AdoptInput): Promise<ShopNode>;
  listChannels(): Promise<Channel[]>;
  createChannel(draft: ChannelInput): Promise<Channel>;
  changeChannel(id: string, change: ChannelChange): Promise<Channel>;
  removeChannel(id: string): Promise<void>;
  /** Hours above the limit of its probe; ask again while it is not complete. */
  timeAbove(id: string): Promise<TimeAboveLimit>;
  listBindings(): Promise<Binding[]>;
  createBinding(draft: BindingInput): Promise<Binding>;
  removeBinding(id: string): Promise<void>;
  listRefusals(): Promise<Refusal[]>;
}

export function createSetupApi(send: Send, sendForNothing: SendForNothing): SetupApi {
  const at = (folder: string, id?: string) =>
    id === undefined ? `${API}/${folder}` : `${API}/${folder}/${encodeURIComponent(id)}`;
  const list = <T>(folder: string, schema: z.ZodType<T>) =>
    send({ method: 'GET', path: at(folder) }, z.array(schema));
  const create = <T>(folder: string, body: unknown, schema: z.ZodType<T>) =>
    send({ method: 'POST', path: at(folder), body }, schema);
  const change = <T>(path: string, body: unknown, schema: z.ZodType<T>) =>
    send({ method: 'PATCH', path, body }, schema);
  const remove = (folder: string, id: string) => sendForNothing({ method: 'DELETE', path: at(folder, id) });
  return {
    about: () => send({ method: 'GET', path: at('shop') }, About),
    changeSettings: (body) => change(at('shop'), body, Shop),
    listFurnaces: () => list('furnaces', Furnace),
    createFurnace: (body) => create('furnaces', body, Furnace),
    changeFurnace: (id, body) => change(at('furnaces', id), body, Furnace),
    removeFurnace: (id) => remove('furnaces', id),
    tryFit: (id, body) =>
      send({ method: 'POST', path: `${at('furnaces', id)}/fit/try`, body }, FurnaceFitTried),
    keepFit: (id, body) => send({ method: 'PUT', path: `${at('furnaces', id)}/fit`, body }, Furnace),
    forgetFit: (id) => sendForNothing({ method: 'DELETE', path: `${at('furnaces', id)}/fit` }),
    listNodes: () => list('nodes', ShopNodeSchema),
    createNode: (body) => create('nodes', body, ShopNodeSchema),
    changeNode: (id, body) => change(at('nodes', id), body, ShopNodeSchema),
    adoptNode: (id, body) => send({ method: 'POST', path: `${at('nodes', id)}/adopt`, body }, ShopNodeSchema),
    listChannels: () => list('channels', Channel),
    createChannel: (body) => create('channels', body, Channel),
    changeChannel: (id, body) => change(at('channels', id), body, Channel),
    removeChannel: (id) => remove('channels', id),
    timeAbove: (id) => send({ method: 'GET', path: `${at('channels', id)}/time-above` }, TimeAboveLimit),
    listBindings: () => list('bindings', Binding),
    createBinding: (body) => create('bindings', body, Binding),
    removeBinding: (id) => remove('bindings', id),
    listRefusals: () => list('refusals', Refusal),
  };
}
