import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { type Arrow, arrowsOf, findCycle, sourceFiles } from './imports.ts';

/**
 * The house of DEVELOPERS.md, held by test: an arrow only ever points down. A folder of hub/ that stands on no
 * floor here fails the test, so that a new one is put somewhere on purpose.
 */
const FLOORS: Readonly<Record<string, number>> = {
  'hub/contract': 1,
  'hub/physics': 1,
  'hub/time': 1,
  'hub/archive': 2,
  'hub/broker': 2,
  'hub/intake': 3,
  'hub/judging': 3,
  'hub/planning': 3,
  'hub/alarms': 4,
  'hub/firing': 5,
  'hub/air': 5,
  'hub/gas': 5,
  'hub/bench': 5,
  'hub/blindness': 5,
  'hub/probes': 5,
  'hub/record': 5,
  'hub/review': 5,
  'hub/watch': 6,
  'hub/web': 7,
  'hub/notify': 7,
};
const ROOF = 8;

const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const files = ['hub', 'dashboard', 'sensors-sim'].flatMap((folder) => sourceFiles(ROOT, folder));
const arrows = files.flatMap((file) => arrowsOf(ROOT, file));

function roomOf(file: string): string {
  const [top = '', room = ''] = file.split('/');
  return top === 'hub' && !room.endsWith('.ts') ? `${top}/${room}` : top;
}

/** Files that stand in hub/ itself (settings, hub, main) are the roof. */
function floorOf(room: string): number | undefined {
  return room === 'hub' ? ROOF : FLOORS[room];
}

const told = ({ from, to }: Arrow): string => `${from} -> ${to}`;

describe('the floors of the house', () => {
  it('finds the files and their imports', () => {
    expect(files.length).toBeGreaterThan(100);
    expect(arrows.length).toBeGreaterThan(files.length);
  });

  it('gives every folder of the hub a floor', () => {
    const rooms = new Set(files.filter((file) => file.startsWith('hub/')).map(roomOf));
    expect([...rooms].filter((room) => floorOf(room) === undefined)).toEqual([]);
  });

  it('lets no import of the hub point up or sideways', () => {
    const wrong = arrows.filter(({ from, to }) => {
      if (!from.startsWith('hub/') || roomOf(from) === roomOf(to)) return false;
      const above = floorOf(roomOf(from)) ?? 0;
      const below = floorOf(roomOf(to)) ?? Number.POSITIVE_INFINITY;
      return below >= above;
    });
    expect(wrong.map(told)).toEqual([]);
  });

  it('keeps the physics free of everything else', () => {
    const wrong = arrows.filter(
      ({ from, to }) => from.startsWith('hub/physics/') && !to.startsWith('hub/physics/'),
    );
    expect(wrong.map(told)).toEqual([]);
  });

  it('lets the dashboard see the contract and nothing else of the hub', () => {
    const wrong = arrows.filter(
      ({ from, to }) =>
        from.startsWith('dashboard/') && !to.startsWith('dashboard/') && !to.startsWith('hub/contract/'),
    );
    expect(wrong.map(told)).toEqual([]);
  });

  it('lets the simulator see contract and physics alone: it reaches the hub through MQTT', () => {
    const allowed = ['sensors-sim/', 'hub/contract/', 'hub/physics/'];
    const wrong = arrows.filter(
      ({ from, to }) => from.startsWith('sensors-sim/') && !allowed.some((folder) => to.startsWith(folder)),
    );
    expect(wrong.map(told)).toEqual([]);
  });

  it('has no cycle of value imports', () => {
    expect(findCycle(arrows)).toBeNull();
  });

  it('lets nothing import the composition root but the programme', () => {
    const wrong = arrows.filter(({ from, to }) => /^hub\/(hub|main)\.ts$/.test(to) && from !== 'hub/main.ts');
    expect(wrong.map(told)).toEqual([]);
  });

  it('would notice a cycle', () => {
    const ring = [
      { from: 'a', to: 'b', typeOnly: false },
      { from: 'b', to: 'a', typeOnly: false },
    ];
    expect(findCycle(ring)).toEqual(['a', 'b', 'a']);
    expect(findCycle(ring.map((arrow) => ({ ...arrow, typeOnly: true })))).toBeNull();
  });
});
