import type { FieldFrameDesign } from '../../../engine/parts/fieldFrame.ts';
import type { FieldRow, PlateRow } from './matRows.ts';
import { header, markdownRow } from './table.ts';

/** The matrices of field frames and brush plate as part of the page. */

const FIELD_WORDS = [
  'Lamp from the motor terminal and from the case to field brushes 1 and 2, kept apart and touching; insulation tester',
  'from the case, MΩ; millivolt drop along each branch with 5 A through it. The faults sit in the first coil or at brush 1.',
  '',
];
const PLATE_WORDS = [
  'Lamp from the plate to each holder, left alone and leant on; insulation tester from the plate, MΩ.',
  '',
];

const FIELD_HEADINGS = [
  'condition',
  'terminal–1, –2',
  'the same, brushes touching',
  'case–1, –2',
  'insulation 250 V',
  '500 V',
  'drop 1, 2, mV',
];
const PLATE_HEADINGS = [
  'condition',
  'insulated 1, 2',
  'leant on',
  'earthed 1, 2',
  'leant on',
  'insulation 250 V',
  '500 V',
];

const lamp = (lit: boolean) => (lit ? 'lit' : 'dark');
const listed = (words: readonly (string | number)[]) => words.join(', ');

function fieldText({ name, shown }: FieldRow): string {
  const from = (place: string) => shown.lamp.filter((one) => one.from === place);
  const terminal = from('field:terminal');
  return markdownRow([
    name,
    listed(terminal.map(({ lit }) => lamp(lit))),
    listed(terminal.map((one) => lamp(one.lit_brushes_touching))),
    listed(from('field:case').map(({ lit }) => lamp(lit))),
    listed(shown.megohms.map((one) => one[250])),
    listed(shown.megohms.map((one) => one[500])),
    listed(shown.drop_mV.map(({ mV }) => mV)),
  ]);
}

function plateText({ name, shown }: PlateRow): string {
  const at = (kind: string) => shown.lamp.filter(({ holder }) => holder.startsWith(`plate:${kind}`));
  const both = (kind: string) => [
    listed(at(kind).map(({ lit }) => lamp(lit))),
    listed(at(kind).map((one) => lamp(one.lit_leant_on))),
  ];
  return markdownRow([
    name,
    ...both('insulated'),
    ...both('earthed'),
    listed(shown.megohms.map((one) => one[250])),
    listed(shown.megohms.map((one) => one[500])),
  ]);
}

export function matPage(
  frames: readonly { readonly frame: FieldFrameDesign; readonly rows: readonly FieldRow[] }[],
  plate: readonly PlateRow[],
): readonly string[] {
  return [
    ...frames.flatMap(({ frame, rows }) => [
      `## ${frame.name}`,
      '',
      ...FIELD_WORDS,
      ...header(FIELD_HEADINGS),
      ...rows.map(fieldText),
      '',
    ]),
    '## Brush plate, two insulated and two earthed holders',
    '',
    ...PLATE_WORDS,
    ...header(PLATE_HEADINGS),
    ...plate.map(plateText),
    '',
  ];
}
