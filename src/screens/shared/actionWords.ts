import type { Action, Selector } from '../../bench/action.ts';
import type { SheetLine } from '../../bench/paper.ts';
import { barOf, type LeadId, type Place } from '../../bench/places.ts';
import { countFromChalk } from './count.ts';
import { countWords, dispositionWords, spoken, testWords, type Vocabulary } from './words.ts';

/** What is needed to say where something was done: the bar that was chalked by then, and how many there are. */
export interface Speaking {
  readonly chalkedBar: number | null;
  readonly bars: number;
  readonly vocabulary: Vocabulary;
}

const LEADS: Readonly<Record<LeadId, string>> = {
  'ammeter.1': 'ammeter probe 1',
  'ammeter.2': 'ammeter probe 2',
  'lamp.1': 'lamp probe 1',
  'lamp.2': 'lamp probe 2',
};
const SELECTOR: Readonly<Record<Selector, string>> = { off: 'OFF', low: 'LOW', high: 'HIGH' };
const PLACES: Readonly<Record<string, string>> = {
  shaft: 'the shaft',
  core: 'the core',
  'field:terminal': 'the motor terminal',
  'field:brush1': 'field brush 1',
  'field:brush2': 'field brush 2',
  'field:case': 'the case',
  'plate:metal': 'the bare plate',
  'plate:insulated1': 'insulated holder 1',
  'plate:insulated2': 'insulated holder 2',
  'plate:earthed1': 'grounded brush 1',
  'plate:earthed2': 'grounded brush 2',
};

/** A place in a record read afterwards; a bar that was not chalked-counted is named by the bench's own number. */
export function recordPlace(place: Place, speaking: Speaking): string {
  const bar = barOf(place);
  if (bar !== null) return `${place.startsWith('riser') ? 'riser of ' : ''}${recordBar(bar, speaking)}`;
  if (place.startsWith('tip:')) return `the tip of ${LEADS[place.slice(4) as LeadId]}`;
  return PLACES[place] ?? place;
}

export function recordBar(bar: number, { chalkedBar, bars }: Speaking): string {
  const count = countFromChalk(bar, chalkedBar, bars);
  return count === null ? `a bar (bench no. ${bar})` : `bar ${countWords(count)}`;
}

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
      return `Took ${LEADS[action.lead]} by the ${action.grip === 'tip' ? 'bare tip' : 'handle'}`;
    case 'lead.touch':
      return `Put ${LEADS[action.lead]} on ${recordPlace(action.place, speaking)}`;
    case 'lead.lift':
      return `Lifted ${LEADS[action.lead]}`;
    case 'lead.clamp':
      return `Left ${LEADS[action.lead]} in the stand`;
    case 'lead.holster':
      return `Put ${LEADS[action.lead]} back in its holster`;
    case 'strip.hold':
      return `Held the strip ${degrees(action.angleDeg)} round from the bottom, ${action.heightMm} mm up`;
    case 'lens.look':
      return `Looked at ${recordPlace(action.place, speaking)} through the lens`;
    case 'chalk.mark':
      return `Chalked a bar (bench no. ${action.bar})`;
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
