/** What a magnet says about a steel, in sentences. */

type Cause = 'curie' | 'end-of-transformation' | 'curie-before-transformation';
type Proof = 'above-770' | 'above-ac1' | 'nothing';

const cause: Readonly<Record<Cause, string>> = {
  curie:
    'there the ferrite that is left loses its magnetism (Curie point), and some of it is not yet austenite',
  'end-of-transformation': 'there the last of it has turned to austenite, before the Curie point',
  'curie-before-transformation':
    'there it loses its magnetism (Curie point) before anything has begun to turn to austenite',
};

const proves: Readonly<Record<Proof, string>> = {
  'above-770': 'A piece that lets go has passed the Curie point. That alone does not prove it all austenite.',
  'above-ac1': 'A piece that lets go all over has turned to austenite, carbides apart.',
  nothing: 'A piece that lets go has proved nothing about its structure.',
};

/** By the hub's code; `above` is how far magnet-plus lies above Ac3, in the unit shown. */
const meaning: Readonly<Record<string, (above: string) => string>> = {
  'below-transformation': () => 'At that heat nothing transforms: for this steel it is a sub-critical heat.',
  'fully-transformed': (above) => `That is about ${above} above Ac3: all austenite, carbides apart.`,
  'probably-transformed': (above) =>
    `That is about ${above} above Ac3, which lies inside the spread of the formulas: probably all austenite.`,
  'partly-transformed': () => 'That lies between Ac1 and Ac3: only part of it has turned to austenite.',
  'carbides-remain': () => 'It stays below Acm: carbides that do not dissolve keep the grain fine.',
  'above-acm': () => 'It reaches Acm or passes it.',
  'grain-coarsening': () => 'At that heat grains coarsen within minutes.',
};

/** How the verdict ends: the gravest remark that holds, first in this list. */
const verdicts: readonly (readonly [code: string, end: string])[] = [
  ['grain-coarsening', 'so hot that grains coarsen within minutes'],
  [
    'above-acm',
    'at or past the heat where its carbides dissolve: cooled slowly from there, they can come back as a brittle network',
  ],
  ['below-transformation', 'and nothing transforms there'],
  ['partly-transformed', 'where only part of it is austenite'],
  ['probably-transformed', 'where it is probably all austenite'],
  ['fully-transformed', 'where it is all austenite'],
];

export const magnetWords = {
  head: 'What a magnet tells',
  doNotUse: (title: string) => `Do not judge ${title} by a magnet.`,
  verdict: (title: string, offset: string, celsius: string, end: string) =>
    `Magnet plus about ${offset} takes ${title} to about ${celsius}${end === '' ? '' : `, ${end}`}.`,
  lost: (band: string, why: string) => `On heating it lets go at ${band}: ${why}.`,
  plus: (band: string) =>
    `Allowing for the spread of the formulas and of the eye, magnet plus comes to ${band}.`,
  cause,
  proves,
  meaning,
  verdicts,
} as const;
