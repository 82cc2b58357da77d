import { NodeName } from '../contract/shop.ts';

/** What a topic is to the hub. */
export type TopicKind =
  | { readonly kind: 'readings'; readonly node: string }
  | { readonly kind: 'status'; readonly node: string }
  /** Under our own prefix and still none of ours. `node` is empty when no node can be meant. */
  | { readonly kind: 'unknown'; readonly node: string }
  | { readonly kind: 'foreign' };

const PREFIX = 'soakwatch';

/** The native topics as MQTT subscription filters. */
export const NATIVE_FILTERS: readonly string[] = [`${PREFIX}/+/readings`, `${PREFIX}/+/status`];

export function topicKind(topic: string): TopicKind {
  const [prefix, node = '', leaf, ...deeper] = topic.split('/');
  if (prefix !== PREFIX || topic === PREFIX) return { kind: 'foreign' };
  if (deeper.length === 0 && (leaf === 'readings' || leaf === 'status')) return { kind: leaf, node };
  return { kind: 'unknown', node: NodeName.safeParse(node).success ? node : '' };
}

/** A topic filter with `+` for one level (MQTT 3.1.1 section 4.7.1), taken apart once. */
export interface TopicFilter {
  readonly levels: readonly string[];
}

export function topicFilter(filter: string): TopicFilter {
  return { levels: filter.split('/') };
}

export function filterMatches({ levels }: TopicFilter, topic: string): boolean {
  const said = topic.split('/');
  if (said.length !== levels.length) return false;
  // [MQTT-4.7.2-1]: a filter that starts with a wildcard does not match topics that start with $.
  if (levels[0] === '+' && topic.startsWith('$')) return false;
  return levels.every((level, index) => level === '+' || level === said[index]);
}

/** The text of the topic at the filter's first `+`; null when the filter has none. */
export function firstWildcard({ levels }: TopicFilter, topic: string): string | null {
  const place = levels.indexOf('+');
  return place < 0 ? null : (topic.split('/')[place] ?? null);
}
