import type { Action, Selector } from '../../bench/action.ts';
import type { CommutatorGeometry } from '../../bench/geometry.ts';
import type { SheetLine } from '../../bench/paper.ts';
import { angleWords, LEAD_WORDS, placeWords } from '../../bench/placeWords.ts';
import { countWords, dispositionWords, spoken, testWords, type Vocabulary } from './words.ts';

/** What is needed to say where something was done: the commutator, the bar chalked by then, how it lay. */
export interface Speaking {
  readonly geometry: CommutatorGeometry;
  readonly chalkedBar: number | null;
  readonly rotationDeg: number;
  readonly vocabulary: Vocabulary;
}

const SELECTOR: Readonly<Record<Selector, string>> = { off: 'OFF', low: 'LOW', high: 'HIGH' };

/** An action as a line of the debrief. */
export function actionWords(action: Action, speaking: Speaking): string {
  return spoken(plainWords(action, speaking), speaking.vocabulary);
}

function plainWords(action: Action, speaking: Speaking): string {
  switch (action.type) {
    case 'selector.turn':
      return `Selector to ${SELECTOR[action.to]}`;
    case 'range.turn':
      return `Ammeter to the ${action.to} A range`;
    case 'armature.turn':
      return `Turned the armature by ${degrees(action.byDeg)}, top ${action.byDeg > 0 ? 'towards' : 'away'}`;
    case 'lead.take':
      return `Took ${LEAD_WORDS[action.lead]} by the ${action.grip === 'tip' ? 'bare tip' : 'handle'}`;
    case 'lead.touch':
      return `Put ${LEAD_WORDS[action.lead]} on ${placeWords(speaking.geometry, speaking, action.place)}`;
    case 'lead.lift':
      return `Lifted ${LEAD_WORDS[action.lead]}`;
    case 'lead.clamp':
      return `Left ${LEAD_WORDS[action.lead]} in the stand`;
    case 'lead.holster':
      return `Put ${LEAD_WORDS[action.lead]} back in its holster`;
    case 'strip.hold':
      return `Held the strip ${action.heightMm} mm above the core, ${angleWords(action.angleDeg)}`;
    case 'lens.look':
      return `Looked at ${placeWords(speaking.geometry, speaking, action.place)} through the lens`;
    case 'chalk.mark':
      return 'Chalked a bar';
    case 'sheet.write':
      return `Wrote: ${lineWords(action.line, speaking.vocabulary)}`;
    case 'verdict.write':
      return `Wrote the verdict: ${dispositionWords(action.verdict.disposition).toLowerCase()}`;
    default:
      return SIMPLE[action.type] ?? action.type;
  }
}

const SIMPLE: Readonly<Record<string, string>> = {
  'armature.place': 'Laid the armature in the cradle',
  'armature.lift': 'Lifted the armature out',
  'armature.hold': 'Took hold of the armature',
  'armature.release': 'Let go of the armature',
  'strip.take': 'Took the strip',
  'strip.away': 'Took the strip away from the core',
  'strip.hang': 'Hung the strip up',
  'job.handIn': 'Handed the job in',
};

function degrees(deg: number): string {
  return `${Number(Math.abs(deg).toFixed(1))}°`;
}

function lineWords(line: SheetLine, vocabulary: Vocabulary): string {
  const where = line.count === null ? '' : `, ${countWords(line.count)}`;
  const result = line.readingA === undefined ? (line.lamp ?? line.strip) : `${line.readingA} A`;
  return [`${testWords(line.test, vocabulary)}${where}`, result, line.remark]
    .filter((part) => part)
    .join(': ');
}
