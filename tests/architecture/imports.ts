import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';

/** One import or re-export of a file of ours. */
export interface Arrow {
  readonly from: string;
  readonly to: string;
  /** Types vanish when compiled: they make no cycle. */
  readonly typeOnly: boolean;
}

export function sourceFiles(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return sourceFiles(root, path);
    return /\.tsx?$/.test(entry.name) ? [path] : [];
  });
}

const STATEMENT = /^\s*(import|export)\s+(type\s)?(?:[^'";]*?\sfrom\s+)?['"]([^'"]+)['"]/gm;
const DYNAMIC = /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g;

/** Every relative import of the file, as paths from the root. */
export function arrowsOf(root: string, file: string): Arrow[] {
  const text = readFileSync(join(root, file), 'utf8');
  const found = [...text.matchAll(STATEMENT)].map((m) => ({
    target: m[3] ?? '',
    typeOnly: m[2] !== undefined,
  }));
  const dynamic = [...text.matchAll(DYNAMIC)].map((m) => ({ target: m[1] ?? '', typeOnly: false }));
  return [...found, ...dynamic]
    .filter(({ target }) => target.startsWith('.'))
    .map(({ target, typeOnly }) => ({
      from: file,
      to: normalize(relative(root, join(root, dirname(file), target))),
      typeOnly,
    }));
}

/** The first value-import cycle among the files, as a path that returns to its start; null when there is none. */
export function findCycle(arrows: readonly Arrow[]): string[] | null {
  const next = new Map<string, string[]>();
  for (const { from, to, typeOnly } of arrows) {
    if (!typeOnly) next.set(from, [...(next.get(from) ?? []), to]);
  }
  const done = new Set<string>();
  const visit = (file: string, path: readonly string[]): string[] | null => {
    const at = path.indexOf(file);
    if (at >= 0) return [...path.slice(at), file];
    if (done.has(file)) return null;
    for (const target of next.get(file) ?? []) {
      const cycle = visit(target, [...path, file]);
      if (cycle) return cycle;
    }
    done.add(file);
    return null;
  };
  for (const file of next.keys()) {
    const cycle = visit(file, []);
    if (cycle) return cycle;
  }
  return null;
}
