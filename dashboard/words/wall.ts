/** Words of the wall. The next move and the alarms have theirs in the contract. */
export const wallWords = {
  notConnected: 'NOT CONNECTED',
  notCurrent: 'Nothing on this screen is current',
  lastHeard: (time: string) => `Last heard from the hub at ${time}.`,
  neverHeard: 'The hub has not been heard since this page was opened.',
  tryingAgain: 'Trying again by itself. If it lasts: is the hub running, is the network cable in?',
  pageOlder: 'The hub says things this page does not understand: reload the page.',
  reload: 'Reload',
  silence: 'Silence',
  notJudging: 'NOT JUDGING',
  notJudgingLong:
    'Readings are kept, but a judge in the hub has failed: no next move and no alarm can be trusted.',
} as const;
