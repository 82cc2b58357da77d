import { Button } from './parts/button.tsx';
import { PlacesNav } from './places-nav.tsx';
import { useShell } from './shell.ts';
import { scheme, toggleScheme } from './theme/scheme.ts';
import { shellWords } from './words/parts.ts';
import { timeOfDay } from './words/time.ts';
import { wallWords } from './words/wall.ts';

/** The line at the top: the shop, whether it is simulated, where one can go, the time, day or night. */
export function Masthead() {
  const { feed, sound } = useShell();
  const shop = feed.state.value?.shop;
  const night = scheme.value === 'night';
  return (
    <header class="masthead">
      <strong class="masthead-shop">{shop?.settings.name ?? shellWords.product}</strong>
      {shop?.simulated && (
        <strong class="simulated" title={shellWords.simulatedLong}>
          {shellWords.simulated}
        </strong>
      )}
      <PlacesNav />
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
