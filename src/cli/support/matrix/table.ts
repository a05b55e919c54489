/** Tables in Markdown. */
export const markdownRow = (cells: readonly (string | number)[]) => `| ${cells.join(' | ')} |`;

export const header = (headings: readonly string[]) => [
  markdownRow(headings),
  markdownRow(headings.map((_, i) => (i === 0 ? '---' : '--:'))),
];
