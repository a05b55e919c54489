import type { RemedyKind } from '../../engine/parts/remedies.ts';
import type { PartKind } from '../action.ts';
import type { SheetLine, TestKind } from '../paper.ts';

/** Remedies and the lines of the sheet they leave behind: what was read before a remedy says nothing of the part after it. */

/** A remedy that was done, and how many lines stood on the sheet by then. */
export interface RemedyDone {
  readonly remedy: RemedyKind;
  /** Riser that was resoldered, else null. */
  readonly bar: number | null;
  readonly linesBefore: number;
}

interface Retest {
  readonly part: PartKind;
  readonly tests: readonly TestKind[];
}

/** What a remedy may have changed, and so has to be tested again. */
const RETESTS: Readonly<Record<RemedyKind, Retest>> = {
  brushBetweenBars: { part: 'armature', tests: ['neighbour', 'strip', 'megohm'] },
  undercut: { part: 'armature', tests: ['neighbour', 'strip', 'gauges'] },
  skimAndPolish: { part: 'armature', tests: ['neighbour', 'strip', 'gauges'] },
  resolderRiser: { part: 'armature', tests: ['neighbour'] },
  cleanPlateInsulation: { part: 'brushPlate', tests: ['plateInsulation', 'megohm'] },
  tightenRivets: { part: 'brushPlate', tests: ['plateInsulation', 'plateEarthed'] },
};

/** The lines that still say something of the parts: those about what no later remedy has touched. */
export function linesThatCount(
  lines: readonly SheetLine[],
  remedies: readonly RemedyDone[],
): readonly SheetLine[] {
  if (remedies.length === 0) return lines;
  return lines.filter((line, at) => !remedies.some((done) => at < done.linesBefore && outdates(done, line)));
}

function outdates({ remedy }: RemedyDone, line: SheetLine): boolean {
  const { part, tests } = RETESTS[remedy];
  return (line.part ?? 'armature') === part && tests.includes(line.test);
}

/** Tests of the card that a remedy calls for again. */
export function retestsOf(remedy: RemedyKind, allowed: readonly TestKind[]): readonly TestKind[] {
  return RETESTS[remedy].tests.filter((test) => allowed.includes(test));
}
