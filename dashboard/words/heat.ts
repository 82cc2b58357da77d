/** Words of the page on heat in a piece. Numbers come written, with their units. */

const SHAPES = { bar: 'Round bar', plate: 'Plate or flat bar', sphere: 'Ball or lump' } as const;
const SECTION = { bar: 'Diameter', plate: 'Thickness', sphere: 'Diameter' } as const;
const PIECE = { bar: 'bar', plate: 'plate', sphere: 'ball' } as const;
const KINDS = {
  'gas-forge': 'a gas forge',
  'electric-oven': 'an electric oven',
  'salt-bath': 'a salt bath',
} as const;
const KINDS_MANY = {
  'gas-forge': 'gas forges',
  'electric-oven': 'electric ovens',
  'salt-bath': 'salt baths',
} as const;

type Shape = keyof typeof SHAPES;
type Kind = keyof typeof KINDS;

export const heatWords = {
  title: 'Heat in the piece',
  temperatureUnit: 'Temperatures in',
  lengthUnit: 'Lengths in',
  millimetres: 'mm',
  inches: 'inches',
  waiting: 'Asking the hub for the shop',
  question: 'What goes into the fire',
  shape: 'Shape',
  shapes: SHAPES,
  section: SECTION,
  sectionHint: {
    bar: 'A square bar heats like a round one of the same width.',
    plate: 'Heated from both faces. From one face only: enter twice the thickness.',
    sphere: 'Also the nearest to a short lump or a hammer head.',
  },
  inchHint: 'A fraction will do: 5/8.',
  furnacePick: 'Furnace',
  anyKind: (kind: Kind) => `any: ${KINDS[kind]}`,
  fitted: (name: string, residual: string) =>
    `Reckoned with what was fitted to ${name} from a measured run; the fit leaves ${residual} (rms) of its load thermocouple.`,
  farFromFit:
    'The fit of this furnace could not tell radiation from convection, and this is far from the heat that it was made at: fit it again at this heat.',
  usualOf: (kind: Kind) => `Reckoned as ${KINDS_MANY[kind]} usually heat; nothing was measured on this one.`,
  lit: 'The furnace is',
  atHeat: 'at its heat when the piece goes in',
  cold: 'lit with the piece in it',
  rate: 'It climbs by',
  target: 'Target',
  tolerance: 'Tolerance ±',
  chamber: 'Furnace stands at',
  chamberHint: 'Empty: at the target.',
  beyondRating: (rated: string) => `Above what this furnace is rated for, ${rated}.`,
  start: 'The piece starts at',
  hold: 'Time at heat',
  holdHint: 'What your steel asks for once it is hot through: 20 min, 1:30. 0 for none.',

  answer: 'How long it takes',
  older: 'The answer below is to the figures before. Working out the new one.',
  olderFailed: 'The answer below is to the figures before; the newest question brought none.',
  olderHeld: 'The answer below is to the figures before: mend the marked field for a new one.',
  asking: 'Working it out',
  headline: (piece: Shape, tolerance: string, target: string, time: string) =>
    `Core of the ${PIECE[piece]} within ${tolerance} of ${target} after about ${time}`,
  bandKind: (kind: Kind, band: string) => `${band}, as ${KINDS_MANY[kind]} differ.`,
  bandFit: (band: string) => `${band}: a fitted furnace still meets another load on another day.`,
  bandSame: 'A stronger or weaker furnace of this kind would hardly change that.',
  bandOpen: (low: string) => `${low} at the soonest; weakly heated it would not get there within two days.`,
  takeOut: (hold: string, out: string) => `Then ${hold} at heat: take it out after about ${out} in all.`,
  lag: (lag: string) => `When the core arrives the skin is ${lag} hotter.`,
  lagOnTheWay: (lag: string, after: string) =>
    `On the way the skin is up to ${lag} hotter than the core, after ${after}.`,
  lagLittle: 'When the core arrives the skin is less than a degree hotter.',
  beyondBand: 'By then the skin is hotter than the tolerance allows: the furnace stands too hot for this.',
  never: (tolerance: string, target: string, furnace: string) =>
    `The core never comes within ${tolerance} of ${target}: the furnace stands at ${furnace}.`,
  neverPlain: (tolerance: string, target: string) =>
    `The core does not come within ${tolerance} of ${target} in two days.`,
  honesty:
    'Computed, not measured: one piece of carbon or low-alloy steel, free in the chamber and heated from every side. On a cold floor, touching others or under a thick scale it takes longer. Stainless and high-speed steel take longer still and are not reckoned here.',
  reckoned: (emissivity: string, film: string) =>
    `Reckoned with an effective emissivity of ${emissivity} and a film coefficient of ${film} W/(m² K).`,
  source: (text: string) => `Steel: ${text}.`,

  furnace: 'furnace',
  surface: 'skin',
  core: 'core',
  skin: 'skin',
  coreShort: 'core',
  coreArrives: 'core arrives',
  key: { furnace: 'furnace', surface: 'skin', core: 'core', band: 'tolerance; arrival between its ends' },
  cutCaption: (piece: Shape) =>
    `On top the ${PIECE[piece]} cut through from skin to skin, in the colour it would have: outside first, the heart last.`,
  glowFrom: (name: string, from: string) => `${name} from ${from}`,
  glowNote:
    'Names and limits of colours differ between authors by 60 °C and more; nothing is judged by them.',
  pointAt: 'Point at the chart, or use the arrow keys on it, to read it.',
  readout: (at: string, furnace: string, skin: string, core: string) =>
    `After ${at}: furnace ${furnace}, skin ${skin}, core ${core}`,
  summary: (until: string, start: string, end: string) =>
    `Furnace, skin and core over ${until}: the core goes from ${start} to ${end}.`,
  summaryArrival: (time: string) => `It arrives after about ${time}.`,

  others: 'Thinner and thicker',
  othersCaption: 'The same heating for other sections',
  othersNone: 'Nothing to compare: the section itself does not arrive.',
  sectionHead: 'Section',
  arrivalHead: 'Core arrives after',
  skinHead: 'Skin then hotter by',
  outHead: 'Take out after',
  notAnswered: 'no answer',
  thisOne: 'this piece',
  thisSection: (section: string) => section,
  minutesAgainst: (unit: string) => `Minutes until the core arrives, against the section in ${unit}`,
  growthSkin: (times: string) =>
    `Twice as thick takes ${times} times as long. The wait is for heat to get into the skin, hardly for it to get through the steel: a hotter-working furnace would shorten it.`,
  growthBoth: (times: string) =>
    `Twice as thick takes ${times} times as long: heat waits at the skin, and inside the steel as well.`,
  growthSteel: (times: string) =>
    `Twice as thick takes ${times} times as long. The wait is for heat to get through the steel: no furnace shortens it by much.`,
  growthClimb: 'The furnace sets the pace: the piece follows its climb, and the section matters little.',
} as const;

const SHORT = {
  'still-water': 'water',
  'still-oil': 'oil',
  'still-air': 'still air',
  vermiculite: 'vermiculite',
  ash: 'ash',
  'closed-furnace': 'shut furnace',
} as const;

export const coolingWords = {
  title: 'How it cools',
  short: SHORT,
  long: {
    'still-water': 'Water, not stirred',
    'still-oil': 'Oil at 50 °C, not stirred',
    'still-air': 'Still air',
    vermiculite: 'Buried in vermiculite',
    ash: 'Buried in ash',
    'closed-furnace': 'Small electric furnace, shut and off',
  },
  longFahrenheit: { 'still-oil': 'Oil at 122 °F, not stirred' },
  question: 'What it cools from, and the rule of your anneal',
  from: 'It cools from',
  fromHint: 'Empty: from the target above.',
  rule: 'No faster than',
  ruleHint: '28 °C/h (50 °F/h) is asked of plain carbon steels; alloyed ones ask for less.',
  ruleFrom: 'between',
  ruleTo: 'and',
  packing: 'For burying',
  width: 'Width of the flat bar',
  canRadius: 'Packing all round',
  canHint: 'From the middle of the bar to the wall of the can.',
  companion: 'Hot steel packed beside it',
  companionUnit: 'kg a metre',
  companionHint: 'Another hot bar in the same packing keeps it slow. 0 for none.',
  pick: 'Show closely',
  key: { core: 'core', surface: 'skin', band: 'range of this way', other: 'core, other ways' },
  ruleBand: 'where the rule holds',
  chartNote: 'Time along the foot grows by ratios, so that a quench and a day in ash stand side by side.',
  summary: (ways: string) => `Core temperature over time for each way to cool: ${ways}.`,
  summaryWay: (way: string, time: string, end: string) => `${way}: ${end} after ${time}`,
  caption: 'Every way, read off',
  way: 'Way',
  t85Head: (from: string, to: string) => `${from} to ${to}`,
  rateHead: (at: string) => `At ${at}`,
  ruleHead: (most: string, from: string, to: string) => `No faster than ${most}, ${from} to ${to}`,
  kept: (worst: string) => `kept: ${worst} at most`,
  broken: (worst: string, at: string) => `too fast: up to ${worst}, at ${at}`,
  unsure: (low: string, high: string) => `may be kept: up to ${low} or ${high}, as it happens`,
  notThrough: 'not judged: it does not pass the whole stretch',
  notPassed: 'not passed',
  refused: (why: string, code: string) => `no answer: ${why} (${code})`,
  buriedTitle: 'What burying it will really do',
  buried: (way: string, from: string, to: string, time: string, least: string) =>
    `${way}: from ${from} to ${to} in about ${time}. The rule asks for ${least} at least.`,
  buriedKept: 'The rule is kept.',
  buriedBroken: (worst: string) =>
    `The rule is broken, up to ${worst}: the cold packing drinks heat fastest in the first minutes.`,
  accompanied: (kilograms: string, time: string) =>
    `With ${kilograms} of hot steel a metre beside it: about ${time}.`,
  accompaniedKept: 'That keeps the rule.',
  accompaniedBroken: 'That does not keep the rule either.',
  buriedBall: 'The model of a packing knows long bars alone: for a ball or lump there is no answer.',
  buriedDoubt:
    'Two estimates by hand came within 20 % of this model; nobody published a measured cooling in a can of ash. Damp ash is faster. A thermocouple in the can settles it.',
  doubt:
    'Liquids are reckoned with one average film coefficient from remembered quench severities. A real quench goes through a vapour blanket, boiling and plain cooling one after the other: take the ends of the range, not the middle.',
  furnaceDoubt: 'Nothing is claimed of a shut furnace below 450 °C.',
  furnaceDoubtFahrenheit: 'Nothing is claimed of a shut furnace below 842 °F.',
} as const;
