/** Why a segment was not met, or only with doubts, in English. */
export const REASONS = {
  'moved-on-early.soak': 'Moved on early: the soak clock had {soak} of {planned}',
  'moved-on-early.at': 'Moved on early: at {measured} of {target}',
  'moved-on-early.unseen': 'Moved on early: before {target} was seen',
  'finished-early.soak': 'Finished early: the soak clock had {soak} of {planned}',
  'finished-early.at': 'Finished early: at {measured} of {target}',
  'finished-early.unseen': 'Finished early: before {target} was seen',
  'core-short':
    'Stopped by the air: the core of {piece}, computed, had {soak} of {planned}; the air had {airTime}',
  'core-cold':
    'Stopped by the air: the core of {piece} never came into tolerance, computed {core} of {target}; the air had {airTime}',
  'core-unsure':
    'The core of {piece} is computed, not measured: by the coldest assumption it had {low} of {planned}',
  'not-begun': 'Never begun',
  'not-confirmed': 'Nobody confirmed that this was done',
  overshoot: '{over} above the tolerance for {time}',
  'short-overshoot': '{over} above the tolerance for {time}: short',
  blind: 'Nothing was measured for {time}',
  interrupted: 'Outside tolerance for {time} after the soak had begun',
  'rate-not-seen': 'The cooling rate was not measured: no probe on the piece',
  'heated-too-fast': 'Heated at {rate}, planned {limit}',
  'heated-slowly': 'Heated slowly: {rate}, planned {limit}',
  'cooled-too-fast': 'Cooled too fast: {rate} on average, at most {limit} allowed, too fast for {time}',
  'cooled-too-fast-briefly': 'Cooled faster than {limit} for {time}',
  'cooled-too-slowly': 'Cooled too slowly: {rate} on average, at least {limit} wanted',
} as const;

/** What the soak clock listens to. */
export const CLOCK = {
  core: 'Soak clock on the computed core of {piece}',
  'core.corrected': 'Soak clock on the computed core of {piece}, drawn to the probe on the load',
  'coldest-thermocouple': 'Soak clock on the coldest probe',
} as const;
