import { holsterAmmeter } from './ammeter.ts';
import { holsterLamp } from './lamp.ts';
import { doing, type Situation, type Step } from './step.ts';
import { hangStrip } from './strip.ts';

/** Growler or armature has become too hot, or the cut-out has opened: off, and wait. */
export function coolStep(at: Situation): Step | null {
  const { seen, known } = at;
  // A lamp in use is proved first: switched off before, all its dark results would be lost.
  const lampInUse = known.watched.lamp === 'used' && seen.supply === 'on';
  if (!known.cooling || lampInUse) return null;
  if (seen.selector !== 'off') return freeHand(at) ?? switchOff(at);
  const what = seen.growlerHeat === 'cool' || seen.growlerHeat === 'warm' ? 'the armature' : 'the growler';
  return {
    say: `Let ${what} cool. Go through what you have written meanwhile.`,
    why: 'A growler is made for short work. Hot varnish chars, and a cut-out sets itself again only once it is cold enough and the selector is at OFF.',
    act: null,
  };
}

function freeHand(at: Situation): Step | null {
  const full = at.seen.hands.every(({ holds }) => holds !== 'nothing');
  return full ? (hangStrip(at) ?? holsterLamp(at) ?? holsterAmmeter(at)) : null;
}

function switchOff({ seen }: Situation): Step {
  const say =
    seen.supply === 'cutOut'
      ? 'The cut-out has opened. Turn the selector to OFF.'
      : 'Something has grown too hot. Turn the selector to OFF.';
  return doing({ type: 'selector.turn', to: 'off' }, say, 'What heats goes on heating as long as it is on.');
}
