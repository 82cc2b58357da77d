/**
 * The shapes that say how grave something is, so that colour is never alone (WCAG 1.4.1, IEC 60073).
 * Danger is an eight-sided plate, warning a triangle, blindness an eye struck through, all distinct as
 * outlines at five metres.
 */
export type ShapeKind = 'danger' | 'warning' | 'blind';

export function Shape({ of }: { readonly of: ShapeKind }) {
  return (
    <svg class={`shape shape-${of}`} viewBox="0 0 48 48" aria-hidden="true" focusable="false">
      {drawing(of)}
    </svg>
  );
}

function drawing(kind: ShapeKind) {
  switch (kind) {
    case 'danger':
      return (
        <>
          <path class="shape-plate" d="M15 3h18l12 12v18L33 45H15L3 33V15z" />
          <path class="shape-mark" d="M21 10h6l-1 18h-4zM21 32h6v6h-6z" />
        </>
      );
    case 'warning':
      return (
        <>
          <path class="shape-plate" d="M24 3 46 43H2z" />
          <path class="shape-mark" d="M21.5 17h5l-1 14h-3zM21.5 34h5v5h-5z" />
        </>
      );
    case 'blind':
      return (
        <>
          <path class="shape-line" d="M3 24c6-9 13-13 21-13s15 4 21 13c-6 9-13 13-21 13S9 33 3 24z" />
          <circle class="shape-dot" cx="24" cy="24" r="7" />
          <path class="shape-line shape-strike" d="M6 44 42 4" />
        </>
      );
    default:
      return kind satisfies never;
  }
}
