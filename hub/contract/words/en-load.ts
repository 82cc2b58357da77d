/** What a change of the load is called in the journal of a firing. */
export function loadWords(taken: readonly string[], left: readonly string[]): string {
  const parts = [
    taken.length > 0 ? `put in ${taken.join(', ')}` : null,
    left.length > 0 ? `taken out ${left.join(', ')}` : null,
  ].filter((part) => part !== null);
  return parts.length > 0 ? `Load: ${parts.join('; ')}` : 'Load: what its pieces are for was changed';
}
