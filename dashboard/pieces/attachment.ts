import { seenWords } from '../words/pieces-seen.ts';

/** What the hub would refuse about a file, said before megabytes are sent. Pure. */

const BYTES_PER_MEGABYTE = 1024 * 1024;

interface Limits {
  readonly types: readonly string[];
  readonly mostBytes: number;
}

/** Null: the file may be sent. The hub looks into the bytes as well. */
export function fileFault(
  file: { readonly type: string; readonly size: number } | null,
  { types, mostBytes }: Limits,
): string | null {
  if (file === null || file.size === 0) return seenWords.fileMissing;
  if (!types.includes(file.type)) return seenWords.fileType;
  if (file.size > mostBytes) return seenWords.fileTooBig(`${Math.round(mostBytes / BYTES_PER_MEGABYTE)} MB`);
  return null;
}
