export type Cell = string | number | boolean | null;

/**
 * Rows as comma-separated text (RFC 4180: CRLF, quotes doubled), header first. Written out here because the well-kept
 * writers bring the platform's types into this folder; the tests read it back with one of them.
 *
 * A spreadsheet runs a cell that begins like a formula, so text beginning with one of = + - @, a tab or a carriage
 * return gets an apostrophe in front (common practice against CSV injection, no source). Numbers stay numbers.
 */
export function csv(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return [header, ...rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell !== 'string') return String(cell);
  const harmless = /^\s*[=+\-@\t\r＝＋－＠]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
