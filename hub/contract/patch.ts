import { z } from 'zod';

type Undefaulted<S extends z.ZodRawShape> = {
  [K in keyof S]: S[K] extends z.ZodDefault<infer Inner> ? z.ZodOptional<Inner> : z.ZodOptional<S[K]>;
};

/**
 * The shape of a change: every field may be left out, and a field left out stays as it is. zod's own
 * `partial()` keeps defaults, which would quietly reset every field that a change does not name.
 */
export function patchShape<S extends z.ZodRawShape>(shape: S): Undefaulted<S> {
  const entries = Object.entries(shape).map(([key, field]) => {
    const bare = field instanceof z.ZodDefault ? field.removeDefault() : field;
    return [key, z.optional(bare)] as const;
  });
  return Object.fromEntries(entries) as Undefaulted<S>;
}
