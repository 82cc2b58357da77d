/** What can be wrong with what was entered, in plain words. */
export const faultWords = {
  missing: 'Needed: please fill this in.',
  choose: 'Choose one.',
  atLeast: (limit: string) => `At least ${limit}.`,
  atMost: (limit: string) => `At most ${limit}.`,
  above: (limit: string) => `Must be more than ${limit}.`,
  below: (limit: string) => `Must be less than ${limit}.`,
  tooLong: (most: number) => `At most ${most} characters.`,
  tooMany: (most: number) => `At most ${most}.`,
  whole: 'A whole number.',
  form: (text: string) => `Expected: ${text}.`,
  unfit: 'This does not fit.',
  summary: (count: number) => (count === 1 ? 'One thing to mend first:' : `${count} things to mend first:`),
} as const;
