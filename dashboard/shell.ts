import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Api } from './api/client.ts';
import type { Feed } from './feed/feed.ts';

/** What every view may use: the hub's answers, and the live feed. */
export interface Shell {
  readonly api: Api;
  readonly feed: Feed;
}

export const ShellContext = createContext<Shell | null>(null);

/** The shell, inside any component under the app. */
export function useShell(): Shell {
  const shell = useContext(ShellContext);
  if (shell === null) throw new Error('shell-missing: this component stands outside the app');
  return shell;
}
