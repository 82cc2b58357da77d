import { describe, expect, it } from 'vitest';
import { PLACES, type Place, placeOf, placesUnder } from '../../dashboard/places.ts';

const steel: Place = {
  route: { view: 'steel', name: '' },
  word: 'Steel',
  views: ['steel', 'wall'],
  under: [
    { route: { view: 'steel', name: '' }, word: 'Steel', views: ['steel'] },
    { route: { view: 'wall' }, word: 'Other', views: ['wall'] },
  ],
};
const setup: Place = {
  route: { view: 'setup', section: '' },
  word: 'Setup',
  views: ['setup'],
  under: [{ route: { view: 'setup', section: '' }, word: 'Setup', views: ['setup'] }],
};

describe('the places of the top line', () => {
  it('know which of them a page belongs to', () => {
    expect(placeOf('firing')?.word).toBe('Firings');
    expect(placeOf('steel')?.word).toBe('Steel');
    expect(placeOf('unknown')).toBeUndefined();
  });

  it('are each reached by their own view, and no view belongs to two', () => {
    for (const place of PLACES) expect(placeOf(place.route.view)).toBe(place);
    const views = PLACES.flatMap((place) => place.views);
    expect(new Set(views).size).toBe(views.length);
  });

  it('hold every view of the places under them', () => {
    for (const { views, under } of PLACES) {
      for (const sub of under) expect(views).toEqual(expect.arrayContaining([...sub.views]));
    }
  });

  it('show a second line only where there is something to choose between', () => {
    const places = [steel, setup];
    expect(placesUnder('wall', places).map(({ word }) => word)).toEqual(['Steel', 'Other']);
    expect(placesUnder('setup', places)).toEqual([]);
    expect(placesUnder('unknown', places)).toEqual([]);
  });
});
