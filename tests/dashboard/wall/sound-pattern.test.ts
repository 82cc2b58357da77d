import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { applyMessage } from '../../../dashboard/feed/state.ts';
import { SOUND_PATTERNS, type SoundKind, type SoundPattern } from '../../../dashboard/wall/sound-pattern.ts';
import { soundWanted, startSound } from '../../../dashboard/wall/start-sound.ts';
import type { Alarm } from '../../../hub/contract/alarm.ts';
import { alarm, snapshot } from '../mock-shop.ts';

const KINDS = Object.keys(SOUND_PATTERNS) as SoundKind[];

/** Pulses a second inside one group of the pattern. */
function pulseRate({ pulses }: SoundPattern): number {
  const [first, second] = pulses;
  if (!first || !second) throw new Error('a pattern has two pulses at least');
  return 1 / (second.atSeconds - first.atSeconds);
}

describe.each(KINDS)('the %s pattern', (kind) => {
  const pattern = SOUND_PATTERNS[kind];

  it('keeps its energy between 500 and 2500 Hz (ISO 7731, secondary)', () => {
    const partials = pattern.pulses.flatMap(({ hertz }) =>
      pattern.harmonics.map(({ multiple }) => hertz * multiple),
    );
    expect(Math.min(...partials)).toBeGreaterThanOrEqual(500);
    expect(Math.max(...partials)).toBeLessThanOrEqual(2500);
  });

  it('rises within 10 to 20 % of a pulse (IEC 60601-1-8, secondary) and has room to fall', () => {
    for (const { seconds } of pattern.pulses) {
      expect(pattern.riseSeconds / seconds).toBeGreaterThanOrEqual(0.1);
      expect(pattern.riseSeconds / seconds).toBeLessThanOrEqual(0.2);
    }
  });

  it('pulses between 1 and 8 times a second (NUREG-0700 rev 2, 1.3.11-17)', () => {
    expect(pulseRate(pattern)).toBeGreaterThanOrEqual(1);
    expect(pulseRate(pattern)).toBeLessThanOrEqual(8);
  });

  it('is over before it begins again, and no pulse lies over the next', () => {
    const ends = pattern.pulses.map(({ atSeconds, seconds }) => atSeconds + seconds);
    expect(Math.max(...ends)).toBeLessThan(pattern.everySeconds);
    for (const [index, end] of ends.entries()) {
      const next = pattern.pulses[index + 1];
      if (next) expect(end).toBeLessThanOrEqual(next.atSeconds);
    }
  });
});

describe('the patterns together', () => {
  it('cannot be taken for each other: their rates are a factor of two apart', () => {
    const rates = KINDS.map((kind) => pulseRate(SOUND_PATTERNS[kind])).sort((a, b) => a - b);
    expect(rates).toHaveLength(3);
    for (const [index, rate] of rates.entries()) {
      const next = rates[index + 1];
      if (next !== undefined) expect(next / rate).toBeGreaterThanOrEqual(2);
    }
  });

  it('come back sooner the graver they are', () => {
    expect(SOUND_PATTERNS.danger.everySeconds).toBeLessThan(SOUND_PATTERNS.warning.everySeconds);
  });
});

describe('what the wall sounds', () => {
  const heard = (alarms: Alarm[], blind = false, judging = true) => ({
    blind: signal(blind),
    judging: signal(judging),
    state: signal(applyMessage(null, snapshot({ alarms })).state),
  });

  it('is the loss of sight instead of any alarm, until silenced', () => {
    const lost = heard([alarm('overshoot')], true);
    expect(soundWanted(lost, false)).toBe('blind');
    expect(soundWanted(lost, true)).toBeNull();
    expect(soundWanted(heard([alarm('overshoot')], false, false), false)).toBe('blind');
  });

  it('follows the alarms while it sees', () => {
    expect(soundWanted(heard([alarm('overshoot')]), true)).toBe('danger');
    expect(soundWanted(heard([]), false)).toBeNull();
  });

  it('forgets that it was silenced once it sees again', () => {
    const feed = heard([], true);
    const played: (SoundKind | null)[] = [];
    const voice = {
      blocked: signal(false),
      play: (kind: SoundKind | null) => {
        played.push(kind);
      },
      tryOut: () => undefined,
    };
    const sound = startSound(feed, voice);
    sound.silenceLoss();
    feed.blind.value = false;
    feed.blind.value = true;
    expect(played.at(-1)).toBe('blind');
    expect(sound.lossSilenced.value).toBe(false);
  });
});
