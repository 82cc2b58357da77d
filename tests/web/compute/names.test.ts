import { expect, it } from 'vitest';
import { QUENCHES } from '../../../hub/contract/compute/hardenability.ts';
import { MEDIA } from '../../../hub/contract/compute/piece.ts';
import { ELEMENTS } from '../../../hub/contract/compute/steel-choice.ts';
import { ThermocoupleType, ToleranceClass } from '../../../hub/contract/compute/thermocouple.ts';
import { PROBLEM_CODES } from '../../../hub/contract/problem.ts';
import type { PhysicsErrorCode } from '../../../hub/physics/errors.ts';
import { MEDIUM_IDS } from '../../../hub/physics/heat/media.ts';
import { ELEMENTS as KNOWN_ELEMENTS } from '../../../hub/physics/steel/composition.ts';
import { QUENCH_SEVERITY_PER_INCH } from '../../../hub/physics/steel/through-hardening.ts';
import { thermocoupleTypes } from '../../../hub/physics/thermocouple.ts';
import { toleranceRows } from '../../../hub/physics/thermocouple-tolerance-table.ts';

/** The contract may not import the physics (both stand on the lowest floor), so their lists are held equal here. */
it.each([
  ['elements', ELEMENTS, KNOWN_ELEMENTS],
  ['cooling media', MEDIA, MEDIUM_IDS],
  ['quenches', QUENCHES, Object.keys(QUENCH_SEVERITY_PER_INCH)],
  ['thermocouple types', ThermocoupleType.options, thermocoupleTypes],
  ['tolerance classes', ToleranceClass.options, [...new Set(toleranceRows.map((row) => row.class))]],
])('the contract names the same %s as the physics', (_what, named, known) => {
  expect(new Set<string>(named)).toEqual(new Set<string>(known));
  expect(named).toHaveLength(known.length);
});

it('has a problem for every refusal of the physics', () => {
  const codes: Record<PhysicsErrorCode, 422> = {
    'out-of-range': 422,
    'not-applicable': 422,
    'bad-input': 422,
    'no-solution': 422,
  };
  expect(PROBLEM_CODES).toMatchObject(codes);
});
