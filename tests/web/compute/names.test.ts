import { expect, it } from 'vitest';
import { WORK_RATES } from '../../../hub/contract/compute/carboxyhaemoglobin.ts';
import { ALARM_STANDARDS, LIMIT_PROFILES, LimitKind } from '../../../hub/contract/compute/exposure.ts';
import { QUENCHES } from '../../../hub/contract/compute/hardenability.ts';
import { MEDIA } from '../../../hub/contract/compute/piece.ts';
import { ELEMENTS } from '../../../hub/contract/compute/steel-choice.ts';
import { ThermocoupleType, ToleranceClass } from '../../../hub/contract/compute/thermocouple.ts';
import { DECAY_CONDITIONS } from '../../../hub/contract/compute/ventilation.ts';
import { PROBLEM_CODES } from '../../../hub/contract/problem.ts';
import { WORK_RATES as KNOWN_WORK_RATES } from '../../../hub/physics/carbon-monoxide/carboxyhaemoglobin-constants.ts';
import { LIMIT_KINDS, PROFILE_IDS } from '../../../hub/physics/carbon-monoxide/limits.ts';
import { ALARM_STANDARDS as KNOWN_STANDARDS } from '../../../hub/physics/carbon-monoxide/response-windows.ts';
import type { PhysicsErrorCode } from '../../../hub/physics/errors.ts';
import { MEDIUM_IDS } from '../../../hub/physics/heat/media.ts';
import { ELEMENTS as KNOWN_ELEMENTS } from '../../../hub/physics/steel/composition.ts';
import { QUENCH_SEVERITY_PER_INCH } from '../../../hub/physics/steel/through-hardening.ts';
import { thermocoupleTypes } from '../../../hub/physics/thermocouple.ts';
import { toleranceRows } from '../../../hub/physics/thermocouple-tolerance-table.ts';
import { DECAY_CONDITIONS as KNOWN_CONDITIONS } from '../../../hub/physics/ventilation/decay-conditions.ts';

/** The contract may not import the physics (both stand on the lowest floor), so their lists are held equal here. */
it.each([
  ['elements', ELEMENTS, KNOWN_ELEMENTS],
  ['cooling media', MEDIA, MEDIUM_IDS],
  ['quenches', QUENCHES, Object.keys(QUENCH_SEVERITY_PER_INCH)],
  ['thermocouple types', ThermocoupleType.options, thermocoupleTypes],
  ['tolerance classes', ToleranceClass.options, [...new Set(toleranceRows.map((row) => row.class))]],
  ['limit profiles', LIMIT_PROFILES, PROFILE_IDS],
  ['limit kinds', LimitKind.options, LIMIT_KINDS],
  ['alarm standards', ALARM_STANDARDS, KNOWN_STANDARDS],
  ['work rates', WORK_RATES, KNOWN_WORK_RATES],
  ['decay conditions', DECAY_CONDITIONS, KNOWN_CONDITIONS],
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
