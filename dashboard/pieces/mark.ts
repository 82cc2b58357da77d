/** Which mark to offer for a new piece. Pure. */

const FIRST = 'P1';
/** The contract's longest mark. */
const LONGEST = 24;

/**
 * The mark after the newest one: its last number counted on, with its leading zeros, past every mark that is taken
 * (in any case of its letters). `known`: the newest first.
 */
export function nextMark(known: readonly string[]): string {
  const taken = new Set(known.map((mark) => mark.toUpperCase()));
  const counted = known.find((mark) => /\d$/.test(mark));
  let mark = counted === undefined ? FIRST : countedOn(counted);
  while (taken.has(mark.toUpperCase())) mark = countedOn(mark);
  return mark.length <= LONGEST ? mark : '';
}

function countedOn(mark: string): string {
  const [, before = '', digits = '0'] = /^(.*?)(\d+)$/.exec(mark) ?? [];
  // A run of digits beyond what a number holds exactly is no count; BigInt counts it all the same.
  return before + String(BigInt(digits) + 1n).padStart(digits.length, '0');
}
