import type { Finding, FoundPlace } from '../../bench/paper.ts';
import type { Job } from '../../scenario/public/job.ts';
import { type FieldBrushPlace, type Notes, saw } from './notes.ts';

/** How someone who knows the trade reads what was found on a field frame. */

const SOMEWHERE: FoundPlace = { kind: 'somewhere' };
const BRUSHES: readonly FieldBrushPlace[] = ['field:brush1', 'field:brush2'];
const branch = (at: FieldBrushPlace): FoundPlace => ({
  kind: 'branch',
  brush: at === 'field:brush1' ? 1 : 2,
});
const other = (at: FieldBrushPlace): FieldBrushPlace => BRUSHES[at === 'field:brush1' ? 1 : 0]!;

/** Coils between the motor terminal and a brush, by their numbers, as anyone can follow them round the frame. */
function coilsTo(at: FieldBrushPlace, { fieldFrame }: Job): readonly number[] {
  if (fieldFrame === null) return [];
  const { coils, links } = fieldFrame;
  const walk = (node: string, path: readonly number[], seen: readonly string[]): readonly number[] | null => {
    if (node === 'field:terminal') return path;
    const ways = [
      ...coils.flatMap(({ from, to }, coil) => (to === node ? [{ next: from, via: [coil] }] : [])),
      ...links.flatMap(({ from, to }) => (to === node ? [{ next: from, via: [] }] : [])),
    ];
    for (const { next, via } of ways) {
      if (seen.includes(next)) continue;
      const found = walk(next, [...path, ...via], [...seen, node]);
      if (found !== null) return found;
    }
    return null;
  };
  return walk(at === 'field:brush1' ? 'end:1' : 'end:2', [], []) ?? [];
}

/** The same coils lie before both brushes: what one brush proves of them holds for the other. */
function sharesCoils(job: Job): boolean {
  const [one, two] = BRUSHES.map((at) => coilsTo(at, job));
  return one!.length > 0 && one!.join() === two!.join();
}

function burntAt(notes: Notes, at: FieldBrushPlace): boolean {
  return saw(notes, at, 'brokenPigtail', 'burntPigtail');
}

/** A dark branch: the lamp does not say whether coil or joint, so the lens and the other brush must. */
function brokenFindings(notes: Notes, job: Job): Finding[] {
  const dark = notes.continuity.filter(({ lamp }) => lamp === 'dark').map(({ at }) => at);
  const shared = sharesCoils(job);
  if (shared && dark.length === 2 && !dark.every((at) => burntAt(notes, at)))
    return [{ condition: 'openCoil', place: SOMEWHERE }];
  return dark.map((at) => {
    const joint = (shared && dark.length === 1) || burntAt(notes, at);
    return { condition: joint ? 'brokenJoint' : 'openCoil', place: branch(at) };
  });
}

/** The case is reached from either brush through the terminal, so only a broken frame shows where it is grounded. */
function groundFindings({ fieldInsulation, megohms }: Notes, { limits }: Job): Finding[] {
  const lit = fieldInsulation.filter(({ lamp }) => lamp !== 'dark').map(({ at }) => at);
  if (lit.length > 0) return [{ condition: 'grounded', place: SOMEWHERE }];
  const low = megohms.some(
    (one) => one.part === 'fieldFrame' && one.megohms !== 'over' && one.megohms < limits.insulationMohm,
  );
  return low ? [{ condition: 'poorInsulation', place: SOMEWHERE }] : [];
}

/** Share by which two like branches may differ. Ours, no source. */
const ALIKE = 0.05;
/** No short of one of two coils halves the branch: a drop more than this many times the other's is a joint. */
const TWICE = 2;

/** Branches that should drop alike, compared: the lower has lost turns, or the higher has a bad joint. */
function dropFindings(notes: Notes, job: Job): Finding[] {
  const drops = BRUSHES.map((at) => ({
    at,
    mv: notes.drops.find((drop) => drop.at === at)?.millivolts ?? null,
  }));
  const counts = BRUSHES.map((at) => coilsTo(at, job).length);
  const [a, b] = drops;
  if (counts[0] !== counts[1] || a!.mv === null || b!.mv === null) return [];
  const [low, high] = a!.mv < b!.mv ? [a!, b!] : [b!, a!];
  const times = high.mv! / low.mv!;
  if (times < 1 + ALIKE) return [];
  const scorched = saw(notes, 'field:case', 'charredFieldCoil');
  const joint = times > TWICE || sharesCoils(job) || (!scorched && burntAt(notes, high.at));
  return joint
    ? [{ condition: 'brokenJoint', place: branch(high.at) }]
    : [{ condition: 'shortedCoil', place: branch(other(high.at)) }];
}

export function frameFindings(notes: Notes, job: Job): Finding[] {
  return [...brokenFindings(notes, job), ...groundFindings(notes, job), ...dropFindings(notes, job)];
}
