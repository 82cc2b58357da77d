import { describe, expect, it } from 'vitest';
import { PROBE_FAULTS, Probe, THERMOCOUPLE_TYPES, TOLERANCE_CLASSES } from '../../hub/contract/probe.ts';
import { ChannelDraft, ChannelPatch } from '../../hub/contract/shop.ts';
import type { ProbeFault } from '../../hub/physics/probe-faults.ts';
import { thermocoupleTypes } from '../../hub/physics/thermocouple.ts';
import { toleranceRows } from '../../hub/physics/thermocouple-tolerance-table.ts';

/** What is wrong with it, as `place: message`. */
function faultsOf(probe: unknown): string[] {
  const parsed = Probe.safeParse(probe);
  return parsed.success
    ? []
    : parsed.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
}

describe('what is said of a probe', () => {
  it('may be no more than its type', () => {
    expect(Probe.parse({ type: 'K' })).toEqual({
      type: 'K',
      tolerance: null,
      construction: null,
      millimetres: null,
      digitiserStepCelsius: null,
      correction: null,
      source: { kind: 'celsius' },
    });
  });

  it('is none for a new channel, and stays as it is in a change that does not name it', () => {
    const draft = ChannelDraft.parse({ node: 'n', name: 't', quantity: 'temperature' });
    expect(draft.probe).toBeNull();
    expect(ChannelPatch.parse({ label: 'Front' })).toEqual({ label: 'Front' });
    expect(ChannelPatch.parse({ probe: null })).toEqual({ probe: null });
  });

  it('speaks of the same types, classes and faults as the computations', () => {
    expect(THERMOCOUPLE_TYPES).toEqual(thermocoupleTypes);
    expect(new Set(toleranceRows.map((row) => row.class))).toEqual(new Set(TOLERANCE_CLASSES));
    const known: readonly ProbeFault[] = PROBE_FAULTS;
    expect(known).toHaveLength(6);
  });

  it.each([
    [{}, 'type: the letter on the probe, one of B, E, J, K, N, R, S, T'],
    [{ type: 'k' }, 'type: the letter on the probe, one of B, E, J, K, N, R, S, T'],
    [
      { type: 'K', tolerance: 'class 1' },
      'tolerance: one of iec-1, iec-2, iec-3, astm-standard, astm-special, or null when the class is not known',
    ],
    [{ type: 'K', millimetres: 0 }, 'millimetres: a diameter in millimetres, above 0'],
    [
      { type: 'K', digitiserStepCelsius: 0 },
      'digitiserStepCelsius: a step in °C, above 0; null when not known',
    ],
    [
      { type: 'K', correction: { offsetCelsius: 1, standardUncertaintyCelsius: -1 } },
      'correction.standardUncertaintyCelsius: a standard uncertainty is not below 0',
    ],
    [
      { type: 'K', source: { kind: 'emf', emfChannel: 'tc', coldJunctionChannel: 'tc' } },
      'source.coldJunctionChannel: the emf and the temperature of the terminals must be two channels',
    ],
    [
      {
        type: 'K',
        source: { kind: 'straight-line', slopeMillivoltsPerCelsius: 41.276, coldJunctionChannel: 'j' },
      },
      'source.slopeMillivoltsPerCelsius: a slope in millivolts (not microvolts) per °C: 0.041276 for type K',
    ],
  ])('is refused with what to write instead: %j', (probe, fault) => {
    expect(faultsOf(probe)).toEqual([fault]);
  });

  it('is refused when it names what there is no place for', () => {
    expect(faultsOf({ type: 'K', wire: 'thick' })).toHaveLength(1);
    expect(faultsOf({ type: 'K', source: { kind: 'guess' } })).toHaveLength(1);
  });
});
