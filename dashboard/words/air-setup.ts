/** Words of the air in Setup. */
export const airSetupWords = {
  group: 'Air: exposure over the day',
  note: 'Whose limits the air page and its alarms go by. The local law comes first: choose what it asks, or stricter. No limit is a line below which air is free of danger.',
  profile: 'Limits of',
  custom: 'Limits of our own',
  twa: 'Mean of 8 h (TWA)',
  stel: 'Mean of 15 min (STEL)',
  ceiling: 'Ceiling, at no instant above',
  idlh: 'Danger to life (IDLH)',
  source: 'Who set them',
  sourceHint: 'Such as the name of the authority and the edition.',
  oneLimit: 'Needed: at least one limit.',
  ppmRange: (least: number, most: number) => `From ${least} to ${most} ppm.`,
  empty: 'Leave empty what was not set.',
  workRate: 'How hard the work is',
  workRateHint:
    'For the estimate of carboxyhaemoglobin. Nobody rests at a forge, so rest is not on the list. Who works harder takes in more.',
  room: 'Volume of the room',
  roomHint: 'Length times width times height. With it the hub works out how much CO the room can carry.',
  asking: 'Asking the hub for these limits',
  datesTitle: 'Dates of the sensor',
  datesNote:
    'By its maker or its test with gas. A sensor past its dates is called out: it may read low or nothing. Never make carbon monoxide for a test.',
  calibratedAt: 'Last calibrated',
  calibrationDueAt: 'Calibration due',
  endOfLifeAt: 'End of its life',
  noDate: 'Not a date that there is.',
} as const;
