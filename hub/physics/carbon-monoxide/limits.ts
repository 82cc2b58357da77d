/**
 * Limit profiles: which limits for carbon monoxide a shop is judged by.
 *
 * A limit is a ceiling on risk and never a line below which air is good. Where
 * several apply, the lowest counts; `strictest` is the default for that reason.
 */
import { PhysicsError, requireRange } from '../errors.ts';
import { HOUR_SECONDS, INSTANT, type LimitRow, MINUTE_SECONDS } from './limit-row.ts';
import { WORKPLACE_LIMITS } from './limits-workplace.ts';

export const PROFILE_IDS = ['strictest', 'eu', 'uk', 'germany', 'osha', 'niosh', 'acgih'] as const;
export type ProfileId = (typeof PROFILE_IDS)[number];

/**
 * How a body makes one number of a working day.
 * - `sum-over`: sum(Ci Ti) divided by the hours, however long the day was
 * - `mean-of-shift`: the mean of the day worked, its length taken as at least
 *   `leastHours` and at most `mostHours`, so that a longer day reads higher
 */
export type TwaConvention =
  | { readonly kind: 'sum-over'; readonly hours: number }
  | { readonly kind: 'mean-of-shift'; readonly leastHours: number; readonly mostHours: number };

/** The limits that speak about measured air. */
export const LIMIT_KINDS = ['twa', 'stel', 'excursion', 'ceiling', 'idlh'] as const;
export type LimitKind = (typeof LIMIT_KINDS)[number];

/** A limit with a ppm value: a row that a reading can be compared with. */
export type PpmLimit = LimitRow & { readonly ppm: number };

export interface LimitProfile {
  readonly id: ProfileId | 'custom';
  readonly convention: TwaConvention;
  /** null where the body sets none. */
  readonly twa: PpmLimit | null;
  readonly stel: PpmLimit | null;
  /** Level that short peaks above the day's limit never pass. */
  readonly excursion: PpmLimit | null;
  readonly ceiling: PpmLimit | null;
  readonly idlh: PpmLimit | null;
}

const SUM_OVER_8: TwaConvention = { kind: 'sum-over', hours: 8 };
/** The 10 h are published; that a shorter day counts as 8 h and a longer as 10 h is our cautious reading. */
const NIOSH_DAY: TwaConvention = { kind: 'mean-of-shift', leastHours: 8, mostHours: 10 };

/**
 * A row of the workplace table by its id.
 *
 * @throws PhysicsError `bad-input` for an id that is not there or a row without ppm
 */
export function workplaceLimit(id: string): PpmLimit {
  const row = WORKPLACE_LIMITS.find((candidate) => candidate.id === id);
  if (row === undefined || row.ppm === null) {
    throw new PhysicsError('bad-input', `no workplace limit in ppm is called ${id}`, { id });
  }
  return { ...row, ppm: row.ppm };
}

const NONE = { twa: null, stel: null, excursion: null, ceiling: null, idlh: null };

const BODIES: readonly LimitProfile[] = [
  {
    ...NONE,
    id: 'eu',
    convention: SUM_OVER_8,
    twa: workplaceLimit('eu-twa'),
    stel: workplaceLimit('eu-stel'),
  },
  {
    ...NONE,
    id: 'uk',
    convention: SUM_OVER_8,
    twa: workplaceLimit('uk-twa'),
    stel: workplaceLimit('uk-stel'),
  },
  {
    ...NONE,
    id: 'germany',
    convention: SUM_OVER_8,
    twa: workplaceLimit('germany-twa'),
    stel: workplaceLimit('germany-stel'),
  },
  { ...NONE, id: 'osha', convention: SUM_OVER_8, twa: workplaceLimit('osha-pel') },
  {
    ...NONE,
    id: 'niosh',
    convention: NIOSH_DAY,
    twa: workplaceLimit('niosh-rel'),
    ceiling: workplaceLimit('niosh-ceiling'),
    idlh: workplaceLimit('niosh-idlh'),
  },
  {
    ...NONE,
    id: 'acgih',
    convention: SUM_OVER_8,
    twa: workplaceLimit('acgih-tlv'),
    excursion: workplaceLimit('acgih-excursion-never'),
  },
];

/** The lowest limit of each kind that any body of this table sets; sums are divided by 8 h. */
const STRICTEST: LimitProfile = {
  id: 'strictest',
  convention: SUM_OVER_8,
  twa: lowest('twa'),
  stel: lowest('stel'),
  excursion: lowest('excursion'),
  ceiling: lowest('ceiling'),
  idlh: lowest('idlh'),
};

function lowest(kind: LimitKind): PpmLimit | null {
  const set = BODIES.map((profile) => profile[kind]).filter((limit) => limit !== null);
  return set.reduce<PpmLimit | null>((low, next) => (low === null || next.ppm < low.ppm ? next : low), null);
}

/** The profile of a body, or the strictest of all. */
export function limitProfile(id: ProfileId): LimitProfile {
  return BODIES.find((profile) => profile.id === id) ?? STRICTEST;
}

/** The shop's own limits, ppm; what is left out is not judged. */
export interface CustomLimits {
  readonly twaPpm?: number;
  readonly stelPpm?: number;
  readonly ceilingPpm?: number;
  readonly idlhPpm?: number;
  /** Who set them, shown beside every number. */
  readonly source: string;
}

/**
 * A profile of the shop's own limits; days are summed and divided by 8 h.
 *
 * @throws PhysicsError `bad-input` when none is given, or `out-of-range` for a limit outside 1 to 10 000 ppm
 */
export function customProfile(limits: CustomLimits): LimitProfile {
  const { twaPpm, stelPpm, ceilingPpm, idlhPpm, source } = limits;
  if ([twaPpm, stelPpm, ceilingPpm, idlhPpm].every((ppm) => ppm === undefined)) {
    throw new PhysicsError('bad-input', 'a custom profile needs at least one limit', { source });
  }
  return {
    ...NONE,
    id: 'custom',
    convention: SUM_OVER_8,
    twa: customLimit('twa', twaPpm, 8 * HOUR_SECONDS, source),
    stel: customLimit('stel', stelPpm, 15 * MINUTE_SECONDS, source),
    ceiling: customLimit('ceiling', ceilingPpm, INSTANT, source),
    idlh: customLimit('idlh', idlhPpm, INSTANT, source),
  };
}

function customLimit(
  use: LimitKind,
  ppm: number | undefined,
  seconds: number,
  source: string,
): PpmLimit | null {
  if (ppm === undefined) return null;
  return {
    id: `custom-${use}`,
    body: source,
    use,
    ppm: requireRange(`Custom limit (${use})`, ppm, 1, 10_000, 'ppm'),
    milligramsPerCubicMetre: null,
    averagingSeconds: seconds,
    edition: 'set by the shop',
    force: 'guideline',
    from: { standing: 'common-practice', source },
  };
}
