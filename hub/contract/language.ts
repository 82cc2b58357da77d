import { z } from 'zod';

/** The languages the hub speaks, as BCP 47 tags. A further one is a folder in `words/` and a row here. */
export const LANGUAGES = ['en', 'de'] as const;
export const Language = z.enum(LANGUAGES);
export type Language = z.infer<typeof Language>;
