import type { Archive } from '../archive/types.ts';
import type {
  NotifyLogEntry,
  NotifySettings,
  NotifySettingsPatch,
  NotifyTestResult,
  NotifyWay,
  NotifyWayDraft,
  NotifyWayPatch,
} from '../contract/notify.ts';
import { NotifyWayDraft as WayDraft } from '../contract/notify.ts';
import type { Clock } from '../time/clock.ts';
import { FieldError, WatchError } from '../watch/errors.ts';
import type { Notifier } from './notifier.ts';
import { changedWay, checkWhole, type KeptWay, shownWay } from './ways.ts';

/** What people may do with the ways: everything that leaves here is without secrets. */
export interface NotifyDesk {
  ways(): readonly NotifyWay[];
  createWay(draft: NotifyWayDraft): NotifyWay;
  changeWay(id: string, patch: NotifyWayPatch): NotifyWay;
  removeWay(id: string): void;
  test(id: string): Promise<NotifyTestResult>;
  settings(): NotifySettings;
  changeSettings(patch: NotifySettingsPatch): NotifySettings;
  log(limit: number): readonly NotifyLogEntry[];
}

/** More would be a mailing list. Common practice, no source. */
const MOST_WAYS = 30;

export function createNotifyDesk(notifier: Notifier, archive: Archive, clock: Clock): NotifyDesk {
  const { settings } = notifier;
  const find = (id: string): KeptWay => {
    const way = notifier.ways().find((each) => each.id === id);
    if (way === undefined) throw new WatchError('not-found', `there is no way with the id ${id}`);
    return way;
  };
  const shown = (way: KeptWay): NotifyWay => shownWay(way, notifier.troubleOf(way.id));
  const check = (way: NotifyWayDraft): void => {
    checkWhole(way);
    if (way.target.kind === 'push' && settings.kept().contact === null)
      throw new FieldError('/contact', 'push services want a mail address: enter a contact below first');
  };
  return {
    ways: () => notifier.ways().map(shown),
    createWay(draft) {
      if (notifier.ways().length >= MOST_WAYS)
        throw new WatchError('conflict', `there are ${MOST_WAYS} ways already: remove one first`);
      check(draft);
      const id = archive.createNotifyWay(draft, clock.now());
      notifier.configured();
      return shown(find(id));
    },
    changeWay(id, patch) {
      const next = changedWay(find(id), patch);
      check(next);
      archive.saveNotifyWay(id, WayDraft.parse(documentOf(next)));
      notifier.configured();
      return shown(find(id));
    },
    removeWay(id) {
      if (!archive.deleteNotifyWay(find(id).id)) throw new WatchError('not-found', `there is no way ${id}`);
      notifier.configured();
    },
    test: (id) => notifier.test(find(id)),
    settings: () => settings.shown(),
    changeSettings(patch) {
      settings.change(patch);
      notifier.configured();
      return settings.shown();
    },
    log: (limit) => archive.notifyLog(limit),
  };
}

function documentOf({ name, enabled, rule, target }: KeptWay): NotifyWayDraft {
  return { name, enabled, rule, target };
}
