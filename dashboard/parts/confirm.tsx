import { Button } from './button.tsx';
import { Dialog } from './dialog.tsx';
import { ProblemNote } from './problem.tsx';
import { useAction } from './use-action.ts';

interface ConfirmProps {
  readonly title: string;
  /** What will be so afterwards. */
  readonly words: string;
  readonly yes: string;
  readonly no: string;
  readonly act: () => Promise<unknown>;
  readonly onClose: () => void;
  readonly onDone: () => void;
}

/** Asks before something is put away, does it, and stays open with the reason when the hub refuses. */
export function Confirm({ title, words, yes, no, act, onClose, onDone }: ConfirmProps) {
  const press = useAction();
  const go = () =>
    press.run(async () => {
      await act();
      onDone();
      onClose();
    });
  return (
    <Dialog title={title} onClose={onClose} closeWord={no}>
      <div class="form">
        <p>{words}</p>
        <ProblemNote error={press.error} />
        <div class="form-acts">
          <Button tone="grave" busy={press.busy} onPress={go}>
            {yes}
          </Button>
        </div>
      </div>
    </Dialog>
  );
}
