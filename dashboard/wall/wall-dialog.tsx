import { useEffect, useRef } from 'preact/hooks';
import { Dialog, type DialogProps } from '../parts/dialog.tsx';
import { useShell } from '../shell.ts';
import { newDanger, unseenDanger } from './alarm-order.ts';

/**
 * A dialog on the wall. It lies over everything, so it steps aside by itself for what may not be covered: the
 * loss of the connection, and a danger that was not there when it was opened.
 */
export function WallDialog(props: Omit<DialogProps, 'size'>) {
  const { feed } = useShell();
  const alarms = [...(feed.state.value?.alarms.values() ?? [])];
  const known = useRef(unseenDanger(alarms));
  const mustYield = feed.blind.value || !feed.judging.value || newDanger(alarms, known.current);
  const close = useRef(props.onClose);
  close.current = props.onClose;
  useEffect(() => {
    if (mustYield) close.current();
  }, [mustYield]);
  return <Dialog {...props} size="wall" />;
}
