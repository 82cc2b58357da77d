import type { ComponentChildren } from 'preact';

export interface PageProps {
  readonly title: string;
  /** Buttons beside the title. */
  readonly actions?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** A page for working at arm's length (records, schedules, setup): a title, its actions, its content. */
export function Page({ title, actions, children }: PageProps) {
  return (
    <main class="page" id="content" tabIndex={-1}>
      <header class="page-head">
        <h1>{title}</h1>
        {actions && <div class="page-actions">{actions}</div>}
      </header>
      {children}
    </main>
  );
}
