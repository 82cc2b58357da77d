/** What stands on everything that leaves the hub. */
export const caution =
  'An aid, not a safety device. It tells what was measured. It never replaces a certified carbon monoxide alarm, a flame-failure device, the local code or a licensed gas fitter, and it does not say that air or gas is free of danger.';
