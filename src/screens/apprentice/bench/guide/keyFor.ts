import type { Action, Selector } from '../../../../bench/action.ts';
import type { Observation } from '../../../../bench/observation.ts';
import { leadKeyOf } from '../keys.ts';

const SELECTOR: Readonly<Record<Selector, string>> = { off: 'O', low: 'L', high: 'H' };

/** The key that does what the guide asks for, as the list of keys shows it; null where there is only the button. */
export function keyFor(action: Action, seen: Observation): string | null {
  switch (action.type) {
    case 'selector.turn':
      return SELECTOR[action.to];
    case 'range.turn':
      return action.to > seen.rangeA ? '+' : '−';
    case 'armature.turn':
      return action.byDeg > 0 ? '→' : '←';
    case 'lead.take':
      return leadKeyOf(action.lead).keyHint ?? null;
    case 'strip.hold':
      return action.angleDeg < (seen.strip.angleDeg ?? 0) ? '[' : ']';
    case 'lead.touch':
      return touchKey(action);
    default:
      return SIMPLE[action.type] ?? null;
  }
}

const SIMPLE: Readonly<Record<string, string>> = {
  'lead.lift': 'U',
  'lead.lean': 'E',
  'lead.clamp': 'S',
  'lead.holster': 'B',
  'strip.take': 'X',
  'strip.hang': 'X',
  'lens.look': 'V',
  'chalk.mark': 'M',
};

/** On a part that lies in front the arrow goes from place to place, and the number says which tip is meant. */
function touchKey({ lead, place }: Extract<Action, { type: 'lead.touch' }>): string | null {
  const { keyHint } = leadKeyOf(lead);
  if (keyHint === undefined) return null;
  if (place === 'core') return 'C';
  if (place === 'shaft') return 'A';
  if (place.startsWith('tip:')) return 'P';
  return place.startsWith('field:') || place.startsWith('plate:') ? `${keyHint} ↓` : '↓';
}
