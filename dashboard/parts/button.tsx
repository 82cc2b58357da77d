import type { ComponentChildren } from 'preact';

export interface ButtonProps {
  readonly children: ComponentChildren;
  readonly onPress?: () => void;
  /** `main`: the one thing this place is for. `plain`: everything else. `grave`: cannot be undone. */
  readonly tone?: 'main' | 'plain' | 'grave';
  /** `wall`: 20 mm and more, for gloves. */
  readonly size?: 'page' | 'wall';
  readonly disabled?: boolean;
  /** True while its work runs: it cannot be pressed twice, and says that it works. */
  readonly busy?: boolean;
  readonly type?: 'button' | 'submit';
  /** Name for people who do not see the screen, when the visible text alone does not tell. */
  readonly name?: string;
}

export function Button(props: ButtonProps) {
  const { tone = 'plain', size = 'page', type = 'button', busy = false } = props;
  return (
    <button
      type={type}
      class={`button button-${tone} button-${size}`}
      disabled={props.disabled === true || busy}
      aria-busy={busy}
      aria-label={props.name}
      onClick={() => props.onPress?.()}
    >
      {props.children}
    </button>
  );
}

export interface LinkButtonProps {
  readonly children: ComponentChildren;
  readonly href: string;
  readonly size?: 'page' | 'wall';
  readonly name?: string;
  /** Set to save the answer as a file of this name instead of opening it. */
  readonly download?: string;
}

/** A link that looks like a plain button: it goes somewhere and changes nothing. */
export function LinkButton(props: LinkButtonProps) {
  return (
    <a
      class={`button button-plain button-${props.size ?? 'page'}`}
      href={props.href}
      aria-label={props.name}
      download={props.download}
    >
      {props.children}
    </a>
  );
}
