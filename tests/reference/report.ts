import type { Outcome, Tolerance, Value, WitnessGroup } from './case.ts';

/** The page the table is kept on. */
export const WITNESS_PAGE = new URL('../../docs/witness.md', import.meta.url);

export interface Judged {
  readonly group: WitnessGroup;
  readonly outcomes: readonly Outcome[];
}

/** Rounding noise differs from machine to machine: below this nothing is printed in figures. */
const NOISE = 1e-9;

function figure(value: Value | undefined): string {
  if (value === undefined) return '';
  if (typeof value === 'string') return value;
  if (value === 0 || Math.abs(value) < 1e-12) return '0';
  return Number(value.toPrecision(5)).toString();
}

function errorText({ of, error }: Outcome): string {
  if (error === null) return '';
  if (of.tolerance.kind === 'absolute')
    return error < NOISE ? '< 1e-9' : figure(Number(error.toPrecision(2)));
  return percent(error);
}

function percent(share: number): string {
  if (share < NOISE) return '< 1e-9';
  return share < 1e-4 ? share.toExponential(0) : `${Number((100 * share).toPrecision(2))} %`;
}

function toleranceText(tolerance: Tolerance): string {
  if (tolerance.kind === 'equal') return 'equal';
  if (tolerance.kind === 'absolute') return `± ${figure(tolerance.most)}`;
  if (tolerance.kind === 'relative') return percent(tolerance.most);
  return `${figure(tolerance.low)} to ${figure(tolerance.high)}`;
}

/** Quantity, ours, reference, source and how verified, independent or ours, tolerance, pass. */
function cells(outcome: Outcome): string[] {
  const { of, finding, pass } = outcome;
  const unit = of.unit === '-' ? '' : ` ${of.unit}`;
  return [
    of.id,
    of.quantity + (unit && `, ${of.unit}`),
    finding ? figure(finding.ours) : 'none',
    finding ? figure(finding.reference) : '',
    errorText(outcome),
    toleranceText(of.tolerance),
    `${of.source} [${of.verified}]`,
    of.standing,
    pass ? 'pass' : 'FAIL',
  ];
}

const HEADINGS = [
  'id',
  'quantity',
  'ours',
  'reference',
  'error',
  'tolerance',
  'source [verified]',
  'witness',
  '',
];

const flat = (text: string) => text.replaceAll('|', '\\|').replaceAll('\n', ' ');
const markdownRow = (values: readonly string[]) => `| ${values.map(flat).join(' | ')} |`;

/** One line a row, columns separated, for a terminal. */
export function lines({ group, outcomes }: Judged): string[] {
  const rows = outcomes.map((o) => {
    const [id, quantity, ours, reference, error, tolerance, source, standing, pass] = cells(o);
    const against = reference ? `${ours} against ${reference}` : `${ours}`;
    const off = error ? `, off ${error} of ${tolerance}` : `, wanted ${tolerance}`;
    return `${pass!.padEnd(4)}  ${id}: ${quantity}: ${against}${off}; ${source}; ${standing}`;
  });
  return [group.title, ...rows, ''];
}

/** Sentences for every row that does not pass. */
export function failures(all: readonly Judged[]): string[] {
  return all.flatMap(({ group, outcomes }) =>
    outcomes.filter((o) => !o.pass).map((o) => `${group.title}, ${o.of.id} (${o.of.quantity}): ${o.failure}`),
  );
}

const count = (outcomes: readonly Outcome[], standing: string) =>
  String(outcomes.filter((o) => o.of.standing === standing).length);

/** The row that uses most of its tolerance. */
function tightest(outcomes: readonly Outcome[]): string {
  let most = -1;
  let found: Outcome | undefined;
  for (const o of outcomes) {
    if (o.error === null || (o.of.tolerance.kind !== 'relative' && o.of.tolerance.kind !== 'absolute'))
      continue;
    const used = o.error / o.of.tolerance.most;
    if (used <= most) continue;
    most = used;
    found = o;
  }
  return found
    ? `${errorText(found)} of ${toleranceText(found.of.tolerance)} (${found.of.id})`
    : 'no measured rows';
}

function summary(all: readonly Judged[]): string[] {
  const rows = all.map(({ group, outcomes }) =>
    markdownRow([
      group.title,
      String(outcomes.length),
      count(outcomes, 'independent'),
      count(outcomes, 'fitted'),
      count(outcomes, 'ours'),
      String(outcomes.filter((o) => !o.pass).length),
      tightest(outcomes),
    ]),
  );
  return [
    markdownRow(['group', 'rows', 'independent', 'fitted', 'ours', 'failing', 'closest to its tolerance']),
    markdownRow(['---', '--:', '--:', '--:', '--:', '--:', '---']),
    ...rows,
  ];
}

const INTRODUCTION = [
  '# What the numbers are checked against',
  '',
  'Written by `npm run -s witness`, which runs every row and fails when one does not pass; the same rows run under',
  '`npm test`. Nothing here was compared with a real growler: the bench and its parts are invented.',
  '',
  'How verified: *yes* read in a stored copy of the source; *2nd* read in a second source that attributes it; *calc*',
  'worked out from the stated formula; *memory* from memory, no stored source; *practice* common practice, no source;',
  '*stored* kept result of an independent program; *live* result of an independent program started in this very run.',
  '',
  'Witness: *independent*; *fitted* where constants of the model were set by these very references; *ours* where the',
  'reference is another calculation of this project, which is no witness.',
  '',
];

/** The whole table as a page. */
export function page(all: readonly Judged[]): string {
  const groups = all.flatMap(({ group, outcomes }) => [
    `## ${group.title}`,
    '',
    group.about,
    '',
    markdownRow(HEADINGS),
    markdownRow(HEADINGS.map(() => '---')),
    ...outcomes.map((o) => markdownRow(cells(o))),
    '',
  ]);
  return [...INTRODUCTION, ...summary(all), '', ...groups].join('\n');
}
