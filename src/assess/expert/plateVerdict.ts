import type { Finding } from '../../bench/paper.ts';
import type { Job } from '../../scenario/public/job.ts';
import { type HolderPlace, type HolderSeen, type Notes, saw } from './notes.ts';

/** How someone who knows the trade reads what was found on a brush plate. */

function isInsulated(holder: HolderPlace): boolean {
  return holder.startsWith('plate:insulated');
}

/** A lamp that changes its mind when the probe is leant on has found a rivet that moves. */
function holderFindings(seen: HolderSeen, notes: Notes): Finding[] {
  const { holder } = seen;
  const place = { kind: 'holder', holder } as const;
  const alone = seen.alone !== 'dark';
  const pressed = seen.pressed !== 'dark';
  if (alone !== pressed) return [{ condition: 'looseRivet', place }];
  if (isInsulated(holder)) return alone ? [{ condition: brokenDown(notes, holder), place }] : [];
  return alone ? [] : [{ condition: 'brokenJoint', place }];
}

/** Packed dirt or a broken-down insulator: once cleaned, what still lights is the insulator. */
function brokenDown(notes: Notes, holder: HolderPlace): 'grounded' | 'bridgedBars' {
  if (notes.done.some(({ remedy }) => remedy === 'cleanPlateInsulation')) return 'grounded';
  const dirty = saw(notes, holder, 'dirt');
  return saw(notes, holder, 'darkenedInsulator') && !dirty ? 'grounded' : 'bridgedBars';
}

/** No lamp test reaches the pigtail of an insulated brush on a sound plate: the lens does. */
function tornPigtails(notes: Notes): Finding[] {
  return (['plate:insulated1', 'plate:insulated2'] as const)
    .filter((holder) => saw(notes, holder, 'brokenPigtail'))
    .map((holder) => ({ condition: 'brokenJoint', place: { kind: 'holder', holder } }));
}

function leaks(notes: Notes, { limits }: Job, found: readonly Finding[]): Finding[] {
  return notes.megohms.flatMap(({ part, at, megohms }): Finding[] => {
    if (part !== 'brushPlate' || megohms === 'over' || megohms >= limits.insulationMohm) return [];
    const holder = at as HolderPlace;
    const spoken = found.some(({ place }) => place.kind === 'holder' && place.holder === holder);
    return spoken ? [] : [{ condition: 'poorInsulation', place: { kind: 'holder', holder } }];
  });
}

export function plateFindings(notes: Notes, job: Job): Finding[] {
  const found = [...notes.holders.flatMap((seen) => holderFindings(seen, notes)), ...tornPigtails(notes)];
  return [...found, ...leaks(notes, job, found)];
}
