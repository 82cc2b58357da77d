import './places.css';
import { useEffect, useState } from 'preact/hooks';
import { PLACES, placeOf, placesUnder, type SubPlace } from './places.ts';
import { currentRoute, hrefTo } from './router.ts';
import { shellWords } from './words/parts.ts';

const LIST_ID = 'places';

/** The top line of places: all in one line on a wide screen, behind a button on a narrow one. */
export function PlacesNav() {
  const route = currentRoute.value;
  const [open, setOpen] = useState(false);
  // Going somewhere closes the list: it has done its work.
  useEffect(() => setOpen(false), [hrefTo(route)]);
  const closeOnEscape = (event: KeyboardEvent) => {
    if (event.key === 'Escape') setOpen(false);
  };
  return (
    <nav class="places" aria-label={shellWords.nav} onKeyDown={closeOnEscape}>
      <button
        type="button"
        class="button button-plain places-button"
        aria-expanded={open}
        aria-controls={LIST_ID}
        onClick={() => setOpen(!open)}
      >
        <svg class="places-mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
          <path d={open ? 'M5 5 19 19M19 5 5 19' : 'M3 6h18M3 12h18M3 18h18'} />
        </svg>
        <span class="sr-only">{shellWords.nav}: </span>
        {placeOf(route.view)?.word ?? shellWords.nav}
      </button>
      <div id={LIST_ID} class={open ? 'places-list is-open' : 'places-list'}>
        {PLACES.map((place) => (
          <PlaceLink key={place.word} place={place} />
        ))}
      </div>
    </nav>
  );
}

/** The second line, on the pages of a place that holds several. */
export function SubPlacesNav() {
  const under = placesUnder(currentRoute.value.view);
  if (under.length === 0) return null;
  return (
    <nav class="sub-places" aria-label={shellWords.navUnder}>
      {under.map((place) => (
        <PlaceLink key={place.word} place={place} />
      ))}
    </nav>
  );
}

function PlaceLink({ place }: { readonly place: SubPlace }) {
  const isHere = place.views.includes(currentRoute.value.view);
  return (
    <a href={hrefTo(place.route)} aria-current={isHere ? 'page' : undefined}>
      {place.word}
    </a>
  );
}
