/**
 * CSV by RFC 4180 (CRLF, quotes doubled), safe to open in a spreadsheet: a text cell that a spreadsheet would
 * take for a formula is led by an apostrophe (OWASP ASVS 5.0, 1.2.10). Numbers are written as numbers.
 */
const FORMULA_START = /^[=+\-@\t\r\0]/;
const NEEDS_QUOTES = /[",\r\n]/;

export type Cell = string | number | null;

export function csvCell(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : '';
  const text = FORMULA_START.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(text) || text !== cell ? `"${text.replaceAll('"', '""')}"` : text;
}

export function csvRow(cells: readonly Cell[]): string {
  return `${cells.map(csvCell).join(',')}\r\n`;
}
