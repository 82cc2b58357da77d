import { Button } from './parts/button.tsx';
import { currentRoute, hrefTo, type Route } from './router.ts';
import { useShell } from './shell.ts';
import { scheme, toggleScheme } from './theme/scheme.ts';
import { shellWords } from './words/parts.ts';
import { timeOfDay } from './words/time.ts';
import { wallWords } from './words/wall.ts';

interface Place {
  readonly route: Route;
  readonly word: string;
  readonly views: readonly Route['view'][];
}

const PLACES: readonly Place[] = [
  { route: { view: 'wall' }, word: shellWords.wall, views: ['wall'] },
  { route: { view: 'firings' }, word: shellWords.firings, views: ['firings', 'firing'] },
  { route: { view: 'schedules' }, word: shellWords.schedules, views: ['schedules', 'schedule'] },
  { route: { view: 'setup', section: '' }, word: shellWords.setup, views: ['setup'] },
];

/** The line at the top: the shop, whether it is simulated, where one can go, the time, day or night. */
export function Masthead() {
  const { feed, sound } = useShell();
  const shop = feed.state.value?.shop;
  const here = currentRoute.value.view;
  const night = scheme.value === 'night';
  return (
    <header class="masthead">
      <strong class="masthead-shop">{shop?.settings.name ?? shellWords.product}</strong>
      {shop?.simulated && (
        <strong class="simulated" title={shellWords.simulatedLong}>
          {shellWords.simulated}
        </strong>
      )}
      <nav class="masthead-nav" aria-label={shellWords.nav}>
        {PLACES.map(({ route, word, views }) => (
          <a key={word} href={hrefTo(route)} aria-current={views.includes(here) ? 'page' : undefined}>
            {word}
          </a>
        ))}
      </nav>
      {sound.blocked.value && (
        <strong class="sound-blocked" role="status">
          {wallWords.soundBlocked}
        </strong>
      )}
      <time class="masthead-clock">{timeOfDay(feed.now.value)}</time>
      <Button onPress={toggleScheme} name={night ? shellWords.toDayName : shellWords.toNightName}>
        {night ? shellWords.toDay : shellWords.toNight}
      </Button>
    </header>
  );
}
