import { describe, expect, it } from 'vitest';
import { aboveEverText, aboveText, hoursText, trustText } from '../../../dashboard/words/probe-heat.ts';
import type { ChannelUncertainty, TimeAboveLimit } from '../../../hub/contract/probe.ts';

const ABOVE: TimeAboveLimit = {
  channel: 'c',
  limitCelsius: 1090,
  reason: null,
  hoursAbove: 1.26,
  hoursWatched: 340,
  peakCelsius: 1140,
  from: Date.UTC(2026, 0, 5, 12),
  to: Date.UTC(2026, 2, 1),
  complete: true,
};
const NONE = { ...ABOVE, limitCelsius: null, hoursAbove: null, reason: { code: 'no-size', message: '' } };

describe('hours above the limit of a probe in words', () => {
  it('are minutes below an hour, one decimal below ten, whole beyond', () => {
    expect([0.2, 1.26, 340].map(hoursText)).toEqual(['12 min', '1.3 h', '340 h']);
  });

  it('name the limit in the unit of the shop, and say never plainly', () => {
    expect(aboveText(ABOVE, 'Cel')).toBe('1.3 h above 1090 °C, the recommended limit of its size.');
    // NIST SP 811 B.9: 1090 °C = 1994 °F.
    expect(aboveText({ ...ABOVE, hoursAbove: 0 }, '[degF]')).toContain('Never above 1994 °F');
    expect(aboveText(NONE, 'Cel')).toBeNull();
  });

  it('tell over what they were counted, what hot wire does, and that more is to count', () => {
    expect(aboveEverText(ABOVE, 'Cel')).toBe(
      '1.3 h above 1090 °C, the recommended limit of its size. Counted over 340 h with readings since 5 Jan 2026. Hot wire drifts: compare it with another, or replace it.',
    );
    expect(aboveEverText({ ...ABOVE, hoursAbove: 0, complete: false }, 'Cel')).toMatch(
      /^Never.*more to count\.$/,
    );
    expect(aboveEverText({ ...ABOVE, hoursAbove: 0 }, 'Cel')).not.toContain('drifts');
  });

  it('stand behind the ± of a channel, and leave it alone without a limit', () => {
    const uncertainty = { text: '± 8.7 °C at 1000 °C.' } as ChannelUncertainty;
    expect(trustText({ uncertainty, above: ABOVE }, 'Cel')).toBe(
      '± 8.7 °C at 1000 °C. 1.3 h above 1090 °C, the recommended limit of its size.',
    );
    expect(trustText({ uncertainty, above: NONE }, 'Cel')).toBe('± 8.7 °C at 1000 °C.');
  });
});
