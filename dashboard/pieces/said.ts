import type { SteelSummary } from '../../hub/contract/compute/steels.ts';
import type { Section } from '../../hub/contract/load.ts';
import type { Observation, ObservationSeen } from '../../hub/contract/observation.ts';
import type { Piece } from '../../hub/contract/piece.ts';
import type { DisplayUnit } from '../../hub/contract/schedule.ts';
import { degreesDifference, number, temperature, unitNamed } from '../words/format.ts';
import { SHAPE_WORDS } from '../words/pieces.ts';
import { AGREES_WORDS, CRACK_WORDS, FILE_TYPE_WORDS, FILE_WORDS, seenWords } from '../words/pieces-seen.ts';

/** What was seen, in a sentence. Pure. */

export function saidOf({ seen }: Pick<Observation, 'seen'>, unit: DisplayUnit): string {
  switch (seen.kind) {
    case 'hardness':
      return saidHardness(seen);
    case 'straightness':
      return seen.overMm === null
        ? seenWords.straight(plain(seen.outMm))
        : seenWords.straightOver(plain(seen.outMm), plain(seen.overMm));
    case 'file':
      return seenWords.where(FILE_WORDS[seen.result], seen.position);
    case 'crack':
      return seenWords.where(CRACK_WORDS[seen.found ? 'found' : 'none'], seen.position);
    case 'note':
      return seen.text;
    case 'magnet':
      return saidMagnet(seen, unit);
    case 'attachment':
      return `${seen.fileName} (${FILE_TYPE_WORDS[seen.contentType]}, ${plain(Math.max(1, Math.round(seen.bytes / 1024)))} kB)`;
    default:
      return seen satisfies never;
  }
}

type Seen<K extends ObservationSeen['kind']> = Extract<ObservationSeen, { kind: K }>;

/** Each reading with its place; of several also their mean, to a tenth, and what they lie between. */
function saidHardness({ readings, scale }: Seen<'hardness'>): string {
  const each = readings.map(({ value, position }) =>
    position === '' ? plain(value) : seenWords.at(plain(value), position),
  );
  const said = seenWords.hardness(each.join(', '), scale);
  if (readings.length === 1) return said;
  const values = readings.map(({ value }) => value);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = `${plain(Math.min(...values))} to ${plain(Math.max(...values))}`;
  return `${said}: ${seenWords.hardnessMany(number(mean, 1), spread, scale, values.length)}`;
}

function saidMagnet(
  { measuredCelsius, expected, agrees, differenceCelsius }: Seen<'magnet'>,
  unit: DisplayUnit,
): string {
  if (measuredCelsius === null) return seenWords.magnetUnread;
  const measured = temperature(measuredCelsius, unit);
  if (expected === null) return seenWords.magnetUnknown(measured);
  const said = seenWords.magnet(measured, temperature(expected.celsius, unit), AGREES_WORDS[agrees]);
  if (differenceCelsius === null || agrees === 'inside') return said;
  const apart = `${degreesDifference(Math.abs(differenceCelsius), unit)} ${unitNamed(unit).label}`;
  return `${said}, ${seenWords.difference(apart)}`;
}

/** "8 mm, plate or flat bar". */
export function sectionSaid({ shape, thicknessMm }: Section): string {
  return `${plain(thicknessMm)} mm, ${SHAPE_WORDS[shape].toLowerCase()}`;
}

/** What the shop calls the steel, with the grade it is taken for. `titles`: titles of the steels by id. */
export function steelSaid(
  { steel }: Pick<Piece, 'steel'>,
  titles: ReadonlyMap<string, string> = new Map(),
): string {
  const grade = steel.grade === null ? '' : (titles.get(steel.grade) ?? steel.grade);
  if (steel.title === '' || steel.title === grade) return grade === '' ? '?' : grade;
  return grade === '' ? steel.title : `${steel.title} (${grade})`;
}

/** Titles by every name that a piece may call its steel by. */
export function titlesOf(
  steels: readonly Pick<SteelSummary, 'id' | 'title' | 'names'>[],
): ReadonlyMap<string, string> {
  return new Map(
    steels.flatMap(({ id, title, names }) =>
      [id, title, ...names.filter(({ same }) => same).map(({ name }) => name)].map((name) => [name, title]),
    ),
  );
}

/** A number as it was entered, without trailing noise. */
function plain(value: number): string {
  return String(Number(value.toPrecision(6)));
}
