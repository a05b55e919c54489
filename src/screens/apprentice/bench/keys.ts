import { type Action, RANGES_A, type Selector } from '../../../bench/action.ts';
import { barAt, type CommutatorGeometry, REACH_CENTRE_DEG, STRIP_ARC_DEG } from '../../../bench/geometry.ts';
import type { Observation } from '../../../bench/observation.ts';
import {
  barOf,
  barPlace,
  FIELD_PLACES,
  type LeadId,
  PANEL_LEADS,
  PLATE_PLACES,
  type Place,
  partner,
} from '../../../bench/places.ts';
import { STRIP_STEP_DEG, USUAL_STRIP_MM } from '../../../bench/touchables.ts';

/** What a key at the bench asks for. */
export type Wish =
  | { readonly kind: 'act'; readonly action: Action }
  /** The lead that the tip keys move from now on. */
  | { readonly kind: 'choose'; readonly lead: LeadId }
  | { readonly kind: 'note' }
  /** Closer to the work, or back to the whole bench. */
  | { readonly kind: 'closer' }
  | { readonly kind: 'help' };

export interface KeyContext {
  readonly seen: Observation;
  readonly geometry: CommutatorGeometry;
  /** The lead in use, or null. */
  readonly lead: LeadId | null;
}

export interface Press {
  readonly key: string;
  readonly shift: boolean;
}

/** The keys of the bench as they are shown to the learner; they count only while the bench has the focus. */
export const KEY_LIST: readonly (readonly [keys: string, does: string])[] = [
  ['← →', 'turn the armature by one bar, top away from you or towards you'],
  ['Shift ← →', 'turn it by 5°'],
  ['G', 'lay a hand on the armature, or let go'],
  ['O, L, H', 'selector to off, low, high'],
  ['− +', 'ammeter range down or up'],
  ['1, 2', 'take ammeter probe 1 or 2 by its handle; make it the one in use'],
  ['3, 4', 'the same for lamp probe 1 or 2'],
  [
    '↑ ↓',
    'set the tip in use on the next bar up or down the side facing you; on the next place of a part in front of you',
  ],
  ['C, A', 'set the tip in use on the core, on the shaft'],
  ['P', 'tip to tip with its partner: proves the lamp'],
  ['U', 'lift the tip in use'],
  ['E', 'lean on the lamp probe in use, or ease off'],
  ['S', 'leave the ammeter probe in the holding stand'],
  ['B', 'lead in use back to its holster'],
  ['X', 'take the strip, or hang it up'],
  ['[ ]', 'hold the strip a step further round, either way'],
  [
    'V',
    'look through the lens: riser and bar nearest you, then the core; or a part in front of you, place by place',
  ],
  ['Z', 'look closer at the work, or see the whole bench again'],
  ['M', 'chalk the bar nearest you'],
  ['N', 'write down what you read'],
  ['?', 'this list'],
];

/** @returns the wish behind a key, or null for a key that means nothing here and now */
export function wishOf(press: Press, context: KeyContext): Wish | null {
  const key = press.key.length === 1 ? press.key.toLowerCase() : press.key;
  if (key === 'n') return { kind: 'note' };
  if (key === 'z') return { kind: 'closer' };
  if (key === '?') return { kind: 'help' };
  if (/^[1-4]$/.test(key)) return takeWish(PANEL_LEADS[Number(key) - 1]!, context.seen);
  const action = actOf(key, press.shift, context);
  return action && { kind: 'act', action };
}

function actOf(key: string, shift: boolean, context: KeyContext): Action | null {
  const { seen } = context;
  const to = SELECTOR_KEYS[key];
  if (to !== undefined) return { type: 'selector.turn', to };
  return (
    armatureKey(key, shift, context) ??
    rangeKey(key, seen) ??
    leadKey(key, context) ??
    stripKey(key, seen) ??
    eyeKey(key, context)
  );
}

const SELECTOR_KEYS: Readonly<Record<string, Selector>> = { o: 'off', l: 'low', h: 'high' };

/** The key that takes a lead, as a button shows it; only the panel's own leads have one. */
export function leadKeyOf(lead: LeadId): { readonly keyHint?: string } {
  const at = (PANEL_LEADS as readonly LeadId[]).indexOf(lead);
  return at < 0 ? {} : { keyHint: String(at + 1) };
}

function takeWish(lead: LeadId, seen: Observation): Wish {
  if (seen.leads[lead].at === 'hand') return { kind: 'choose', lead };
  return { kind: 'act', action: { type: 'lead.take', lead, grip: 'handle' } };
}

function armatureKey(key: string, shift: boolean, { seen, geometry }: KeyContext): Action | null {
  const step = shift ? 5 : 360 / geometry.bars;
  if (key === 'ArrowLeft') return { type: 'armature.turn', byDeg: -step };
  if (key === 'ArrowRight') return { type: 'armature.turn', byDeg: step };
  if (key !== 'g') return null;
  return {
    type: seen.hands.some((hand) => hand.holds === 'armature') ? 'armature.release' : 'armature.hold',
  };
}

function rangeKey(key: string, seen: Observation): Action | null {
  const step = key === '+' || key === '=' ? 1 : key === '-' || key === '−' ? -1 : 0;
  const to = step === 0 ? undefined : RANGES_A[RANGES_A.indexOf(seen.rangeA) + step];
  return to === undefined ? null : { type: 'range.turn', to };
}

function leadKey(key: string, context: KeyContext): Action | null {
  const { lead } = context;
  if (lead === null) return null;
  if (key === 'u') return { type: 'lead.lift', lead };
  if (key === 's') return { type: 'lead.clamp', lead };
  if (key === 'b') return { type: 'lead.holster', lead };
  if (key === 'e') return { type: 'lead.lean', lead, on: !context.seen.leads[lead].leaning };
  const place = touchKey(key, lead, context);
  return place && { type: 'lead.touch', lead, place };
}

function touchKey(key: string, lead: LeadId, context: KeyContext): Place | null {
  if (key === 'c') return 'core';
  if (key === 'a') return 'shaft';
  if (key === 'p') return `tip:${partner(lead)}`;
  const step = key === 'ArrowUp' ? -1 : key === 'ArrowDown' ? 1 : 0;
  if (step === 0) return null;
  const forward = placesInFront(context.seen);
  return forward.length > 0
    ? neighbourOf(context.seen.leads[lead].touches, forward, step)
    : nextBarFor(lead, step, context);
}

/** Places of the part of the mat that lies in front; none when the armature is what is worked on. */
function placesInFront({ mat }: Observation): readonly Place[] {
  if (mat.fieldFrame === 'forward') return FIELD_PLACES;
  return mat.brushPlate === 'forward' ? PLATE_PLACES : [];
}

/** The place after or before one in a list that goes round; the first when it is not in the list. */
function neighbourOf(place: Place | null, places: readonly Place[], step: 1 | -1): Place {
  const at = place === null ? -1 : places.indexOf(place);
  return places[at < 0 ? 0 : (at + step + places.length) % places.length]!;
}

/** The bar next to the one a tip touches, or the one nearest the person for a tip that touches none. */
export function nextBarFor(lead: LeadId, step: 1 | -1, { seen, geometry }: Omit<KeyContext, 'lead'>): Place {
  const touched = seen.leads[lead].touches;
  const bar = touched === null ? null : barOf(touched);
  if (bar === null) return barPlace(nearestBar(seen, geometry));
  return barPlace((bar + step + geometry.bars) % geometry.bars);
}

export function nearestBar(seen: Observation, geometry: CommutatorGeometry): number {
  return barAt(geometry, REACH_CENTRE_DEG, seen.rotationDeg);
}

function eyeKey(key: string, { seen, geometry }: KeyContext): Action | null {
  const bar = nearestBar(seen, geometry);
  const forward = placesInFront(seen);
  if (key === 'v' && forward.length > 0) {
    return { type: 'lens.look', place: neighbourOf(seen.look?.place ?? null, forward, 1) };
  }
  if (key === 'v') return { type: 'lens.look', place: lookFurther(seen.look?.place ?? null, bar) };
  return key === 'm' ? { type: 'chalk.mark', bar } : null;
}

/** Riser, bar, core: the next of what there is to see, one after the other. */
function lookFurther(looked: Place | null, bar: number): Place {
  if (looked === `riser:${bar}`) return barPlace(bar);
  return looked === `bar:${bar}` ? 'core' : `riser:${bar}`;
}

function stripKey(key: string, { strip }: Observation): Action | null {
  if (key === 'x') return { type: strip.at === 'rail' ? 'strip.take' : 'strip.hang' };
  const step = key === ']' ? STRIP_STEP_DEG : key === '[' ? -STRIP_STEP_DEG : 0;
  if (step === 0) return null;
  const { from, to } = STRIP_ARC_DEG;
  const angleDeg = strip.angleDeg === null ? (from + to) / 2 : strip.angleDeg + step;
  return {
    type: 'strip.hold',
    angleDeg: Math.min(to, Math.max(from, angleDeg)),
    heightMm: strip.heightMm ?? USUAL_STRIP_MM,
  };
}
