import type { PlateRemedy } from '../../engine/parts/remedies.ts';
import type { Clue } from '../observation.ts';
import type { SheetLine } from '../paper.ts';
import type { PlatePlace } from '../places.ts';
import type { Called } from './remedyWork.ts';
import type { Asked } from './step.ts';

/** What the lines about a brush plate call for. */

const BECAUSE: Readonly<Record<PlateRemedy, string>> = {
  cleanPlateInsulation:
    'Something leads across the insulation. Packed dirt does, and dirt can be cleaned off; a burnt insulator cannot.',
  tightenRivets: 'A rivet that moves makes and breaks. Tightened, it either stays good or stays bad.',
};

export function plateRemedy(asked: Asked): Called | null {
  const remedy = wanted(asked).find((one) => !asked.remedies.some((done) => done.remedy === one));
  return remedy === undefined ? null : { remedy, because: BECAUSE[remedy] };
}

/** Remedies for what stands on the sheet, the likelier one first. */
function wanted(asked: Asked): readonly PlateRemedy[] {
  const leaks = asked.lines.filter((line) => joinsInsulated(line) || leaksMegohms(line, asked));
  if (leaks.length > 0) {
    const rivet = leaks.some(({ at }) => at !== undefined && clueAt(at, 'looseRivet', asked));
    return rivet ? ['tightenRivets', 'cleanPlateInsulation'] : ['cleanPlateInsulation', 'tightenRivets'];
  }
  const parted = asked.lines.filter(({ test, lamp }) => test === 'plateEarthed' && lamp === 'dark');
  const torn = parted.every(({ at }) => at !== undefined && clueAt(at, 'brokenPigtail', asked));
  return parted.length > 0 && !torn ? ['tightenRivets'] : [];
}

function joinsInsulated({ test, lamp }: SheetLine): boolean {
  return test === 'plateInsulation' && (lamp === 'lit' || lamp === 'dim');
}

function leaksMegohms({ test, part, megohms }: SheetLine, { job }: Asked): boolean {
  return (
    test === 'megohm' &&
    part === 'brushPlate' &&
    typeof megohms === 'number' &&
    megohms < job.limits.insulationMohm
  );
}

function clueAt(place: string, clue: Clue, { watched }: Asked): boolean {
  return watched.clues.some((seen) => seen.place === (place as PlatePlace) && seen.clue === clue);
}
