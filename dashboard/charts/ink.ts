/** The colours and sizes that a chart draws with, read from the theme when the scheme changes. */
export interface Ink {
  readonly ground: string;
  readonly ink: string;
  readonly ink2: string;
  readonly line: string;
  readonly faint: string;
  readonly band: string;
  readonly danger: string;
  readonly onDanger: string;
  readonly warning: string;
  readonly onWarning: string;
  readonly face: string;
  /** Size of the chart's letters, CSS px. */
  readonly letterPx: number;
  /** Thickness of the measured curve, CSS px. */
  readonly strokePx: number;
}

/** Reads the theme's properties as they are on this element now. */
export function readInk(element: Element): Ink {
  const style = getComputedStyle(element);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  const letterPx = Number.parseFloat(style.fontSize);
  return {
    ground: colour('--ground'),
    ink: colour('--ink'),
    ink2: colour('--ink-2'),
    line: colour('--line'),
    faint: colour('--faint'),
    band: colour('--band'),
    danger: colour('--danger'),
    onDanger: colour('--on-danger'),
    warning: colour('--warning'),
    onWarning: colour('--on-warning'),
    face: colour('--face'),
    letterPx,
    strokePx: Math.max(2, letterPx / 7),
  };
}
