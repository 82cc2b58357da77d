import type {
  NotifyLogEntry,
  NotifySettings,
  NotifySettingsPatch,
  NotifyTestResult,
  NotifyWay,
  NotifyWayDraft,
  NotifyWayPatch,
} from '../contract/notify.ts';

/**
 * What the routes need of whoever reaches people. It stands on the same floor, so it is named here by what it does
 * and handed in by the composition root. Refusals come as WatchError or FieldError.
 */
export interface NotifyPort {
  ways(): readonly NotifyWay[];
  createWay(draft: NotifyWayDraft): NotifyWay;
  changeWay(id: string, patch: NotifyWayPatch): NotifyWay;
  removeWay(id: string): void;
  test(id: string): Promise<NotifyTestResult>;
  settings(): NotifySettings;
  changeSettings(patch: NotifySettingsPatch): NotifySettings;
  /** The newest first. */
  log(limit: number): readonly NotifyLogEntry[];
}
