import type { Action, Selector } from '../../bench/action.ts';
import type { CommutatorGeometry } from '../../bench/geometry.ts';
import type { SheetLine } from '../../bench/paper.ts';
import { isClip, type Place } from '../../bench/places.ts';
import { angleWords, LEAD_WORDS, placeWords } from '../../bench/placeWords.ts';
import { PART_WORDS } from '../../bench/toolWords.ts';
import { lineResult, lineScale, lineWhere } from './lineWords.ts';
import { dispositionWords, spoken, testWords, type Vocabulary } from './words.ts';
import { workActWords } from './workActWords.ts';

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
  const at = (place: Place) => placeWords(speaking.geometry, speaking, place);
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
      return `Put ${LEAD_WORDS[action.lead]} on ${at(action.place)}`;
    case 'lead.lift':
      return `Lifted ${LEAD_WORDS[action.lead]}`;
    case 'lead.clamp':
      return `Left ${LEAD_WORDS[action.lead]} ${isClip(action.lead) ? 'clipped on' : 'in the stand'}`;
    case 'lead.holster':
      return `Put ${LEAD_WORDS[action.lead]} back in its holster`;
    case 'strip.hold':
      return `Held the strip ${action.heightMm} mm above the core, ${angleWords(action.angleDeg)}`;
    case 'lens.look':
      return `Looked at ${at(action.place)} through the lens`;
    case 'chalk.mark':
      return 'Chalked a bar';
    case 'sheet.write':
      return `Wrote: ${lineWords(action.line, speaking.vocabulary)}`;
    case 'verdict.write':
      return `Wrote the verdict on ${PART_WORDS[action.verdict.part]}: ${dispositionWords(action.verdict.disposition).toLowerCase()}`;
    default:
      return SIMPLE[action.type] ?? workActWords(action, at) ?? action.type;
  }
}

const SIMPLE: Readonly<Record<string, string>> = {
  'armature.place': 'Laid the armature in the cradle',
  'armature.lift': 'Lifted the armature out',
  'armature.hold': 'Took hold of the armature',
  'armature.release': 'Let go of the armature',
  'brushes.part': 'Kept the field brushes apart',
  'brushes.join': 'Let the field brushes lie together',
  'tester.discharge': 'Discharged the part through the tester',
  'strip.take': 'Took the strip',
  'strip.away': 'Took the strip away from the core',
  'strip.hang': 'Hung the strip up',
  'job.handIn': 'Handed the job in',
};

function degrees(deg: number): string {
  return `${Number(Math.abs(deg).toFixed(1))}°`;
}

function lineWords(line: SheetLine, vocabulary: Vocabulary): string {
  const result = [lineResult(line), lineScale(line)].filter((part) => part).join(' ');
  const where = line.count === null && line.at === undefined && line.gauge === undefined;
  const place = where && line.part === undefined ? '' : `, ${lineWhere(line, vocabulary).toLowerCase()}`;
  return [`${testWords(line.test, vocabulary)}${place}`, result, line.remark]
    .filter((part) => part)
    .join(': ');
}
