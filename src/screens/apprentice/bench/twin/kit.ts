import type { Action } from '../../../../bench/action.ts';
import { partOfBrush } from '../../../../bench/touched.ts';
import type { Tool } from '../../../../scenario/public/benchTools.ts';
import type { Job } from '../../../../scenario/public/job.ts';

/** What of mat and rail a job has a use for: the panel of words and the tray both show this and no more. */

export const TOOL_NAMES: Readonly<Record<Tool, string>> = {
  preparation: 'Before power',
  fieldFrame: 'Field frame',
  brushPlate: 'Brush plate',
  tester: 'Insulation tester',
  drop: 'Millivolt drop',
  gauges: 'Gauges',
  remedies: 'Remedies',
  bench: 'The bench itself',
};

/** Whether an act is about a part that is to be judged: the workshop's own armature is neither measured nor worked on. */
export function belongs(action: Action, { parts }: Job): boolean {
  if (action.type === 'remedy.do') {
    const ofPlate = action.remedy === 'cleanPlateInsulation' || action.remedy === 'tightenRivets';
    return parts.includes(ofPlate ? 'brushPlate' : 'armature');
  }
  if (action.type !== 'gauge.read') return true;
  return parts.includes(action.brush === undefined ? 'armature' : partOfBrush(action.brush));
}

/** How an act is done on the picture, where that is not plain from what lies there. */
export const ON_THE_PICTURE: Readonly<Partial<Record<Action['type'], string>>> = {
  'armature.place':
    'On the picture: carry it there or press the cradle; on a small screen, press “lay in the cradle”.',
  'armature.lift':
    'On the picture: draw it out by the far end of its shaft or press the mat; on a small screen, press “lift out to the mat”.',
};

/** The tool whose drawer holds an act, or null for one that is done on the picture. */
export function toolFor(action: Action): Tool | null {
  switch (action.type) {
    case 'prepare.check':
      return 'preparation';
    case 'part.takeUp':
    case 'part.putBack':
      return action.part;
    case 'brushes.part':
    case 'brushes.join':
      return 'fieldFrame';
    case 'gauge.read':
      return 'gauges';
    case 'remedy.do':
      return 'remedies';
    case 'bench.setRight':
      return 'bench';
    case 'drop.feed':
      return 'drop';
    case 'lead.lean':
      return 'brushPlate';
    case 'tester.volts':
    case 'tester.press':
    case 'tester.discharge':
      return 'tester';
    default:
      return toolOfLead(action);
  }
}

function toolOfLead(action: Action): Tool | null {
  if (!('lead' in action)) return null;
  if (action.lead.startsWith('tester')) return 'tester';
  return action.lead.startsWith('drop') ? 'drop' : null;
}
