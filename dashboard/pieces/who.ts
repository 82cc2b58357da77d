import { signal } from '@preact/signals';

/** Who stands at this screen, as they said last; empty: nobody said. Kept until the page is loaded anew. */
export const whoIsHere = signal('');
