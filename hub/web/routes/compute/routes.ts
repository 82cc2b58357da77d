import type { OpenAPIHono } from '@hono/zod-openapi';
import type { WebParts } from '../../parts.ts';
import { carbonMonoxideExposure, carboxyhaemoglobin, ventilationDecay } from './air.ts';
import { buriedBar, coolingRule } from './annealing.ts';
import { arrests } from './arrests.ts';
import { carbonDiffusion, decarburisation } from './carbon.ts';
import type { Computation } from './computation.ts';
import { conduction } from './conduction.ts';
import { cooling } from './cooling.ts';
import { critical, magnet } from './critical-temperatures.ts';
import { furnaceFit } from './furnace-fit.ts';
import { gasEndurance, orificeFlow, vapourPressure } from './gas.ts';
import { glow } from './glow.ts';
import { grainGrowth } from './grain-growth.ts';
import { hardenability } from './hardenability.ts';
import { hardnessConversion } from './hardness-conversion.ts';
import { coolingStructures, martensite } from './martensite.ts';
import { probeFaults, probeLimit, probeTimeAbove, probeUncertainty } from './probe.ts';
import { scale } from './scale.ts';
import { soakTime } from './soak-time.ts';
import { steelWindows } from './steel-windows.ts';
import { tempering, temperingCurve } from './tempering.ts';
import { straightLine, thermocouple } from './thermocouple.ts';
import { worldOf } from './world.ts';

/** Everything that the hub computes when asked. */
export const COMPUTATIONS: readonly Computation[] = [
  thermocouple,
  straightLine,
  probeUncertainty,
  probeLimit,
  probeTimeAbove,
  probeFaults,
  critical,
  magnet,
  martensite,
  coolingStructures,
  hardenability,
  tempering,
  temperingCurve,
  hardnessConversion,
  steelWindows,
  conduction,
  soakTime,
  cooling,
  coolingRule,
  buriedBar,
  furnaceFit,
  carbonDiffusion,
  decarburisation,
  scale,
  grainGrowth,
  arrests,
  glow,
  carbonMonoxideExposure,
  carboxyhaemoglobin,
  ventilationDecay,
  orificeFlow,
  vapourPressure,
  gasEndurance,
];

export function computeRoutes(app: OpenAPIHono, { archive }: WebParts): void {
  const world = worldOf(archive);
  for (const each of COMPUTATIONS) each.mount(app, world);
}
