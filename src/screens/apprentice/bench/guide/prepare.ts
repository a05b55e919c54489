import { barPlace, type Place } from '../../../../bench/places.ts';
import { nearestBar } from '../keys.ts';
import { doing, type Situation, type Step, writing } from './step.ts';

/** Looking and marking: what comes before power. */
export function prepareStep(at: Situation): Step | null {
  return at.job.parts.includes('armature') ? (lookStep(at) ?? chalkStep(at)) : null;
}

const LOOKS = [
  [
    'riser',
    'Look at a few risers through the lens.',
    'Bright, even solder is good; solder thrown outwards says a joint ran hot.',
  ],
  [
    'bar',
    'Look at a few bars, and at the mica between them.',
    'A burnt edge or metal across the mica is a clue. A clue is not a verdict.',
  ],
  ['core', 'Look at the core.', 'A rubbed core means the bearings let the armature touch the poles.'],
] as const;

function lookStep({ job, seen, lines, known }: Situation): Step | null {
  if (
    !job.tests.includes('look') ||
    lines.some(({ test, part = 'armature' }) => test === 'look' && part === 'armature')
  )
    return null;
  const next = LOOKS.find(([kind]) => !known.looked.includes(kind));
  if (!next) {
    const why =
      'What is written down cannot be forgotten or touched up later. “Nothing to see” is a finding too.';
    return writing('look', 'Write down what you saw.', why);
  }
  const [kind, say, why] = next;
  const bar = nearestBar(seen, job.armature);
  const place: Place = kind === 'core' ? 'core' : kind === 'bar' ? barPlace(bar) : `riser:${bar}`;
  return doing({ type: 'lens.look', place }, say, why);
}

function chalkStep({ job, seen }: Situation): Step | null {
  if (seen.chalkedBar !== null) return null;
  const why = 'Real bars carry no numbers. Everything you write is counted from this one.';
  return doing(
    { type: 'chalk.mark', bar: nearestBar(seen, job.armature) },
    'Chalk the bar nearest you.',
    why,
  );
}

/** An armature in the cradle before the growler is switched on. */
export function placeStep({ seen }: Situation): Step | null {
  if (seen.cradle === 'armature') return null;
  const why =
    'The armature closes the magnetic circuit. With an empty cradle the winding draws several times its current. The bench is off while a part goes in.';
  return doing({ type: 'armature.place' }, 'Lay the armature in the cradle.', why);
}
