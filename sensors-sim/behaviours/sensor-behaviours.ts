/** What goes wrong with sensors, nodes and their way to the hub. */
import { z } from 'zod';
import { node, share, timing } from './fields.ts';

const where = { node: node.default('forge-node'), channel: z.string().default('chamber') };
const airWhere = { node: node.default('air-node'), channel: z.string().default('co') };

export const SENSOR_BEHAVIOURS = [
  z
    .strictObject({
      name: z.literal('thermocouple-break'),
      ...timing,
      ...where,
      mode: z.enum(['high', 'nan']).default('high').describe('high: full scale of the chip; nan: prints NaN'),
    })
    .describe('A broken wire'),
  z
    .strictObject({ name: z.literal('frozen-sensor'), ...timing, ...where })
    .describe('Repeats its last value for ever'),
  z
    .strictObject({
      name: z.literal('flat-sensor'),
      ...timing,
      ...airWhere,
      value: z.number().default(0).describe('In the unit of the channel'),
    })
    .describe('A dead cell: one value without the least tremble'),
  z
    .strictObject({
      name: z.literal('drifting-sensor'),
      ...timing,
      ...airWhere,
      perHour: z.number().default(20).describe('Units of the channel'),
    })
    .describe('Its zero walks away'),
  z
    .strictObject({
      name: z.literal('aged-sensor'),
      ...timing,
      ...airWhere,
      lostShare: share.default(0.5).describe('Share of its sensitivity that is gone'),
    })
    .describe('An old cell: it answers with too little'),
  z
    .strictObject({
      name: z.literal('saturated-sensor'),
      ...timing,
      ...airWhere,
      ceiling: z.number().default(100).describe('Units of the channel'),
    })
    .describe('Shows no more than its range, however much there is'),
] as const;

export const LINK_BEHAVIOURS = [
  z
    .strictObject({
      name: z.literal('node-drop'),
      ...timing,
      durationSeconds: z.number().gt(0).nullable().default(120),
      node: node.default('forge-node'),
    })
    .describe('A node is off the network and sends everything afterwards'),
  z
    .strictObject({
      name: z.literal('duplicate-reorder'),
      ...timing,
      node: node.default('forge-node'),
      duplicateShare: share.default(0.2),
      reorderShare: share.default(0.2),
    })
    .describe('Messages come twice and out of order'),
  z
    .strictObject({
      name: z.literal('clock-skew'),
      ...timing,
      node: node.default('oven-node'),
      offsetSeconds: z.number().min(-86_400).max(86_400).default(90).describe('Above 0: the node is ahead'),
    })
    .describe("A node's clock is wrong"),
] as const;
