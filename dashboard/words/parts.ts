/** Words of the shared parts and of the shell. */
export const partWords = {
  back: 'Back',
  temperaturesIn: 'Temperatures in',
  problemTitle: 'That did not work',
  problemCode: (code: string) => `Code: ${code}`,
  notReached: 'The hub did not answer. Check that it runs and that this screen is on its network.',
  notUnderstood:
    'The hub answered in a way this screen does not understand. Reload the page: it may be older than the hub.',
} as const;

export const shellWords = {
  product: 'Soakwatch',
  nav: 'Pages',
  navUnder: 'Pages of this place',
  wall: 'Wall',
  firings: 'Firings',
  compare: 'Compare',
  batches: 'Batches',
  schedules: 'Schedules',
  steel: 'Steel',
  heat: 'Heat',
  bench: 'Bench',
  pieces: 'Pieces',
  routes: 'Routes',
  air: 'Air',
  gas: 'Gas',
  setup: 'Setup',
  toNight: 'Night',
  toDay: 'Day',
  toNightName: 'Change to the night scheme',
  toDayName: 'Change to the day scheme',
  simulated: 'SIMULATED SHOP',
  simulatedLong: 'Simulated shop: these readings come from a program, not from a fire',
  unknownTitle: 'There is no such page',
  unknown: (path: string) => `Nothing is kept under "${path}".`,
  toWall: 'To the wall',
  starting: 'Asking the hub for its first readings',
} as const;
