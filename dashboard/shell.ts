import type { ReadonlySignal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Api } from './api/client.ts';
import type { Feed } from './feed/feed.ts';
import type { SoundKind } from './wall/sound-pattern.ts';

/** What every view may use: the hub's answers, the live feed, the voice. */
export interface Shell {
  readonly api: Api;
  readonly feed: Feed;
  readonly sound: ShellSound;
}

export interface ShellSound {
  /** True while the browser lets nothing sound: it wants one touch first. */
  readonly blocked: ReadonlySignal<boolean>;
  /** Silences the loss of the connection, until it is lost again. Alarms fall silent by acknowledging. */
  readonly silenceLoss: () => void;
  readonly lossSilenced: ReadonlySignal<boolean>;
  /** Sounds a pattern once, to try the loudspeaker. */
  readonly tryOut: (kind: SoundKind) => void;
}

export const ShellContext = createContext<Shell | null>(null);

/** The shell, inside any component under the app. */
export function useShell(): Shell {
  const shell = useContext(ShellContext);
  if (shell === null) throw new Error('shell-missing: this component stands outside the app');
  return shell;
}
