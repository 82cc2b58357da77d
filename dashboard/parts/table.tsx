import type { ComponentChildren } from 'preact';

export interface Column<Row> {
  readonly key: string;
  readonly head: string;
  readonly cell: (row: Row) => ComponentChildren;
  /** Numbers stand at the right so that their digits line up. */
  readonly align?: 'left' | 'right';
}

export interface TableProps<Row> {
  /** What the table holds; read out, and shown unless `hideCaption`. */
  readonly caption: string;
  readonly hideCaption?: boolean;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** Said in place of rows when there are none. */
  readonly empty: string;
}

/** A table that scrolls sideways inside itself on a narrow screen. The first column names the row. */
export function Table<Row>(props: TableProps<Row>) {
  return (
    // A scrolling region must be reachable by keyboard (WCAG 2.1.1), so it takes the focus and has a name.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrollable region
    <section class="table-scroll" tabIndex={0} aria-label={props.caption}>
      <table>
        <caption class={props.hideCaption ? 'sr-only' : undefined}>{props.caption}</caption>
        <thead>
          <tr>
            {props.columns.map((column) => (
              <th key={column.key} scope="col" class={side(column)}>
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {props.rows.length === 0 && (
            <tr>
              <td colSpan={props.columns.length}>{props.empty}</td>
            </tr>
          )}
          {props.rows.map((row) => (
            <tr key={props.rowKey(row)}>
              {props.columns.map((column, at) => cellOf(column, row, at === 0))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function side<Row>(column: Column<Row>): string | undefined {
  return column.align === 'right' ? 'align-right' : undefined;
}

function cellOf<Row>(column: Column<Row>, row: Row, first: boolean) {
  const content = column.cell(row);
  return first ? (
    <th key={column.key} scope="row" class={side(column)}>
      {content}
    </th>
  ) : (
    <td key={column.key} class={side(column)}>
      {content}
    </td>
  );
}
