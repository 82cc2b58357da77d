/** Repeatable chance: every sensor and operator draws from a stream of its own. */

/** A stream of random numbers. */
export interface Random {
  /** Uniform, 0 (included) to 1 (excluded). */
  uniform(): number;
  /** Normal, mean 0 and standard deviation 1. */
  normal(): number;
  /** Uniform between two bounds. */
  between(low: number, high: number): number;
}

/**
 * The stream of a seed and a label. Streams are separate so that switching one
 * behaviour on does not shift the noise of every other sensor.
 *
 * @param seed any whole number
 * @param label names the user of the stream, e.g. `forge-node/chamber`
 */
export function seededRandom(seed: number, label: string): Random {
  const next = mulberry32(hash(`${seed}/${label}`));
  let spare: number | null = null;
  const normal = () => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    // Box-Muller gives two at a time; 1 - u keeps the logarithm away from zero.
    const size = Math.sqrt(-2 * Math.log(1 - next()));
    const angle = 2 * Math.PI * next();
    spare = size * Math.sin(angle);
    return size * Math.cos(angle);
  };
  return { uniform: next, normal, between: (low, high) => low + (high - low) * next() };
}

/** FNV-1a with a final mix, 32 bits: near seeds must not give near streams. */
function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) {
    value = Math.imul(value ^ text.charCodeAt(index), 0x01000193);
  }
  value = Math.imul(value ^ (value >>> 16), 0x85ebca6b);
  return (value ^ (value >>> 13)) >>> 0;
}

/** A public-domain 32-bit generator (T. Ettinger): ample for noise, not for secrets. */
function mulberry32(start: number): () => number {
  let state = start;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
