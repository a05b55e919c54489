import type { BrushIndex, GaugeKind, PartKind } from './action.ts';
import { capital } from './capital.ts';
import type { CommutatorGeometry } from './geometry.ts';
import type { DropView, GaugeView, Observation, TesterView } from './observation.ts';
import { placeWords } from './placeWords.ts';

/** What eyes get from the mat and from the tools on the rail, in plain words; an empty text where there is nothing. */

export const PART_WORDS: Readonly<Record<PartKind, string>> = {
  armature: 'the armature',
  fieldFrame: 'the field frame',
  brushPlate: 'the brush plate',
};

export function matWords({ mat, brushesApart }: Observation): readonly string[] {
  const apart = brushesApart ? 'its two brushes kept apart' : 'its two brushes lying against one another';
  return [
    mat.fieldFrame === 'forward' ? `The field frame lies in front of you, ${apart}.` : '',
    mat.brushPlate === 'forward' ? 'The brush plate lies in front of you.' : '',
  ];
}

export function testerWords({ at, volt, pressed, megohms, over, charged }: TesterView): string {
  if (at === 'absent') return '';
  const light = charged ? ', its warning light on' : '';
  if (!pressed || megohms === null)
    return charged ? `Insulation tester at ${volt} V, button up${light}.` : '';
  const shown = over ? `beyond ${megohms} megohms` : `${megohms} megohms`;
  return `Insulation tester at ${volt} V, button down, shows ${shown}${light}.`;
}

export function dropWords(geometry: CommutatorGeometry, seen: Observation): string {
  const { feed, feedA } = seen.drop;
  if (feed === null) return '';
  const [one, other] = feed.map((place) => placeWords(geometry, seen, place));
  return `The feed is clamped on ${one} and ${other} and drives ${feedA} A; ${millivoltWords(seen.drop)}.`;
}

function millivoltWords({ millivolts, over }: DropView): string {
  if (millivolts === null) return 'the millivoltmeter lies on nothing';
  return over ? `beyond ${millivolts} mV` : `${millivolts} mV`;
}

const GAUGE_WORDS: Readonly<Record<Exclude<GaugeKind, 'brushLength'>, string>> = {
  diameter: 'The commutator measures',
  runOut: 'The commutator runs out by',
  undercut: 'The mica lies below the bars by',
};

export function gaugeWords(view: GaugeView | null): string {
  if (view === null) return '';
  if (view.gauge !== 'brushLength') return `${GAUGE_WORDS[view.gauge]} ${view.mm} mm.`;
  return `${capital(brushWords(view.brush ?? 0))} measures ${view.mm} mm.`;
}

export const BRUSH_WORDS: readonly string[] = [
  'field brush 1',
  'field brush 2',
  'the brush of grounded holder 1',
  'the brush of grounded holder 2',
];

export function brushWords(brush: BrushIndex): string {
  return BRUSH_WORDS[brush]!;
}

export function bookWords({ minutesSpent, scrapped }: Observation): string {
  const spent = minutesSpent === 0 ? '' : `By the book ${minutesSpent} minutes have gone into work.`;
  const lost = scrapped.map((part) => `${capital(PART_WORDS[part])} is below the card’s limit: scrap.`);
  return [spent, ...lost].filter((sentence) => sentence !== '').join(' ');
}
