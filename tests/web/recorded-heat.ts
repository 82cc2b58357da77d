import { makeBody } from '../../hub/physics/heat/body.ts';
import { structuralSteel } from '../../hub/physics/heat/material.ts';
import { startPiece, stepPiece } from '../../hub/physics/heat/piece.ts';
import type { TestShop } from '../harness/shop.ts';

/** A furnace that we know, and a firing of it as the archive would hold it. */
export const KNOWN = { emissivity: 0.62, film: 18 } as const;

export interface Heat {
  readonly furnaceId: string;
  readonly firingId: string;
  readonly chamberId: string;
  readonly loadId: string;
}

interface HeatOptions {
  readonly minutes?: number;
  /** What the load thermocouple shows instead of the truth. */
  readonly load?: (celsius: number, minute: number) => number | null;
  readonly finished?: boolean;
}

/** A 20 mm bar of structural steel in a chamber at 450 °C and then at 850 °C, read in quarter degrees every 30 s. */
export function recordHeat(shop: TestShop, options: HeatOptions = {}): Heat {
  const { minutes = 50, load = (celsius: number) => celsius, finished = true } = options;
  const furnace = shop.furnace('Oven', 'electric-oven');
  const chamber = shop.channel({ name: 'chamber', furnace });
  const loadChannel = shop.channel({ name: 'load', furnace, role: 'load' });
  const soak = { kind: 'soak', targetCelsius: 850, toleranceCelsius: 10, durationSeconds: 600 } as const;
  const ramp = { kind: 'ramp', targetCelsius: 850, toleranceCelsius: 10, rateCelsiusPerHour: null } as const;
  const { id: firingId } = shop.start(furnace, shop.schedule({ name: 'Fit', segments: [ramp, soak] }));
  const start = shop.clock.now();
  let state = startPiece(makeBody({ shape: 'bar', sectionMetres: 0.02, material: structuralSteel() }), 20);
  let wasCelsius = 450;
  const readings = Array.from({ length: minutes * 2 + 1 }, (_, i) => {
    const chamberCelsius = i < 50 ? 450 : 850;
    state = stepPiece(state, {
      seconds: i === 0 ? 0 : 30,
      surroundingsCelsius: chamberCelsius,
      surroundingsWereCelsius: wasCelsius,
      ...KNOWN,
    });
    wasCelsius = chamberCelsius;
    const shown = load(Math.round(state.coreCelsius * 4) / 4, i / 2);
    const at = start + i * 30_000;
    return [
      { name: 'chamber', at, value: chamberCelsius },
      ...(shown === null ? [] : [{ name: 'load', at, value: shown }]),
    ];
  }).flat();
  shop.archive.commitIntake([
    {
      node: 'bench-node',
      receivedAt: start,
      readings: readings.map((each) => ({ ...each, quantity: 'temperature', quality: 'good' })),
      refusals: [],
    },
  ]);
  const row = shop.archive.firing(firingId);
  if (row && finished) {
    shop.archive.saveFiring({ ...row, status: 'finished', endedAt: start + minutes * 60_000 });
  }
  return { furnaceId: furnace.id, firingId, chamberId: chamber.id, loadId: loadChannel.id };
}
