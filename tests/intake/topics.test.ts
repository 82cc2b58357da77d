import { describe, expect, test } from 'vitest';
import { filterMatches, firstWildcard, topicFilter, topicKind } from '../../hub/intake/topics.ts';

describe('our own topics', () => {
  test.each([
    ['soakwatch/forge-1/readings', { kind: 'readings', node: 'forge-1' }],
    ['soakwatch/forge-1/status', { kind: 'status', node: 'forge-1' }],
    ['soakwatch/forge-1/readings/x', { kind: 'unknown', node: 'forge-1' }],
    ['soakwatch/forge-1/reading', { kind: 'unknown', node: 'forge-1' }],
    ['soakwatch/forge-1', { kind: 'unknown', node: 'forge-1' }],
    ['soakwatch/a b/zzz', { kind: 'unknown', node: '' }],
    ['soakwatch/', { kind: 'unknown', node: '' }],
    ['soakwatch', { kind: 'foreign' }],
    ['soakwatchful/x/readings', { kind: 'foreign' }],
    ['/soakwatch/x/readings', { kind: 'foreign' }],
    ['', { kind: 'foreign' }],
  ])('%s', (topic, kind) => {
    expect(topicKind(topic)).toEqual(kind);
  });
});

/** MQTT 3.1.1 section 4.7.1.3 gives the +/finance examples; 4.7.2 the rule for $. */
describe('a filter with +', () => {
  test.each([
    ['sport/tennis/+', 'sport/tennis/player1', true],
    ['sport/tennis/+', 'sport/tennis/player1/ranking', false],
    ['sport/+', 'sport', false],
    ['sport/+', 'sport/', true],
    ['+/+', '/finance', true],
    ['/+', '/finance', true],
    ['+', '/finance', false],
    ['+/monitor/Clients', '$SYS/monitor/Clients', false],
    ['$SYS/monitor/+', '$SYS/monitor/Clients', true],
    ['oven/+/temp', 'oven/2/temp', true],
    ['oven/+/temp', 'oven/2/Temp', false],
  ])('%s and %s: %s', (filter, topic, matches) => {
    expect(filterMatches(topicFilter(filter), topic)).toBe(matches);
  });

  test('its first + names the node', () => {
    expect(firstWildcard(topicFilter('shop/+/temp/+'), 'shop/oven2/temp/a')).toBe('oven2');
    expect(firstWildcard(topicFilter('shop/oven/temp'), 'shop/oven/temp')).toBeNull();
  });
});
