import type { ComponentChildren } from 'preact';
import { useEffect, useId, useRef } from 'preact/hooks';
import { ConnectionBand } from '../wall/connection-band.tsx';
import { partWords } from '../words/parts.ts';
import { Button } from './button.tsx';

export interface DialogProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
  /** `wall`: fills most of the screen with large targets. */
  readonly size?: 'page' | 'wall';
  /** Word on the button that leaves without doing anything. */
  readonly closeWord?: string;
}

/** A modal dialog on the browser's own `<dialog>`: it traps focus, closes on Escape and gives focus back. */
export function Dialog(props: DialogProps) {
  const { size = 'page' } = props;
  const element = useRef<HTMLDialogElement>(null);
  const id = useId();
  useEffect(() => {
    const dialog = element.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  const cancel = (event: Event) => {
    // The owner takes the dialog out of the tree; the browser must not also close it on its own.
    event.preventDefault();
    props.onClose();
  };
  return (
    <dialog ref={element} class={`dialog dialog-${size}`} aria-labelledby={id} onCancel={cancel}>
      {/* A modal lies over the page's own band: that nothing is current must be seen here too. */}
      <ConnectionBand />
      <header class="dialog-head">
        <h2 id={id}>{props.title}</h2>
        <Button size={size} onPress={props.onClose}>
          {props.closeWord ?? partWords.back}
        </Button>
      </header>
      {props.children}
    </dialog>
  );
}
