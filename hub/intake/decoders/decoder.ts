import type { PayloadDecoder } from '../../contract/shop.ts';
import { jsonDecoder } from './json.ts';
import { numberDecoder } from './number.ts';
import type { Decode } from './types.ts';

/** The decoder that a binding asks for. A further kind is a further case here, in a file of its own. */
export function decoderFor(wanted: PayloadDecoder): Decode {
  switch (wanted.kind) {
    case 'number':
      return numberDecoder;
    case 'json':
      return jsonDecoder(wanted);
    default:
      return wanted satisfies never;
  }
}
