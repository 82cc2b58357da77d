import { describe, expect, it } from 'vitest';
import type { FiringJudgement } from '../../hub/contract/firing.ts';
import type { LoadPiece } from '../../hub/contract/load.ts';
import { judgeFromArchive } from '../../hub/watch/firing-track.ts';
import { runScenario, type Scenario } from './scenario.ts';

/** The same firing of the simulated shop, judged with what lay in the furnace. The smith went by the air. */

function piece(mark: string, thicknessMm: number): LoadPiece {
  return {
    pieceId: mark,
    mark,
    title: mark,
    steel: { id: null, title: '1084', composition: { C: 0.84, Mn: 0.75, Si: 0.22 } },
    section: { shape: 'bar', thicknessMm, massKilograms: null },
    routeStepId: null,
    step: 'full-anneal',
  };
}

function judgedWith({ shop, firing }: Scenario, pieces: LoadPiece[]): FiringJudgement {
  const { archive } = shop;
  const row = archive.firing(firing.id);
  const furnace = archive.furnace(firing.furnaceId);
  if (row === null || furnace === null) throw new Error('the scenario left no firing');
  const parts = {
    row: () => ({ ...row, pieces }),
    furnace,
    channels: archive.channels(),
    settings: archive.shop().settings,
    readings: archive.readings,
  };
  return judgeFromArchive(parts, row.endedAt ?? row.startedAt);
}

describe('a good anneal by the air', () => {
  const scenario = runScenario({ seed: 3, minutes: 75 });

  it('is met while nobody said what lay in it', () => {
    expect(scenario.firing.judgement).toMatchObject({
      verdict: 'met',
      soakClockOn: 'coldest-thermocouple',
      judgeVersion: 'firing-3',
    });
  });

  it('is not met for an anvil block of 120 mm: its core had not the time that the air had', () => {
    const judged = judgedWith(scenario, [piece('A-120', 120)]);
    const [, soaking] = judged.segments;
    expect(judged.verdict).toBe('not-met');
    expect(soaking?.reasons.map(({ code }) => code)).toContain('core-cold');
    expect(soaking?.soakSecondsAir).toBeGreaterThanOrEqual(900);
    expect(soaking?.soakSecondsCore).toBe(0);
  });

  it('judged twice from the archive is the same to the last figure, pieces and events with it', () => {
    const load = [piece('A-40', 40), piece('K-4', 4)];
    const once = judgedWith(scenario, load);
    expect(judgedWith(scenario, load)).toEqual(once);
    expect(once.pieces.map(({ part }) => part)).toEqual(['slowest', 'quickest']);
  });
});
