import { describe, expect, it } from 'vitest';
import { ageOf } from '../../../dashboard/air/age.ts';
import {
  brokenText,
  byStanding,
  type Fall,
  offeredTags,
  rateText,
  sourceLitres,
  tagsText,
  toggled,
  waitText,
} from '../../../dashboard/air/ventilation.ts';

function fall(tags: Fall['tags'], from: number, held: boolean | null = true): Fall {
  return {
    channel: 'co',
    gas: 'carbon-monoxide',
    from,
    to: from + 1000,
    end: 'arrived',
    tags,
    backgroundPpm: 2,
    fit: {
      airChangesPerHour: 4.2,
      standardError: 0.15,
      low: 3.9,
      high: 4.5,
      confidence: 0.95,
      count: 12,
      leftOut: 0,
      seconds: 1800,
      conditionsHeld: held,
      conditions: [
        { code: 'source-off', held: true, found: null, wanted: null, reason: '' },
        { code: 'enough-fall', held, found: null, wanted: null, reason: '' },
      ],
    },
  };
}

describe('air changes as people read them', () => {
  it('have no more figures than their interval allows', () => {
    // Particle Data Group: an uncertainty of 0.32 keeps two of its figures, one of 0.64 keeps one (from memory).
    expect(rateText({ airChangesPerHour: 4.2345, low: 3.9123, high: 4.5567 })).toEqual({
      value: '4.23',
      low: '3.91',
      high: '4.56',
    });
    expect(rateText({ airChangesPerHour: 4.2345, low: 3.5945, high: 4.8745 }).value).toBe('4.2');
    expect(rateText({ airChangesPerHour: 0.12, low: -0.3, high: 0.5 }).low).toBe('-0.3');
  });

  it('say what broke a fall, and nothing of one that holds', () => {
    expect(brokenText(fall([], 0, false))).toBe('it fell too little');
    expect(brokenText(fall([], 0))).toBe('');
    expect(brokenText(fall([], 0, null))).toBe('');
  });

  it('stand by how the shop stood: those that count first, the newest of them first', () => {
    const falls = [fall(['fan on'], 1), fall(null, 9), fall([], 2, false), fall([], 1), fall([], 3)];
    expect(byStanding(falls).map(({ tags, from }) => [tagsText(tags), from])).toEqual([
      ['All shut', 3],
      ['All shut', 1],
      ['All shut', 2],
      ['fan on', 1],
      ['nobody said', 9],
    ]);
  });
});

describe('the wait until below the limit', () => {
  it('is a range, and open where the air may not change at all', () => {
    expect(waitText({ low: 600, value: 700, high: 2100 })).toBe('10 to 35 min');
    expect(waitText({ low: 600, value: 700, high: null })).toBe('10 min at the soonest, no end known');
  });

  it('is no wait when the level is not above the limit, and says no more than that', () => {
    expect(waitText({ low: 0, value: 0, high: 0 })).toBe('The reading is not above it now.');
  });
});

describe('the highest source that the room can carry', () => {
  it('is told in litres an hour with two figures', () => {
    // 60 m³ at 4 changes an hour carry 60 × 4 × 20e-6 m³/h = 4.8 L/h at 20 ppm, mixed perfectly (arithmetic).
    expect(sourceLitres({ low: 0.0016, value: 0.0016, high: 60 * 4 * 20e-6 })).toEqual({
      low: '1.6',
      high: '4.8',
    });
    expect(sourceLitres({ low: 0.0123, value: 0.0123, high: null })).toEqual({ low: '12', high: null });
  });
});

describe('how the shop stands', () => {
  it('offers the usual words and the shop’s own, each once', () => {
    expect(offeredTags(['fan on', 'big door'], ['skylight'])).toEqual([
      'big door',
      'door open',
      'fan on',
      'skylight',
    ]);
  });

  it('turns one on and off and leaves the others', () => {
    expect(toggled(null, 'fan on')).toEqual(['fan on']);
    expect(toggled(['door open', 'fan on'], 'fan on')).toEqual(['door open']);
  });

  it('tells all shut from nobody having said', () => {
    expect(tagsText([])).toBe('All shut');
    expect(tagsText(null)).toBe('nobody said');
  });
});

describe('an answer about the air', () => {
  it('is old after three questions without another', () => {
    expect(ageOf({ now: 1_000_000 }, 1_030_000)).toBe('fresh');
    expect(ageOf({ now: 1_000_000 }, 1_030_001)).toBe('old');
    expect(ageOf(null, 0)).toBe('none');
  });
});
