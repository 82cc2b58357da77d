import { signal } from '@preact/signals';

/**
 * Where the screen is. The address lives in the hash, so the hub needs no rewriting of paths and a saved
 * link opens the same page after a restart.
 */
export type Route =
  | { readonly view: 'wall' }
  | { readonly view: 'firings' }
  | { readonly view: 'firing'; readonly id: string }
  | { readonly view: 'compare'; readonly schedule: string; readonly ids: string }
  | { readonly view: 'batches'; readonly schedule: string }
  | { readonly view: 'schedules' }
  | { readonly view: 'schedule'; readonly id: string }
  | { readonly view: 'bench' }
  | { readonly view: 'pieces' }
  | { readonly view: 'piece'; readonly id: string }
  | { readonly view: 'piece-by-mark'; readonly mark: string }
  | { readonly view: 'piece-label'; readonly id: string }
  | { readonly view: 'routes' }
  | { readonly view: 'route'; readonly id: string }
  | { readonly view: 'steel'; readonly name: string }
  | { readonly view: 'heat' }
  | { readonly view: 'air' }
  | { readonly view: 'gas' }
  | { readonly view: 'alarms' }
  | { readonly view: 'alarm-review' }
  | { readonly view: 'alarm-journal' }
  | { readonly view: 'alarm-definitions' }
  | { readonly view: 'setup'; readonly section: string }
  | { readonly view: 'unknown'; readonly path: string };

/** The id that means "a schedule that is not stored yet": `#/schedules/new`. */
export const NEW_SCHEDULE = 'new';
/** The same for a route: `#/routes/new`. */
export const NEW_ROUTE = 'new';

/** The pages of the alarms by what follows `#/alarms`. */
const ALARM_PAGES: ReadonlyMap<string, Route> = new Map([
  ['', { view: 'alarms' }],
  ['review', { view: 'alarm-review' }],
  ['journal', { view: 'alarm-journal' }],
  ['definitions', { view: 'alarm-definitions' }],
]);

/** What stands between "pieces" and a mark, so that a label needs no id. */
const BY_MARK = 'by-mark';
const LABEL = 'label';

/** The route that a location hash (`#/firings/abc`) names. Never throws: what it cannot read is `unknown`. */
export function parseRoute(hash: string): Route {
  const path = hash
    .replace(/^#\/?/, '')
    // What a page keeps behind a question mark (the filters of a list) is its own affair.
    .replace(/\?.*$/, '')
    .replace(/\/+$/, '');
  const [head = '', tail = '', ...rest] = path.split('/').map(decodePart);
  const unknown: Route = { view: 'unknown', path };
  if (head === 'pieces') return pieceRoute(tail, rest) ?? unknown;
  if (head === 'compare' && rest.length < 2) return { view: 'compare', schedule: tail, ids: rest[0] ?? '' };
  if (rest.length > 0) return unknown;
  switch (head) {
    case '':
      return tail === '' ? { view: 'wall' } : unknown;
    case 'firings':
      return tail === '' ? { view: 'firings' } : { view: 'firing', id: tail };
    case 'batches':
      return { view: 'batches', schedule: tail };
    case 'schedules':
      return tail === '' ? { view: 'schedules' } : { view: 'schedule', id: tail };
    case 'bench':
      return tail === '' ? { view: 'bench' } : unknown;
    case 'routes':
      return tail === '' ? { view: 'routes' } : { view: 'route', id: tail };
    case 'steel':
      return { view: 'steel', name: tail };
    case 'heat':
      return tail === '' ? { view: 'heat' } : unknown;
    case 'air':
      return tail === '' ? { view: 'air' } : unknown;
    case 'gas':
      return tail === '' ? { view: 'gas' } : unknown;
    case 'alarms':
      return ALARM_PAGES.get(tail) ?? unknown;
    case 'setup':
      return { view: 'setup', section: tail };
    default:
      return unknown;
  }
}

/** `#/pieces`, `#/pieces/{id}`, `#/pieces/{id}/label`, `#/pieces/by-mark/{mark}`; null: none of them. */
function pieceRoute(tail: string, [third = '', ...rest]: readonly string[]): Route | null {
  if (rest.length > 0) return null;
  if (tail === BY_MARK) return third === '' ? null : { view: 'piece-by-mark', mark: third };
  if (third === LABEL) return { view: 'piece-label', id: tail };
  if (third !== '') return null;
  return tail === '' ? { view: 'pieces' } : { view: 'piece', id: tail };
}

/** The address of a route, for `href`. The inverse of `parseRoute`. */
export function hrefTo(route: Route): string {
  switch (route.view) {
    case 'wall':
      return '#/';
    case 'firings':
      return '#/firings';
    case 'firing':
      return `#/firings/${encodeURIComponent(route.id)}`;
    case 'compare':
      return ['#/compare', route.schedule, route.ids].filter(Boolean).map(encodeParts).join('/');
    case 'batches':
      return ['#/batches', route.schedule].filter(Boolean).map(encodeParts).join('/');
    case 'schedules':
      return '#/schedules';
    case 'schedule':
      return `#/schedules/${encodeURIComponent(route.id)}`;
    case 'bench':
      return '#/bench';
    case 'pieces':
      return '#/pieces';
    case 'piece':
      return `#/pieces/${encodeURIComponent(route.id)}`;
    case 'piece-by-mark':
      return `#/pieces/${BY_MARK}/${encodeURIComponent(route.mark)}`;
    case 'piece-label':
      return `#/pieces/${encodeURIComponent(route.id)}/${LABEL}`;
    case 'routes':
      return '#/routes';
    case 'route':
      return `#/routes/${encodeURIComponent(route.id)}`;
    case 'steel':
      return route.name === '' ? '#/steel' : `#/steel/${encodeURIComponent(route.name)}`;
    case 'heat':
      return '#/heat';
    case 'air':
      return '#/air';
    case 'gas':
      return '#/gas';
    case 'alarms':
      return '#/alarms';
    case 'alarm-review':
    case 'alarm-journal':
    case 'alarm-definitions':
      return `#/alarms/${route.view.slice('alarm-'.length)}`;
    case 'setup':
      return route.section === '' ? '#/setup' : `#/setup/${encodeURIComponent(route.section)}`;
    case 'unknown':
      return `#/${route.path}`;
    default:
      return route satisfies never;
  }
}

/** The first part is the place itself; the others are ids. A comma stands for itself, so that an address can be read. */
function encodeParts(part: string, at: number): string {
  return at === 0 ? part : encodeURIComponent(part).replaceAll('%2C', ',');
}

/** The current route. Read it in a component and the component follows the address. */
export const currentRoute = signal<Route>({ view: 'wall' });

/** Goes to a route and leaves an entry in the browser's history. */
export function navigate(route: Route): void {
  window.location.hash = hrefTo(route);
}

/** Follows the address bar until the returned function is called. */
export function followAddress(): () => void {
  const read = () => {
    currentRoute.value = parseRoute(window.location.hash);
  };
  read();
  window.addEventListener('hashchange', read);
  return () => window.removeEventListener('hashchange', read);
}

function decodePart(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    // A stray % in a typed address: keep the text, so that the page can say what it could not find.
    return part;
  }
}
