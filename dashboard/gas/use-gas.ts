import { useEffect } from 'preact/hooks';
import type { GasView } from '../../hub/contract/gas.ts';
import { type Answer, useAnswer } from '../parts/use-answer.ts';
import { useShell } from '../shell.ts';

/** The judge moves in steps of ten seconds. */
const ASK_MS = 10_000;

/** The hub's view of the gas, asked again and again. */
export function useGas(): { readonly answer: Answer<GasView>; readonly reload: () => void } {
  const { api, feed } = useShell();
  // A hub that was away is asked again when it is back.
  const asked = useAnswer(`gas ${feed.blind.value}`, () => api.gas.view());
  useEffect(() => {
    const timer = window.setInterval(asked.reload, ASK_MS);
    return () => window.clearInterval(timer);
  }, []);
  return asked;
}
