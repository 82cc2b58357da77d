import { createHash } from 'node:crypto';
import { ATTACHMENT_TYPES, type AttachmentType, MOST_ATTACHMENT_BYTES } from '../contract/observation.ts';
import { WatchError } from '../watch/errors.ts';

/** Photos and files of the shop: taken in by what they are, given out so that no browser runs them. */

/** How each kind begins. A text has no mark of its own: it must be UTF-8 without NUL. */
const BEGINNINGS: Readonly<Record<Exclude<AttachmentType, 'text/plain'>, (bytes: Buffer) => boolean>> = {
  'image/jpeg': (bytes) => bytes.subarray(0, 3).equals(Buffer.from([0xff, 0xd8, 0xff])),
  'image/png': (bytes) => bytes.subarray(0, 8).equals(Buffer.from('\x89PNG\r\n\x1a\n', 'latin1')),
  'image/webp': (bytes) =>
    bytes.toString('latin1', 0, 4) === 'RIFF' && bytes.toString('latin1', 8, 12) === 'WEBP',
  'application/pdf': (bytes) => bytes.toString('latin1', 0, 5) === '%PDF-',
};

export interface TakenFile {
  readonly fileName: string;
  readonly contentType: AttachmentType;
  readonly sha256: string;
}

/** @throws WatchError `unsupported-media-type` for a kind that is not taken */
export function attachmentType(header: string | undefined): AttachmentType {
  const said = header?.split(';')[0]?.trim().toLowerCase();
  const type = ATTACHMENT_TYPES.find((each) => each === said);
  if (type !== undefined) return type;
  const message = `${said ?? 'nothing'} is not taken: send ${ATTACHMENT_TYPES.join(', ')} and name it in Content-Type`;
  throw new WatchError('unsupported-media-type', message);
}

/**
 * What is kept about a file.
 *
 * @throws WatchError `invalid-request` (empty), `payload-too-large`, `unsupported-media-type` (its bytes say that
 *   it is something else)
 */
export function takenFile(content: Buffer, contentType: AttachmentType, name: string): TakenFile {
  if (content.byteLength === 0) throw new WatchError('invalid-request', 'the file is empty');
  if (content.byteLength > MOST_ATTACHMENT_BYTES) {
    const message = `a file may hold ${MOST_ATTACHMENT_BYTES} bytes at most: send a smaller picture`;
    throw new WatchError('payload-too-large', message);
  }
  const fits = contentType === 'text/plain' ? isText(content) : BEGINNINGS[contentType](content);
  if (!fits) {
    throw new WatchError('unsupported-media-type', `this file does not begin like ${contentType}`);
  }
  const sha256 = createHash('sha256').update(content).digest('hex');
  return { fileName: safeName(name), contentType, sha256 };
}

function isText(content: Buffer): boolean {
  return !content.includes(0) && Buffer.from(content.toString('utf8'), 'utf8').equals(content);
}

/** No folders, no control characters, nothing hidden, 120 characters at most. */
function safeName(name: string): string {
  const last = name.split(/[/\\]/).at(-1) ?? '';
  const clean = last
    .replace(/[\p{C}"]/gu, '')
    .replace(/^\.+/, '')
    .trim();
  return [...clean].slice(-120).join('') || 'file';
}

/** RFC 6266: saved under its name, never shown as a page. */
export function dispositionOf(fileName: string): string {
  const plain = fileName.replace(/[^\x20-\x7e]|["\\%]/g, '_');
  const encoded = encodeURIComponent(fileName).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16)}`,
  );
  return `attachment; filename="${plain}"; filename*=UTF-8''${encoded}`;
}
