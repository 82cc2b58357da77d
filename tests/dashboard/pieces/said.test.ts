import { describe, expect, it } from 'vitest';
import { saidOf, sectionSaid, steelSaid, titlesOf } from '../../../dashboard/pieces/said.ts';
import type { MagnetSeen } from '../../../hub/contract/observation.ts';
import { piece, seen } from './kit.ts';

const hardness = (...values: number[]) =>
  seen({ kind: 'hardness', scale: 'HRC', readings: values.map((value) => ({ value, position: '' })) });

const magnet = (more: Partial<MagnetSeen>) =>
  seen({
    kind: 'magnet',
    furnaceId: 'oven',
    channelId: 'c',
    readingAt: 0,
    // NIST SP 811 B.9: 770 °C = 1418 °F.
    measuredCelsius: 770,
    expected: {
      celsius: 760,
      lowCelsius: 750,
      highCelsius: 765,
      cause: 'curie',
      formula: 'f',
      standing: 'published',
      source: 's',
    },
    differenceCelsius: 10,
    agrees: 'above',
    ...more,
  });

describe('what was seen, in a sentence', () => {
  it('says a single hardness as it was read, without a mean of one', () => {
    expect(saidOf(hardness(62.5), 'Cel')).toBe('62.5 HRC');
  });

  it('says every reading of several, with their mean and what they lie between', () => {
    // (60 + 61 + 62.5) / 3 = 61.166…
    expect(saidOf(hardness(60, 61, 62.5), 'Cel')).toBe(
      '60, 61, 62.5 HRC: mean 61.2 HRC, from 60 to 62.5, 3 readings',
    );
  });

  it('names the place of a reading, a file and a crack', () => {
    const readings = [{ value: 45, position: 'tang' }];
    expect(saidOf(seen({ kind: 'hardness', scale: 'HRC', readings }), 'Cel')).toBe('45 (tang) HRC');
    expect(saidOf(seen({ kind: 'file', result: 'bites', position: 'tip' }), 'Cel')).toBe(
      'File bites: soft, tip',
    );
    expect(saidOf(seen({ kind: 'crack', found: false, position: '' }), 'Cel')).toBe('No crack found');
  });

  it('holds a magnet against what was expected, in the unit of the person', () => {
    expect(saidOf(magnet({}), 'Cel')).toBe(
      'Furnace at 770 °C, expected near 760 °C: above what was expected, 10 °C apart',
    );
    // A difference scales and does not shift: 10 K are 18 °F.
    expect(saidOf(magnet({}), '[degF]')).toContain('Furnace at 1418 °F');
    expect(saidOf(magnet({}), '[degF]')).toContain('18 °F apart');
  });

  it('claims nothing of a magnet where nothing was read or nothing is known', () => {
    expect(saidOf(magnet({ measuredCelsius: null, agrees: 'not-known' }), 'Cel')).toBe(
      'No fresh reading of the furnace',
    );
    expect(saidOf(magnet({ expected: null, agrees: 'not-known' }), 'Cel')).toContain('is not known');
  });

  it('says over which length a piece is out of straight', () => {
    expect(saidOf(seen({ kind: 'straightness', outMm: 0.4, overMm: 200 }), 'Cel')).toBe(
      '0.4 mm out of straight over 200 mm',
    );
    expect(saidOf(seen({ kind: 'straightness', outMm: 1, overMm: null }), 'Cel')).not.toContain('over');
  });
});

describe('what a piece is made of', () => {
  const titles = titlesOf([
    {
      id: '1045',
      title: '1045',
      names: [
        { name: 'C45E', system: 'EN', same: true },
        { name: 'S45C', system: 'JIS', same: false },
      ] as never,
    },
  ]);

  it('is said with the name of the shop and the grade it is taken for', () => {
    const spring = piece({ steel: { grade: '5160', title: 'leaf spring' } });
    expect(steelSaid(spring)).toBe('leaf spring (5160)');
    expect(steelSaid(piece())).toBe('1084');
  });

  it('knows a grade by its other names, but not by a near equivalent', () => {
    expect(steelSaid(piece({ steel: { grade: 'C45E' } }), titles)).toBe('1045');
    expect(steelSaid(piece({ steel: { grade: 'S45C' } }), titles)).toBe('S45C');
  });

  it('has a section in words', () => {
    expect(sectionSaid(piece().section)).toBe('3 mm, plate or flat bar');
  });
});
