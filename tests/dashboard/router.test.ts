import { describe, expect, it } from 'vitest';
import { hrefTo, parseRoute, type Route } from '../../dashboard/router.ts';

describe('the address of a page', () => {
  const routes: Route[] = [
    { view: 'wall' },
    { view: 'firings' },
    { view: 'firing', id: 'a/b c%' },
    { view: 'compare', schedule: '', ids: '' },
    { view: 'compare', schedule: 's 1', ids: 'a,b' },
    { view: 'batches', schedule: '' },
    { view: 'batches', schedule: 's/1' },
    { view: 'schedules' },
    { view: 'schedule', id: 'new' },
    { view: 'steel', name: '' },
    { view: 'steel', name: '42CrMo4 / 4140' },
    { view: 'bench' },
    { view: 'pieces' },
    { view: 'piece', id: 'a b' },
    { view: 'piece-by-mark', mark: 'HC-07' },
    { view: 'piece-label', id: 'a' },
    { view: 'routes' },
    { view: 'route', id: 'new' },
    { view: 'air' },
    { view: 'alarms' },
    { view: 'alarm-review' },
    { view: 'alarm-journal' },
    { view: 'alarm-definitions' },
    { view: 'setup', section: '' },
    { view: 'setup', section: 'nodes' },
  ];

  it('leads back to the page it was made for', () => {
    for (const route of routes) expect(parseRoute(hrefTo(route))).toEqual(route);
  });

  it('opens the wall when there is nothing in it', () => {
    expect(parseRoute('')).toEqual({ view: 'wall' });
    expect(parseRoute('#')).toEqual({ view: 'wall' });
    expect(parseRoute('#/')).toEqual({ view: 'wall' });
  });

  it('leaves what stands behind a question mark to the page', () => {
    expect(parseRoute('#/firings?q=chisel&verdict=met')).toEqual({ view: 'firings' });
    expect(hrefTo({ view: 'compare', schedule: 's', ids: 'a,b' })).toBe('#/compare/s/a,b');
    expect(parseRoute('#/compare/s/a/b').view).toBe('unknown');
  });

  it('does not guess at what it does not know, nor choke on a stray percent sign', () => {
    expect(parseRoute('#/cupboard')).toEqual({ view: 'unknown', path: 'cupboard' });
    expect(parseRoute('#/alarms/toString').view).toBe('unknown');
    expect(parseRoute('#/pieces/by-mark').view).toBe('unknown');
    expect(parseRoute('#/pieces/1/2').view).toBe('unknown');
    expect(parseRoute('#/pieces/by-mark/A/B').view).toBe('unknown');
    expect(parseRoute('#/firings/1/2')).toEqual({ view: 'unknown', path: 'firings/1/2' });
    expect(parseRoute('#/firings/50%')).toEqual({ view: 'firing', id: '50%' });
  });
});
