import type { BenchCare } from '../action.ts';
import { CARE_MINUTES } from '../memory.ts';
import type { Observation } from '../observation.ts';
import type { Place } from '../places.ts';
import { type Asked, doing, first, type GuideStep, hungUp, powered, type Watched } from './step.ts';

/** A lamp that stays dark with its tips together: the bench itself is at fault, and is put right before anything else. */

/** How the lamp has failed so far, as someone who watched would know. */
export interface LampTrouble {
  /** Since when its tips have lain together on LOW with the lamp dark, ms, or null. */
  readonly darkSinceMs: number | null;
  /** It was seen to stay dark, and has not lit since. */
  readonly dead: boolean;
  /** Repairs made since it was found dead. */
  readonly repairs: number;
  readonly minutesSpent: number;
}

export const NO_TROUBLE: LampTrouble = { darkSinceMs: null, dead: false, repairs: 0, minutesSpent: 0 };

/** A good lamp is plainly alight long before this, ms. */
const SURE_AFTER_MS = 1500;

/** The same object when nothing has changed. */
export function troubleAfter(before: LampTrouble, seen: Observation, together: boolean): LampTrouble {
  const { lamp, atMs, minutesSpent } = seen;
  if (lamp.glow > 0 && together) return before === NO_TROUBLE ? before : { ...NO_TROUBLE, minutesSpent };
  const darkSinceMs = together ? (before.darkSinceMs ?? atMs) : null;
  const repaired = before.dead && minutesSpent > before.minutesSpent;
  const dead = !repaired && (before.dead || (darkSinceMs !== null && atMs - darkSinceMs >= SURE_AFTER_MS));
  const repairs = before.repairs + (repaired ? 1 : 0);
  const next: LampTrouble = { darkSinceMs, dead, repairs, minutesSpent };
  const same = (Object.keys(next) as (keyof LampTrouble)[]).every((key) => next[key] === before[key]);
  return same ? before : next;
}

const LOOKS: readonly Place[] = ['lampBulb', 'handle:lamp.1', 'handle:lamp.2'];

/** What is done about a lamp that was seen to stay dark; null while there is nothing the matter with it. */
export function deadLampWork(asked: Pick<Asked, 'seen' | 'watched'>): GuideStep | null {
  if (!asked.watched.trouble.dead) return null;
  return first(
    () => hungUp(['lamp.1', 'lamp.2'], asked),
    () =>
      powered('off', asked, 'The lamp is dead: nothing dark counts. Off before anyone works on the bench.'),
    () => lookedOver(asked),
    () => repaired(asked.watched),
  );
}

function lookedOver({ watched, seen }: Pick<Asked, 'seen' | 'watched'>): GuideStep | null {
  if (watched.trouble.repairs > 0 || clueOf(watched) !== null) return null;
  const here = seen.look === null ? -1 : LOOKS.indexOf(seen.look.place);
  const place = LOOKS[here + 1];
  if (place === undefined) return null;
  return doing(
    { type: 'lens.look', place },
    place === 'lampBulb'
      ? 'Look at the bulb under the lens.'
      : 'Look along the lamp’s leads, handle and cable.',
    'A broken filament or a frayed cable can be seen; then you know which of the two it is.',
    place,
  );
}

/** What the lens has shown to be broken, or null. */
function clueOf({ clues }: Watched): BenchCare | null {
  const has = (place: string, clue: string) =>
    clues.some((one) => one.place.startsWith(place) && one.clue === clue);
  if (has('lampBulb', 'brokenFilament')) return 'lamp';
  return has('handle:lamp', 'frayedCable') ? 'lampLeads' : null;
}

/** First what was seen to be broken, or else the quicker of the two; then the other; then somebody is called. */
function repaired(watched: Watched): GuideStep {
  const likely = clueOf(watched) ?? 'lamp';
  const what = [likely, likely === 'lamp' ? 'lampLeads' : 'lamp'][watched.trouble.repairs] as
    | 'lamp'
    | 'lampLeads'
    | undefined;
  if (what === undefined) {
    const because = 'Bulb and leads are new, and the lamp stays dark: nothing can be tested with it.';
    return { do: 'Tell whoever looks after the bench.', because, act: null, highlight: null };
  }
  return doing(
    { type: 'bench.setRight', what },
    what === 'lamp' ? 'Put in a new bulb.' : 'Put on new lamp leads.',
    `It takes about ${CARE_MINUTES[what]} minutes. Then the lamp is proved as if nothing had been.`,
    'bench',
  );
}
