import type { z } from 'zod';
import type { NotifyWayDraft } from '../../hub/contract/notify.ts';
import { NotifyWayDraft as WayDraft } from '../../hub/contract/notify.ts';
import { createNotifyDesk } from '../../hub/notify/desk.ts';
import type { Lookup } from '../../hub/notify/guard.ts';
import { Notifier } from '../../hub/notify/notifier.ts';
import { Watch } from '../../hub/watch/watch.ts';
import { countingIds, makeShop, type TestShop } from '../harness/shop.ts';

/** A shop with a carbon monoxide sensor whose alarms go out: real judges, real senders, a clock moved by hand. */
export function notifyingShop(shop: TestShop = makeShop(), lookup: Lookup = async () => []) {
  const { archive, bus, clock, faults } = shop;
  shop.watch.stop();
  const notifier = new Notifier({
    archive,
    bus,
    clock,
    lookup,
    jitter: () => 0.5,
    healthy: () => true,
    onFault: (fault) => faults.push(fault),
  });
  const watch = new Watch({
    archive,
    clock,
    bus,
    newId: countingIds(),
    simulated: false,
    onFault: (fault) => faults.push(fault),
    alsoFound: () => notifier.findings(),
  });
  watch.start();
  notifier.start(null);
  const desk = createNotifyDesk(notifier, archive, clock);
  const stop = async (): Promise<void> => {
    watch.stop();
    await notifier.stop();
  };
  return { shop: { ...shop, watch }, notifier, watch, desk, stop };
}

export const SECRET = 'a-secret-of-thirty-letters-or-so';

export function webhookWay(url: string, more: Partial<z.input<typeof WayDraft>> = {}): NotifyWayDraft {
  return WayDraft.parse({
    name: 'The watchman',
    rule: { priorities: ['danger', 'warning'] },
    target: { kind: 'webhook', url, secret: SECRET },
    ...more,
  });
}
