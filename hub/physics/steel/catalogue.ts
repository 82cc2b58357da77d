/** All grades, and finding one by any of its names. */
import type { Grade } from './grade.ts';
import { AIR_HARDENING_GRADES } from './grades-air-hardening.ts';
import { LOW_ALLOY_GRADES } from './grades-low-alloy.ts';
import { PLAIN_CARBON_GRADES } from './grades-plain-carbon.ts';
import { STRIP_GRADES } from './grades-strip.ts';
import { TOOL_GRADES } from './grades-tool.ts';

/** The catalogue, in the order a picker shows it. */
export const GRADES: readonly Grade[] = [
  ...PLAIN_CARBON_GRADES,
  ...LOW_ALLOY_GRADES,
  ...TOOL_GRADES,
  ...AIR_HARDENING_GRADES,
  ...STRIP_GRADES,
];

/** A name as it is compared: `AISI 1045`, `sae-1045` and `1045` are one name; `1.1545` keeps its point. */
export function steelNameKey(name: string): string {
  return name
    .toLowerCase()
    .replace(/[\s\-_]/g, '')
    .replace(/^(aisi|sae)+\/?/, '');
}

/**
 * The grade of an id or of any name in the catalogue, or null. A name that is
 * the grade's own wins over one that is only a near equivalent of another.
 */
export function findGrade(name: string): Grade | null {
  const wanted = steelNameKey(name);
  const byId = GRADES.find((grade) => steelNameKey(grade.id) === wanted);
  if (byId !== undefined) return byId;
  const named = (same: boolean) =>
    GRADES.find((grade) =>
      grade.names.some((entry) => entry.same === same && steelNameKey(entry.name) === wanted),
    );
  return named(true) ?? named(false) ?? null;
}
