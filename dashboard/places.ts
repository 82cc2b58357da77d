import type { Route } from './router.ts';
import { shellWords } from './words/parts.ts';

/** A place reached from the top line, or one of the places under it. */
export interface SubPlace {
  readonly route: Route;
  readonly word: string;
  /** The views that count as being here. */
  readonly views: readonly Route['view'][];
}

export interface Place extends SubPlace {
  /** Shown as a second line while one is in this place; one row alone would only repeat the top line. */
  readonly under: readonly SubPlace[];
}

/**
 * Where one can go, in the order of the top line. A new page is a row here: at the top, or `under` the place it
 * belongs to. A place with places under it lists their views too.
 */
export const PLACES: readonly Place[] = [
  { route: { view: 'wall' }, word: shellWords.wall, views: ['wall'], under: [] },
  {
    route: { view: 'bench' },
    word: shellWords.bench,
    views: ['bench', 'pieces', 'piece', 'piece-by-mark', 'piece-label', 'routes', 'route'],
    under: [
      { route: { view: 'bench' }, word: shellWords.bench, views: ['bench'] },
      {
        route: { view: 'pieces' },
        word: shellWords.pieces,
        views: ['pieces', 'piece', 'piece-by-mark', 'piece-label'],
      },
      { route: { view: 'routes' }, word: shellWords.routes, views: ['routes', 'route'] },
    ],
  },
  {
    route: { view: 'firings' },
    word: shellWords.firings,
    views: ['firings', 'firing', 'compare', 'batches'],
    under: [
      { route: { view: 'firings' }, word: shellWords.firings, views: ['firings', 'firing'] },
      { route: { view: 'compare', schedule: '', ids: '' }, word: shellWords.compare, views: ['compare'] },
      { route: { view: 'batches', schedule: '' }, word: shellWords.batches, views: ['batches'] },
    ],
  },
  { route: { view: 'schedules' }, word: shellWords.schedules, views: ['schedules', 'schedule'], under: [] },
  {
    route: { view: 'steel', name: '' },
    word: shellWords.steel,
    views: ['steel', 'heat'],
    under: [
      { route: { view: 'steel', name: '' }, word: shellWords.steel, views: ['steel'] },
      { route: { view: 'heat' }, word: shellWords.heat, views: ['heat'] },
    ],
  },
  { route: { view: 'air' }, word: shellWords.air, views: ['air'], under: [] },
  { route: { view: 'gas' }, word: shellWords.gas, views: ['gas'], under: [] },
  {
    route: { view: 'alarms' },
    word: shellWords.alarms,
    views: ['alarms', 'alarm-review', 'alarm-journal', 'alarm-definitions'],
    under: [
      { route: { view: 'alarms' }, word: shellWords.alarmsNow, views: ['alarms'] },
      { route: { view: 'alarm-review' }, word: shellWords.alarmReview, views: ['alarm-review'] },
      { route: { view: 'alarm-journal' }, word: shellWords.alarmJournal, views: ['alarm-journal'] },
      {
        route: { view: 'alarm-definitions' },
        word: shellWords.alarmDefinitions,
        views: ['alarm-definitions'],
      },
    ],
  },
  { route: { view: 'setup', section: '' }, word: shellWords.setup, views: ['setup'], under: [] },
];

/** The place of the top line that a view belongs to; undefined for a page that has none. */
export function placeOf(view: Route['view'], places: readonly Place[] = PLACES): Place | undefined {
  return places.find(({ views }) => views.includes(view));
}

/** The places to show in the second line on a view: none where there is nothing to choose between. */
export function placesUnder(view: Route['view'], places: readonly Place[] = PLACES): readonly SubPlace[] {
  const under = placeOf(view, places)?.under ?? [];
  return under.length > 1 ? under : [];
}
