/** What a firing did to a piece, in English. `{why}` is a sentence of its own. */
export const PIECE = {
  'not-judged-yet': 'The firing still runs',
  abandoned: 'The firing was abandoned',
  'segment-not-met': 'Segment {segment}: {why}',
  'segment-doubtful': 'Segment {segment}: {why}',
  'overshoot-not-in-piece':
    'The furnace went over {limit} in segment {segment}; the skin of this piece, computed, did not',
  'core-soaked': 'Its middle had {soak} of {planned} at heat',
  'core-short': 'Its middle had {soak} of {planned} at heat',
  'core-not-reached': 'Its middle never came into the tolerance of {target}: {reached} at most',
  'core-unsure': 'By the coldest assumption about the furnace its middle had {low} of {planned}',
  'core-of-slower': 'Judged by the middle of the slowest piece: its own was there no later',
  'probe-on-load': 'Judged by the probe on the load',
  'judged-by-air': 'Judged by the air: no middle could be computed',
  'nothing-measured': 'Nothing was measured',
  'step-not-said': 'Nobody said what this heat was for: only what holds for every heat was looked at',
  'steel-not-known': 'Nothing is known of its steel here any more: temperatures were not held against it',
  'no-window-known': 'No temperature for this step of {steel} is known: look at the maker’s data sheet',
  'step-not-recommended': '{steel} must not go through this step: it hardens or cracks',
  'in-window': 'Held at {reached}, at most {peak}: inside {lowTemp} to {highTemp}, known to ±{slack}',
  'too-cold-for-step': 'Held at {reached}; this step begins at {limit}',
  'harden-below-window': 'Held at {reached}, below the hardening window from {limit}: it may not harden',
  'normalise-below-upper-critical':
    'Held at {reached}: wholly austenite from about {limit} ({lowTemp} to {highTemp})',
  'too-hot-for-steel': 'Its skin reached {reached}: too hot for {steel}, at most {limit}',
  'harden-above-window':
    'Its skin reached {reached}, above the hardening window to {limit}: coarse grain, retained austenite',
  'above-ac1': 'Its skin reached {reached}: transformation starts from about {limit}, which undoes this step',
  'section-does-not-harden':
    '{thickness} mm does not harden to the middle in {fluid}: about {critical} mm does',
  'temper-as-wanted': 'Should be left at {hrc} HRC ({lowHrc}–{highHrc}) for {wantedHrc} HRC wanted',
  'temper-too-hard': 'Left at {hrc} HRC ({lowHrc}–{highHrc}), harder than the {wantedHrc} HRC wanted',
  'temper-too-soft': 'Left at {hrc} HRC ({lowHrc}–{highHrc}), softer than the {wantedHrc} HRC wanted',
  'temper-unsure': 'Should be left at {hrc} HRC ({lowHrc}–{highHrc}); nobody said what was wanted',
  'temper-not-known': 'What this temper left is not known: measure the hardness',
  'cooling-met': 'Cooled at {rate} down to {to}, at most {rateLimit} allowed',
  'cooling-too-fast': 'Cooled at {rate} down to {to} (worst {worstRate}), at most {rateLimit} allowed',
  'cooling-not-followed': 'The slow cooling, at most {rateLimit}, was not followed down to {to}',
  'cooling-computed': 'Its cooling was computed, not measured: no probe went with it',
} as const;

/** The verdict of a piece with the reason that made it. */
export const VERDICT = {
  pending: 'Not judged yet',
  met: 'Met: {why}',
  'met.plain': 'Met',
  'met-with-doubts': 'Met with doubts: {why}',
  'not-met': 'Not met: {why}',
} as const;

/** A verdict that later rules replaced. */
export const JUDGED = {
  ended: 'Judged when it ended, by rules {rules}: {was}',
  'late-readings': 'Judged again when readings came late, by rules {rules}: {was}',
  'newer-rules': 'Judged again by rules {rules}: {was}',
  asked: 'Judged again on request, by rules {rules}: {was}',
} as const;

/** What a verdict is called inside a sentence. */
export const WAS = {
  pending: 'not judged',
  met: 'met',
  'met-with-doubts': 'met with doubts',
  'not-met': 'not met',
} as const;

/** One figure with its band. */
export const FIGURE = {
  'decarburised-depth': 'Decarburised no deeper than {high} {unit} (the formulas say {low}–{high})',
  scale: 'Scale {value} {unit} ({low}–{high})',
  'metal-loss': 'Metal gone from each face {value} {unit} ({low}–{high})',
  grain: 'Grain about {value} {unit} ({low}–{high})',
  'temper-parameter': 'Tempering parameter {value} {unit} ({low}–{high})',
  'temper-hours': 'As {value} {unit} at the peak would have done',
  'temper-hardness': 'Hardness left {value} {unit} ({low}–{high})',
  none: '{name}: nothing is claimed',
} as const;

export const FIGURE_NAME = {
  'decarburised-depth': 'Decarburised depth',
  scale: 'Scale',
  'metal-loss': 'Metal gone',
  grain: 'Grain',
  'temper-parameter': 'Tempering parameter',
  'temper-hours': 'Time at the peak',
  'temper-hardness': 'Hardness left',
} as const;

export const CAUTION = {
  'above-range': 'hotter for a while than the formula reaches: at least this',
  'ferrite-rim': 'between Ac1 and 912 °C a ferrite rim grows faster than is counted',
  'long-gap': 'readings more than five minutes apart were bridged by straight lines',
  'uncounted-below-700': 'scale grown between 570 and 700 °C is not counted',
  'air-no-flame': 'for air; damp furnace gas can make more, scale knocked off also',
  coarsening: 'above 950 °C, where what pins grains dissolves and they grow within minutes',
  'trend-only': 'for comparing firings, not a measurement',
  'hardened-through': 'for steel that was fully hardened before',
  'below-scale': 'below 20 HRC the scale is not defined',
} as const;

export const NO_CLAIM = {
  'never-austenite': 'it never reached austenite, so no carbon was counted as lost',
  'never-hot-enough': 'it never came into the range of the formula',
  'steel-not-covered': 'no formula covers this steel',
  'too-few-points': 'too little was measured',
} as const;
