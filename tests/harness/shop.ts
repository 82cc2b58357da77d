import { openArchive } from '../../hub/archive/open.ts';
import type { Archive } from '../../hub/archive/types.ts';
import type { FiringDetail } from '../../hub/contract/firing.ts';
import type { Quality } from '../../hub/contract/reading.ts';
import { ScheduleDraft, type ScheduleDraftInput } from '../../hub/contract/schedule.ts';
import { type Channel, type ChannelRole, type Furnace, likelyRole } from '../../hub/contract/shop.ts';
import type { Quantity } from '../../hub/contract/units.ts';
import { type VirtualClock, virtualClock } from '../../hub/time/virtual-clock.ts';
import { type Change, ChangeBus } from '../../hub/watch/changes.ts';
import { Watch } from '../../hub/watch/watch.ts';

/** 2026-03-02T08:00:00Z, a Monday morning of the invented shop. */
export const MORNING = Date.UTC(2026, 2, 2, 8);

export function countingIds(): () => string {
  let next = 0;
  return () => {
    next += 1;
    return `id-${String(next).padStart(4, '0')}`;
  };
}

/** A shop under a virtual clock: real archive in memory, real judges, no network. */
export interface TestShop {
  readonly archive: Archive;
  readonly clock: VirtualClock;
  readonly watch: Watch;
  readonly bus: ChangeBus;
  readonly changes: Change[];
  readonly faults: unknown[];
  furnace(name?: string, kind?: Furnace['kind']): Furnace;
  channel(of: { name: string; furnace?: Furnace; quantity?: Quantity; role?: ChannelRole }): Channel;
  schedule(draft: ScheduleDraftInput): { id: string };
  start(furnace: Furnace, schedule: { id: string }): FiringDetail;
  /** Commits a reading as intake would. `at` defaults to now. */
  say(channel: Channel, value: number, at?: number, quality?: Quality): void;
  /** Moves the clock on second by second, saying what `values` tells for each channel. */
  run(seconds: number, values: (second: number) => readonly (readonly [Channel, number])[]): void;
  /** A second hub on the same archive: what a restart sees. */
  restart(): Watch;
}

/** `hears`: the changes that are noted in `changes`; all where left out. */
export function makeShop(start = MORNING, hears: readonly Change['type'][] | null = null): TestShop {
  const clock = virtualClock(start);
  const ids = countingIds();
  const archive = openArchive({ path: ':memory:', ids, simulated: false, now: start });
  const changes: Change[] = [];
  const faults: unknown[] = [];
  const bus = new ChangeBus((fault) => faults.push(fault));
  bus.listen((change) => changes.push(change), hears);
  const makeWatch = (): Watch => {
    return new Watch({
      archive,
      clock,
      bus,
      newId: ids,
      simulated: false,
      onFault: (fault) => faults.push(fault),
    });
  };
  const watch = makeWatch();
  watch.start();

  function channel(of: Parameters<TestShop['channel']>[0]): Channel {
    const quantity = of.quantity ?? 'temperature';
    const furnaceId = of.furnace?.id ?? null;
    if (!archive.node('bench-node')) {
      archive.saveNode({
        ...archive.createNode({ name: 'bench-node', label: '', note: '' }, clock.now()),
        adopted: true,
      });
    }
    const made = archive.createChannel(
      {
        node: 'bench-node',
        name: of.name,
        label: '',
        quantity,
        unit: null,
        role: of.role ?? likelyRole(quantity, furnaceId),
        furnaceId,
        possibleLow: null,
        possibleHigh: null,
        staleAfterSeconds: 20,
      },
      clock.now(),
    );
    watch.setupChanged();
    return made;
  }

  function say(to: Channel, value: number, at = clock.now(), quality: Quality = 'good'): void {
    const { name, quantity } = to;
    watch.committed(
      archive.commitIntake([
        {
          node: to.node,
          receivedAt: clock.now(),
          readings: [{ name, quantity, at, value, quality }],
          refusals: [],
        },
      ]),
    );
  }

  return {
    archive,
    clock,
    watch,
    bus,
    changes,
    faults,
    channel,
    say,
    furnace(name = 'Forge', kind = 'gas-forge') {
      return archive.createFurnace({ name, kind, ratedCelsius: 1300, note: '' }, clock.now());
    },
    schedule: (draft) => archive.createSchedule(ScheduleDraft.parse(draft), clock.now()),
    start: (furnace, schedule) =>
      watch.startFiring({
        furnaceId: furnace.id,
        scheduleId: schedule.id,
        title: '',
        note: '',
        confirmations: [],
        pieces: [],
      }),
    run(seconds, values) {
      for (let second = 0; second < seconds; second++) {
        for (const [to, value] of values(second)) say(to, value);
        clock.advance(1000);
      }
    },
    restart() {
      watch.stop();
      const again = makeWatch();
      again.start();
      return again;
    },
  };
}
