import type { ComponentChildren } from 'preact';
import { Button } from '../parts/button.tsx';
import { FaultSummary } from '../parts/fault-summary.tsx';
import type { Faults } from '../parts/faults.ts';
import { ProblemNote } from '../parts/problem.tsx';
import type { Action } from '../parts/use-action.ts';
import { setupWords } from '../words/setup.ts';

interface FormFrameProps {
  readonly onSubmit: (event: Event) => void;
  readonly press: Action;
  readonly listed: Faults;
  /** What a field is called, by its path in the contract. */
  readonly nameOf: (path: string) => string;
  readonly send: string;
  /** Said once it is kept. */
  readonly said?: string;
  readonly children: ComponentChildren;
}

/** The same foot under every form of Setup: what is wrong, what the hub said, the button. */
export function FormFrame(props: FormFrameProps) {
  const { press, listed, nameOf } = props;
  const lines = Object.entries(listed).map(([path, fault]) => setupWords.faultAt(nameOf(path), fault));
  return (
    <form class="form" onSubmit={props.onSubmit} noValidate>
      {props.children}
      <FaultSummary faults={lines} />
      <ProblemNote error={press.error} />
      <div class="form-acts">
        <Button type="submit" tone="main" busy={press.busy}>
          {props.send}
        </Button>
        <span role="status">{props.said ?? ''}</span>
      </div>
    </form>
  );
}
