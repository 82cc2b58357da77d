import { describe, expect, it } from 'vitest';
import { sortAlarms } from '../../../dashboard/alarms/sorted.ts';
import { alarm } from '../mock-shop.ts';

const forge = { params: { furnaceId: 'forge' } };

describe('what stands, sorted', () => {
  it('puts what follows from the same cause under it, and an air alarm never under another', () => {
    const gas = alarm('gas-lost', { ...forge, priority: 'danger' });
    const stalled = alarm('soak-stalled', { ...forge, priority: 'warning' });
    const air = alarm('unsafe-air-second', { dangerToLife: true });
    const { groups } = sortAlarms([stalled, gas, air]);
    expect(groups.map(({ lead }) => lead.kind)).toEqual(['unsafe-air-second', 'gas-lost']);
    expect(groups[1]?.followers.map(({ kind }) => kind)).toEqual(['soak-stalled']);
  });

  it('shows each open alarm exactly once, set aside or not', () => {
    const all = [
      alarm('soak-stalled', { state: 'shelved' }),
      alarm('ramp-stalled', { state: 'suppressed' }),
      alarm('overshoot', { state: 'out-of-service' }),
      alarm('gas-lost', { state: 'returned-unacknowledged', active: false }),
      alarm('probe-fault', { state: 'latched-acknowledged', active: false }),
    ];
    const { groups, shelved, outOfService, suppressed } = sortAlarms(all);
    const grouped = groups.flatMap(({ lead, followers }) => [lead, ...followers]);
    const shown = [...grouped, ...shelved, ...outOfService, ...suppressed];
    expect(shown).toHaveLength(all.length);
    expect(new Set(shown)).toEqual(new Set(all));
    expect(grouped).toHaveLength(2);
  });
});
