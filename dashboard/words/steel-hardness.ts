import type { Quench } from '../../hub/contract/compute/hardenability.ts';

/** Words of hardening and tempering on the steel page. */

type Through = 'yes' | 'no' | 'borderline' | 'unknown';

const shortMedium: Readonly<Record<Quench, string>> = {
  'still-air': 'Air',
  'still-oil': 'Oil, still',
  'moderate-oil': 'Oil, a little',
  'good-oil': 'Oil, well',
  'strong-oil': 'Oil, strong',
  'still-water': 'Water, still',
  'strong-water': 'Water, strong',
  'still-brine': 'Brine, still',
  'strong-brine': 'Brine, strong',
};

const verdict: Readonly<Record<Through, (piece: string, medium: string) => string>> = {
  yes: (piece, medium) => `${piece} hardens through in ${medium}.`,
  no: (piece, medium) => `${piece} does not harden through in ${medium}: its core stays softer.`,
  borderline: (piece, medium) =>
    `${piece} may or may not harden through in ${medium}: it lies inside the band.`,
  unknown: (piece, medium) => `Whether ${piece} hardens through in ${medium} is not known.`,
};

export const hardenWords = {
  head: 'Hardening a section',
  shape: 'Shape',
  bar: 'Round bar',
  plate: 'Flat, plate, blade',
  diameter: 'Diameter',
  thickness: 'Thickness',
  medium: 'Quenched in',
  piece: (mm: number, shape: 'bar' | 'plate', title: string) =>
    `${title}, ${mm}\u00a0mm ${shape === 'bar' ? 'round' : 'thick'},`,
  verdict,
  answer: { yes: 'yes', no: 'no', borderline: 'in doubt', unknown: 'not known' } as const,
  ideal: 'Ideal critical diameter',
  idealHint: 'The thickest round bar that would be half martensite at its centre in a perfect quench.',
  critical: 'Hardens through up to',
  criticalHint: 'Half martensite at the centre, in the medium chosen.',
  hardness: 'As quenched, all martensite',
  retained: 'Austenite that stays at 20 °C',
  carbon: (percent: number, assumed: boolean) =>
    assumed
      ? `With ${percent} % carbon in the austenite: assumed, as hardened between Ac1 and Acm.`
      : `With all ${percent} % carbon in the austenite.`,
  media: 'Largest section that hardens through, by medium',
  severity: 'Severity H per inch',
  through: 'This section',
  section: (mm: number) => `yours, ${mm} mm`,
  drawn:
    'Largest section that hardens through in each medium, in mm, with your section as a line; the table below holds the same numbers',
  axis: 'mm',
  asTable: 'The same as a table',
  shortMedium,
} as const;

export const temperWords = {
  head: 'Tempering',
  lead: 'Rockwell C hardness (HRC) after tempering steel that was hardened through. It says nothing of a piece that was not.',
  time: 'Time at temperature',
  timeHint: 'Such as 2 h or 1 h 30 min',
  scale: 'HRC',
  axis: (label: string) => `tempered at, ${label}`,
  drawn:
    'Hardness in HRC against tempering temperature with its band; the table below holds the same numbers',
  key: (time: string, measured: boolean) =>
    `Tempered once for ${time}. Line: the prediction; block: how far it may be off.${measured ? ' Crosses: measured after that time.' : ''}`,
  none: 'no prediction.',
  asTable: 'The same as a table',
  table: 'Hardness after tempering',
  at: 'Tempered at',
  hardness: 'Hardness (band)',
  by: 'By',
} as const;
