import { effect, signal } from '@preact/signals';
import type { Feed } from '../feed/feed.ts';
import type { ShellSound } from '../shell.ts';
import { soundingOf } from './alarm-order.ts';
import type { Voice } from './sound.ts';
import type { SoundKind } from './sound-pattern.ts';

/** Lets `voice` sound what the feed asks for, on every page, for as long as the page lives. */
export function startSound(feed: Heard, voice: Omit<Voice, 'stop'>): ShellSound {
  const lossSilenced = signal(false);
  effect(() => {
    if (!isLost(feed)) lossSilenced.value = false;
  });
  effect(() => voice.play(soundWanted(feed, lossSilenced.value)));
  return {
    blocked: voice.blocked,
    lossSilenced,
    silenceLoss: () => {
      lossSilenced.value = true;
    },
    tryOut: voice.tryOut,
  };
}

type Heard = Pick<Feed, 'blind' | 'judging' | 'state'>;

/** Blindness sounds instead of any alarm: an alarm that was on when the connection was lost may be over or not. */
export function soundWanted(feed: Heard, lossSilenced: boolean): SoundKind | null {
  if (isLost(feed)) return lossSilenced ? null : 'blind';
  return soundingOf(feed.state.value?.alarms.values() ?? []);
}

function isLost({ blind, judging }: Heard): boolean {
  return blind.value || !judging.value;
}
