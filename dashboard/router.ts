import { signal } from '@preact/signals';

/**
 * Where the screen is. The address lives in the hash, so the hub needs no rewriting of paths and a saved
 * link opens the same page after a restart.
 */
export type Route =
  | { readonly view: 'wall' }
  | { readonly view: 'firings' }
  | { readonly view: 'firing'; readonly id: string }
  | { readonly view: 'schedules' }
  | { readonly view: 'schedule'; readonly id: string }
  | { readonly view: 'steel'; readonly name: string }
  | { readonly view: 'heat' }
  | { readonly view: 'setup'; readonly section: string }
  | { readonly view: 'unknown'; readonly path: string };

/** The id that means "a schedule that is not stored yet": `#/schedules/new`. */
export const NEW_SCHEDULE = 'new';

/** The route that a location hash (`#/firings/abc`) names. Never throws: what it cannot read is `unknown`. */
export function parseRoute(hash: string): Route {
  const path = hash.replace(/^#\/?/, '').replace(/\/+$/, '');
  const [head = '', tail = '', ...rest] = path.split('/').map(decodePart);
  const unknown: Route = { view: 'unknown', path };
  if (rest.length > 0) return unknown;
  switch (head) {
    case '':
      return tail === '' ? { view: 'wall' } : unknown;
    case 'firings':
      return tail === '' ? { view: 'firings' } : { view: 'firing', id: tail };
    case 'schedules':
      return tail === '' ? { view: 'schedules' } : { view: 'schedule', id: tail };
    case 'steel':
      return { view: 'steel', name: tail };
    case 'heat':
      return tail === '' ? { view: 'heat' } : unknown;
    case 'setup':
      return { view: 'setup', section: tail };
    default:
      return unknown;
  }
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
    case 'schedules':
      return '#/schedules';
    case 'schedule':
      return `#/schedules/${encodeURIComponent(route.id)}`;
    case 'steel':
      return route.name === '' ? '#/steel' : `#/steel/${encodeURIComponent(route.name)}`;
    case 'heat':
      return '#/heat';
    case 'setup':
      return route.section === '' ? '#/setup' : `#/setup/${encodeURIComponent(route.section)}`;
    case 'unknown':
      return `#/${route.path}`;
    default:
      return route satisfies never;
  }
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
