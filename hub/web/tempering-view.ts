import type { HardnessSeen } from '../archive/review-types.ts';
import type { TemperedPoint, TemperingLearned } from '../contract/batch-statistics.ts';
import type { LoadPiece } from '../contract/load.ts';
import { PhysicsError } from '../physics/errors.ts';
import { hollomonJaffeConstant } from '../physics/steel/hollomon-jaffe.ts';
import { learn, parameterOfHolds } from '../review/tempering.ts';
import { meanHrc } from './batch-view.ts';
import type { WebParts } from './parts.ts';

/** Hardness readings looked at, the newest. */
const MOST_READINGS = 2000;
/** What the fit takes, HRC: outside, the scale itself is no use. */
const SOFTEST_HRC = 20;
const HARDEST_HRC = 70;

interface Tempered {
  readonly point: Omit<TemperedPoint, 'parameter'>;
  readonly steel: LoadPiece['steel'];
  readonly firings: readonly string[];
}

/** What the shop's own tempered and measured pieces say of a steel; without a name, of the one with the most pieces. */
export function temperingView({ archive }: WebParts, steelId?: string): TemperingLearned {
  const found = archive
    .hardnessSeen({ limit: MOST_READINGS })
    .flatMap((seen) => temperedPiece(archive, seen) ?? [])
    .reverse();
  const steels = steelsIn(found);
  const steel = steelId ?? steels[0]?.id ?? null;
  const own = found.filter((one) => keyOf(one.steel) === steel);
  const constant = constantOf(own[0]);
  if (constant === null) {
    return { steels, steelId: steel, constant, points: [], curve: [], hold: [], notFitted: 'few-pieces' };
  }
  const points = own.flatMap(({ point, firings }): TemperedPoint[] => {
    const parameter = parameterOr(() =>
      parameterOfHolds(
        firings.flatMap((id) => archive.heldSoaks(id)),
        constant,
      ),
    );
    return parameter === null ? [] : [{ ...point, parameter }];
  });
  return { steels, steelId: steel, constant, points, ...learn(points, constant) };
}

/** A reading after one temper or more since the piece was last hardened; null when it is not that. */
function temperedPiece(archive: WebParts['archive'], seen: HardnessSeen): Tempered | null {
  const hardnessHrc = meanHrc(seen.observation);
  if (hardnessHrc === null || hardnessHrc < SOFTEST_HRC || hardnessHrc > HARDEST_HRC) return null;
  const { pieceId, at } = seen.observation;
  const before = archive
    .firingsOfPiece(pieceId)
    .filter(({ firing }) => firing.status === 'finished' && firing.endedAt !== null && firing.endedAt <= at);
  const hardened = before.findLastIndex(({ as }) => as.step === 'austenitise');
  const tempers = before.slice(hardened + 1).filter(({ as }) => as.step === 'temper');
  const last = tempers.at(-1);
  // Tempered before it was hardened, or forged since: the parameter would not speak of what was measured.
  if (last === undefined || last !== before.at(-1)) return null;
  const firings = tempers.map(({ firing }) => firing.id);
  const point = {
    pieceId,
    mark: seen.mark,
    firingId: last.firing.id,
    at,
    tempers: tempers.length,
    hardnessHrc,
  };
  return { point, steel: last.as.steel, firings };
}

/** A catalogue or own steel by its id; a bare composition by its title. */
const keyOf = ({ id, title }: LoadPiece['steel']): string => id ?? title;

function steelsIn(found: readonly Tempered[]): TemperingLearned['steels'] {
  const counted = new Map<string, { id: string; title: string; pieces: number }>();
  for (const { steel } of found) {
    const id = keyOf(steel);
    counted.set(id, { id, title: steel.title, pieces: (counted.get(id)?.pieces ?? 0) + 1 });
  }
  return [...counted.values()].sort((a, b) => b.pieces - a.pieces || a.title.localeCompare(b.title));
}

function constantOf(first: Tempered | undefined): number | null {
  if (first === undefined) return null;
  return parameterOr(() => hollomonJaffeConstant(first.steel.composition.C));
}

/** A value that the science refuses (a temper above 750 °C, a carbon outside its range) is not known. */
function parameterOr(compute: () => number | null): number | null {
  try {
    return compute();
  } catch (fault) {
    if (fault instanceof PhysicsError) return null;
    throw fault;
  }
}
