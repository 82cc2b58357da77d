import { computed, signal } from '@preact/signals';

/** The day scheme is dark ink on light ground for a bright shop; the night scheme is the reverse. */
export type Scheme = 'day' | 'night';

const STORE_KEY = 'soakwatch-scheme';
const systemPrefersNight = signal(false);
const chosen = signal<Scheme | null>(null);

/** The scheme on the screen: what a person chose here, else what the system prefers. */
export const scheme = computed<Scheme>(() => chosen.value ?? (systemPrefersNight.value ? 'night' : 'day'));

/** Turns to the other scheme and remembers it on this screen. */
export function toggleScheme(): void {
  chosen.value = scheme.value === 'day' ? 'night' : 'day';
  try {
    window.localStorage.setItem(STORE_KEY, chosen.value);
  } catch {
    // Storage may be switched off: the choice then lasts until the page is closed, which harms nobody.
  }
}

/** Reads the remembered choice and follows `prefers-color-scheme`; the returned function stops following. */
export function followScheme(): () => void {
  chosen.value = remembered();
  const query = window.matchMedia('(prefers-color-scheme: dark)');
  const read = () => {
    systemPrefersNight.value = query.matches;
  };
  read();
  query.addEventListener('change', read);
  const stop = scheme.subscribe((value) => {
    document.documentElement.dataset.scheme = value;
  });
  return () => {
    query.removeEventListener('change', read);
    stop();
  };
}

function remembered(): Scheme | null {
  try {
    const value = window.localStorage.getItem(STORE_KEY);
    return value === 'day' || value === 'night' ? value : null;
  } catch {
    return null;
  }
}
