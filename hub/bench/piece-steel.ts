import type { PieceSteel } from '../contract/piece.ts';
import { PhysicsError } from '../physics/errors.ts';
import { findGrade, GRADES } from '../physics/steel/catalogue.ts';
import { requireComposition } from '../physics/steel/composition.ts';
import { ownSteel, type Steel, steelOfGrade } from '../physics/steel/own-steel.ts';

/**
 * The steel of a piece from the catalogue and its composition: a grade at its nominal composition, or what its
 * composition says. The shop's own name for it is its title.
 *
 * @throws PhysicsError `bad-input` for a grade that is not in the catalogue; as `ownSteel` for the composition
 */
export function catalogueSteel({ grade: name, title, composition }: PieceSteel): Steel {
  const grade = name === null ? null : findGrade(name);
  if (name !== null && grade === null) {
    const known = GRADES.map((each) => each.id).join(', ');
    throw new PhysicsError('bad-input', `there is no grade ${name} in the catalogue; it holds ${known}`, {});
  }
  if (composition === null) {
    if (grade === null) throw new PhysicsError('bad-input', 'this steel has no grade and no composition', {});
    return titled(steelOfGrade(grade), title);
  }
  const said = grade === null ? 'By composition' : `${grade.id}, by its composition`;
  const own = { id: grade?.id ?? '', title: said, composition: requireComposition(composition) };
  return titled(ownSteel(grade === null ? own : { ...own, grade }), title);
}

function titled(steel: Steel, title: string): Steel {
  return title === '' ? steel : { ...steel, title: `${title} (${steel.title})` };
}
