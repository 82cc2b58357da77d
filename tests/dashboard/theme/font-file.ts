import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { brotliDecompressSync } from 'node:zlib';

/** Reads one table out of a WOFF2 file (W3C WOFF 2.0, sections 4 and 5), as far as untransformed tables go. */

const require = createRequire(import.meta.url);
/** Known table tags, in the order of WOFF 2.0 section 4.1. */
const TAGS =
  'cmap head hhea hmtx maxp name OS/2 post cvt_ fpgm glyf loca prep CFF_ VORG EBDT EBLC gasp hdmx kern LTSH PCLT VDMX vhea vmtx BASE GDEF GPOS GSUB EBSC JSTF MATH CBDT CBLC COLR CPAL SVG_ sbix acnt avar bdat bloc bsln cvar fdsc feat fmtx fvar gvar'.split(
    ' ',
  );
const HEADER_BYTES = 48;

export function bundledFont(): Buffer {
  const folder = require.resolve('@fontsource-variable/atkinson-hyperlegible-next/package.json');
  return readFileSync(
    folder.replace('package.json', 'files/atkinson-hyperlegible-next-latin-wght-normal.woff2'),
  );
}

export function fontTable(font: Buffer, wanted: string): Buffer {
  const count = font.readUInt16BE(12);
  let at = HEADER_BYTES;
  const number = () => {
    let value = 0;
    for (;;) {
      const byte = font.readUInt8(at++);
      value = value * 128 + (byte & 127);
      if (byte < 128) return value;
    }
  };
  const tables = Array.from({ length: count }, () => {
    const flags = font.readUInt8(at++);
    const known = TAGS[flags & 63];
    // A tag that is not in the table is written out (flag 63).
    if (known === undefined) at += 4;
    const tag = known ?? font.toString('latin1', at - 4, at);
    const transform = flags >> 6;
    const originalLength = number();
    const isOutline = tag === 'glyf' || tag === 'loca';
    const transformed = isOutline ? transform !== 3 : transform !== 0;
    return { tag, length: transformed ? number() : originalLength };
  });
  const data = brotliDecompressSync(font.subarray(at, at + font.readUInt32BE(20)));
  let offset = 0;
  for (const { tag, length } of tables) {
    if (tag === wanted) return data.subarray(offset, offset + length);
    offset += length;
  }
  throw new Error(`the font has no table ${wanted}`);
}
