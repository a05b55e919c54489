import type { PassCell, Row } from './cells.ts';
import type { Figures } from './figures.ts';
import { matPage } from './matPage.ts';
import { fieldRows, MATRIX_FRAMES, plateRows } from './matRows.ts';
import type { ArmatureMatrix } from './matrix.ts';
import { header, markdownRow } from './table.ts';

const INTRODUCTION = [
  '# Which test shows which fault',
  '',
  'Written by `npm run -s matrix`: every cell is computed, none is written by hand. 230 V 50 Hz; ammeter and strip on',
  'HIGH, lamp on LOW; contacts at the middle of their spread, no scatter. An armature’s faults sit at bar or coil 5.',
  '',
  'For armatures a figure says at how many places the test shows something, **0** that it shows nothing at all:',
  '',
  '- *spaced*, *neighbour*: readings that stand out of their turn by more than an eye and clean contacts let pass, each',
  '  against what a sound part shows at that bar (slot mates alternate, a forced winding wanders). "level" is how far',
  '  the whole turn lies off a sound part, which only someone sees who knows the sound reading.',
  '- *strip*: slots felt to pull somewhere on the upper arc, 95° to 265° from the bottom, half a millimetre off.',
  '- *lamp*: bars from which it is seen to glow against the core.',
  '- *insulation 250 V, 500 V*: bars that read less than 1 MΩ to the core.',
  '- *millivolt drop*: pairs of neighbouring bars whose drop is more than 5 % off the middle.',
  '',
];

const HEADINGS = [
  'condition',
  'spaced',
  'neighbour',
  'strip',
  'lamp',
  'insulation 250 V',
  '500 V',
  'millivolt drop',
];

function passText({ places, level, levelSeen }: PassCell): string {
  if (!levelSeen) return String(places);
  return `${places}, level ${level > 0 ? '+' : '−'}${Math.abs(100 * level).toFixed(0)} %`;
}

const rowText = (row: Row) =>
  markdownRow([
    row.name,
    passText(row.spaced),
    passText(row.neighbour),
    row.strip,
    row.lamp,
    row.insulation[250],
    row.insulation[500],
    row.drop,
  ]);

const FIGURE_HEADINGS = [
  'armature',
  'one ground: largest change of a reading',
  'one coil open: largest change of an open-circuit voltage',
  'lowest reading, coil open',
  'hard bridge, 0.2 mΩ',
  'soft bridge, 50 mΩ',
  'sound: largest pull on the strip',
];

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
/** Rounding noise is no change. */
const change = (value: number, text: string) => (value < 1e-9 ? 'none' : text);

function figureText({ design, groundChange, openVoltChange, lowest, soundPullN }: Figures): string {
  return markdownRow([
    design.name,
    change(groundChange, percent(groundChange)),
    change(openVoltChange, `${openVoltChange.toFixed(3)} V`),
    percent(lowest.open),
    percent(lowest.hard),
    percent(lowest.soft),
    `${soundPullN.toFixed(2)} N`,
  ]);
}

/** The matrices of all armatures, field frames and the brush plate, and some figures behind them, as a page. */
export function matrixPage(matrices: readonly ArmatureMatrix[], figures: readonly Figures[]): string {
  const tables = matrices.flatMap(({ design, rows }) => [
    `## ${design.name}`,
    '',
    `${design.bars} bars, ${design.slots} slots.`,
    '',
    ...header(HEADINGS),
    ...rows.map(rowText),
    '',
  ]);
  const behind = [
    '## Figures behind it',
    '',
    'Neighbouring readings as a share of the sound ones; the ring of an equalised winding is no longer one ring.',
    '',
    ...header(FIGURE_HEADINGS),
    ...figures.map(figureText),
    '',
  ];
  const mat = matPage(
    MATRIX_FRAMES.map((frame) => ({ frame, rows: fieldRows(frame) })),
    plateRows(),
  );
  return [...INTRODUCTION, ...tables, ...mat, ...behind].join('\n');
}
