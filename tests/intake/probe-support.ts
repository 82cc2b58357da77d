import { Probe } from '../../hub/contract/probe.ts';
import type { Channel } from '../../hub/contract/shop.ts';
import type { Quantity } from '../../hub/contract/units.ts';
import { type Bench, bench, NOW } from './support.ts';

export const READINGS = 'soakwatch/forge-1/readings';
export const SECOND = 1000;
export const MINUTE = 60 * SECOND;

export const EMF = { kind: 'emf', emfChannel: 'tc-emf', coldJunctionChannel: 'junction' };
/** MAX31855K: one slope of 41.276 µV/°C (Maxim 19-5793). */
export const STRAIGHT = {
  kind: 'straight-line',
  slopeMillivoltsPerCelsius: 0.041276,
  coldJunctionChannel: 'junction',
};

/** A node whose channel `chamber` has this probe, with its emf and its terminals set up too. */
export function probeBench(probe: object, extra: Partial<Channel> = {}): Bench {
  const shop = bench();
  const add = (name: string, quantity: Quantity, more: Partial<Channel> = {}) =>
    shop.archive.createChannel(
      {
        node: 'forge-1',
        name,
        label: '',
        quantity,
        unit: null,
        role: 'other',
        furnaceId: null,
        possibleLow: null,
        possibleHigh: null,
        staleAfterSeconds: 20,
        ...more,
      },
      NOW,
    );
  add('chamber', 'temperature', { role: 'chamber', probe: Probe.parse(probe), ...extra });
  add('tc-emf', 'emf');
  add('junction', 'temperature', { role: 'cold-junction' });
  shop.intake.refresh();
  return shop;
}

/** The newest reading of the computed or corrected channel. */
export const latestOf = (shop: Bench) =>
  shop.archive.channels().find(({ name }) => name === 'chamber')?.latest;

export const emf = (value: number, unit = 'mV', more: object = {}) => ({
  n: 'tc-emf',
  u: unit,
  v: value,
  ...more,
});
export const junction = (value: number, more: object = {}) => ({
  n: 'junction',
  u: 'Cel',
  v: value,
  ...more,
});
