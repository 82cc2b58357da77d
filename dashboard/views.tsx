import type { VNode } from 'preact';
import { NotFound } from './not-found.tsx';
import type { Route } from './router.ts';
import { Wall } from './wall/wall.tsx';

/** Which view shows a route. A new view is a folder and a row here. */
export function viewOf(route: Route): VNode {
  switch (route.view) {
    case 'wall':
      return <Wall />;
    case 'firings':
    case 'firing':
    case 'schedules':
    case 'schedule':
    case 'setup':
      // These folders are built next; until then the page says truthfully that there is nothing.
      return <NotFound path={route.view} />;
    case 'unknown':
      return <NotFound path={route.path} />;
    default:
      return route satisfies never;
  }
}
