import { Masthead } from './masthead.tsx';
import { SubPlacesNav } from './places-nav.tsx';
import { currentRoute } from './router.ts';
import { type Shell, ShellContext } from './shell.ts';
import { viewOf } from './views.tsx';
import { ConnectionBand } from './wall/connection-band.tsx';

/** The whole screen: what is said when nothing is current, the masthead, and the view of the route. */
export function App({ shell }: { readonly shell: Shell }) {
  const route = currentRoute.value;
  const state = shell.feed.blind.value ? 'app is-blind' : 'app';
  return (
    <ShellContext.Provider value={shell}>
      <div class={`${state} app-${route.view === 'wall' ? 'wall' : 'page'}`}>
        <ConnectionBand />
        <Masthead />
        <SubPlacesNav />
        {viewOf(route)}
      </div>
    </ShellContext.Provider>
  );
}
