import { MAT_PARTS } from '../../../bench/action.ts';
import type { Film } from '../../film.ts';
import { canBeProven } from '../mat/ofAttempt.ts';
import { armatureStory } from './armature.ts';
import { matStory } from './mat.ts';
import type { EvidenceStory } from './shape.ts';

/** One story for each part of the job of which readings can say something. Not for the page's own thread. */
export function evidenceStories(film: Film): EvidenceStory[] {
  const mat = MAT_PARTS.filter((part) => canBeProven(film.scenario.public, part));
  const armature = film.scenario.public.parts.includes('armature');
  return [...(armature ? [armatureStory(film)] : []), ...mat.map((part) => matStory(film, part))];
}
