import type { OwnSteelStore } from '../archive/own-steel-types.ts';
import type { Composition } from '../contract/compute/steel-choice.ts';
import type { MillCertificate, OwnSteel, OwnWindow } from '../contract/own-steel.ts';
import { findGrade, GRADES, steelNameKey } from '../physics/steel/catalogue.ts';
import { requireComposition } from '../physics/steel/composition.ts';
import type { Grade, StepWindow } from '../physics/steel/grade.ts';
import { ownSteel, type Steel, steelOfGrade } from '../physics/steel/own-steel.ts';
import { WatchError } from './errors.ts';

/** Every steel that this shop can name: the catalogue's grades and its own. */

/** Exactly one of `grade` and `own` is there. */
export type KnownSteel =
  | { readonly origin: 'catalogue'; readonly id: string; readonly grade: Grade; readonly own: null }
  | { readonly origin: 'own'; readonly id: string; readonly grade: null; readonly own: OwnSteel };

/** How a question names its steel; see `steelShape` of the contract. */
export interface SteelNamed {
  readonly steel?: string | undefined;
  readonly composition?: Composition | undefined;
  readonly certificate?: string | undefined;
}

export interface SteelBook {
  /** By any name of a grade, by the name of an own steel in use, or by id, those put away included. */
  find(name: string): KnownSteel | null;
  /** @throws WatchError `bad-input` that names what is known */
  need(name: string): KnownSteel;
  /**
   * The steel of a question, with the composition to compute with.
   *
   * @throws WatchError `bad-input`, `not-found`; PhysicsError for the composition
   */
  steelOf(question: SteelNamed): Steel;
  /** The steel that a composition is said to be a certificate of, if the question says so. */
  certifiedOf(question: SteelNamed): KnownSteel | null;
}

type Store = Pick<OwnSteelStore, 'ownSteels' | 'ownSteel' | 'certificate'>;

export function steelBook(store: Store): SteelBook {
  const find = (name: string): KnownSteel | null => {
    const grade = findGrade(name);
    if (grade !== null) return { origin: 'catalogue', id: grade.id, grade, own: null };
    const key = steelNameKey(name);
    const inUse = store.ownSteels().find((own) => !own.archived && steelNameKey(own.name) === key);
    const own = inUse ?? store.ownSteel(name);
    return own === null ? null : { origin: 'own', id: own.id, grade: null, own };
  };
  const need = (name: string): KnownSteel => {
    const found = find(name);
    if (found !== null) return found;
    const own = store.ownSteels().filter(({ archived }) => !archived);
    const known = [...GRADES.map(({ id }) => id), ...own.map((each) => each.name)].join(', ');
    throw new WatchError('bad-input', `there is no grade ${name} in the catalogue; it holds ${known}`);
  };
  const certificateOf = (id: string): MillCertificate => {
    const found = store.certificate(id);
    if (found !== null) return found;
    throw new WatchError('not-found', `there is no certificate with the id ${id}`);
  };
  return {
    find,
    need,
    steelOf({ steel, composition, certificate }) {
      if (certificate !== undefined) {
        const kept = certificateOf(certificate);
        const by = `by its certificate ${kept.heatNumber}`;
        return certified(need(kept.steel), kept.composition, by);
      }
      if (steel !== undefined) {
        const known = need(steel);
        return composition === undefined ? plain(known) : certified(known, composition, 'by its certificate');
      }
      if (composition === undefined)
        throw new WatchError('bad-input', 'name a steel or give its composition');
      return ownSteel({ id: '', title: 'By composition', composition: requireComposition(composition) });
    },
    certifiedOf({ steel, composition, certificate }) {
      if (certificate !== undefined) return need(certificateOf(certificate).steel);
      return steel !== undefined && composition !== undefined ? need(steel) : null;
    },
  };
}

function plain(known: KnownSteel): Steel {
  return known.origin === 'catalogue' ? steelOfGrade(known.grade) : steelOfOwn(known.own);
}

/** An own steel as the science takes it; @throws PhysicsError for a composition that it refuses. */
export function steelOfOwn({
  id,
  name,
  composition,
  windows,
}: Pick<OwnSteel, 'id' | 'name' | 'composition' | 'windows'>): Steel {
  return ownSteel({
    id,
    title: name,
    composition: requireComposition(composition),
    windows: windows.map(windowOf),
  });
}

function certified(known: KnownSteel, composition: Composition, by: string): Steel {
  if (known.origin === 'catalogue') {
    const { grade } = known;
    const title = `${grade.id}, ${by}`;
    return ownSteel({ id: grade.id, title, composition: requireComposition(composition), grade });
  }
  return steelOfOwn({ ...known.own, name: `${known.own.name}, ${by}`, composition });
}

/** A maker's sheet that somebody here has read: as good as a published row, second-hand. */
const STATED_UNCERTAINTY_CELSIUS = 10;

function windowOf(window: OwnWindow): StepWindow {
  const { step, lowCelsius, highCelsius, from, maxCoolingCelsiusPerHour, coolToCelsius, note } = window;
  return {
    step,
    lowCelsius,
    highCelsius,
    uncertaintyCelsius: STATED_UNCERTAINTY_CELSIUS,
    from: { standing: 'published-secondary', source: `${from}, as entered in this shop` },
    ...(maxCoolingCelsiusPerHour === null ? {} : { maxCoolingCelsiusPerHour }),
    ...(coolToCelsius === null ? {} : { coolToCelsius }),
    ...(note === '' ? {} : { note }),
  };
}
