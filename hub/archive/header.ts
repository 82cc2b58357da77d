import { closeSync, openSync, readSync } from 'node:fs';
import { ArchiveError } from './errors.ts';

/** "SOAK" in the file's application_id field (sqlite.org/fileformat.html, offset 68). */
export const APPLICATION_ID = 0x534f414b;

const MAGIC = 'SQLite format 3\0';
const USER_VERSION_AT = 60;
const APPLICATION_ID_AT = 68;
const HEADER_BYTES = 100;

export interface FileHeader {
  readonly userVersion: number;
  readonly applicationId: number;
}

/** The first 100 bytes of a file, or null when there is none or it is empty. Nothing is opened for writing. */
function firstBytes(path: string): Buffer | null {
  let file: number;
  try {
    file = openSync(path, 'r');
  } catch (thrown) {
    if (thrown instanceof Error && 'code' in thrown && thrown.code === 'ENOENT') return null;
    throw new ArchiveError('disk', `${path} cannot be read: check its permissions`, { cause: thrown });
  }
  try {
    const bytes = Buffer.alloc(HEADER_BYTES);
    const length = readSync(file, bytes, 0, HEADER_BYTES, 0);
    return length === 0 ? null : bytes.subarray(0, length);
  } catch (thrown) {
    throw new ArchiveError('disk', `${path} cannot be read: is it a folder?`, { cause: thrown });
  } finally {
    closeSync(file);
  }
}

/**
 * Looks at a file's bytes without SQLite, because opening a foreign database would already write beside it
 * (recovery, -shm, -wal).
 *
 * @returns null when there is no file yet, or it is empty.
 * @throws ArchiveError `not-an-archive`, `archive-too-new`, `disk`.
 */
export function readHeader(path: string, newest: number): FileHeader | null {
  const bytes = firstBytes(path);
  if (bytes === null) return null;
  if (bytes.length < HEADER_BYTES || bytes.toString('latin1', 0, MAGIC.length) !== MAGIC) {
    throw new ArchiveError(
      'not-an-archive',
      `${path} is not a Soakwatch archive (not an SQLite file): choose another data folder`,
    );
  }
  const header = {
    userVersion: bytes.readUInt32BE(USER_VERSION_AT),
    applicationId: bytes.readUInt32BE(APPLICATION_ID_AT),
  };
  checkHeader(path, header, newest);
  return header;
}

/** @throws ArchiveError `not-an-archive` for another program's file, `archive-too-new` for a later version's. */
export function checkHeader(path: string, header: FileHeader, newest: number): void {
  if (header.applicationId !== APPLICATION_ID) {
    throw new ArchiveError(
      'not-an-archive',
      `${path} belongs to another program (application id ${header.applicationId}): choose another data folder`,
    );
  }
  if (header.userVersion > newest) {
    throw new ArchiveError(
      'archive-too-new',
      `${path} has version ${header.userVersion}; this Soakwatch knows up to ${newest}: install a newer Soakwatch`,
    );
  }
}
