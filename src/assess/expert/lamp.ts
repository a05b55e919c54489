import type { BenchCare } from '../../bench/action.ts';
import type { LeadId, Place } from '../../bench/places.ts';
import { setRight } from './benchCare.ts';
import type { Hands } from './hands.ts';
import type { Glow } from './notes.ts';

/** Work with the test lamp: proved, used, proved again. */

/** Long enough for the filament and the eye, ms. */
const LAMP_MS = 400;
/** Brightness from which a lamp with its tips together is seen to work, and from which a lit one is plainly lit. */
const PROOF_GLOW = 4;
const PLAIN_GLOW = 5;
/** What a lamp that will not prove may want, the quicker first. */
const CURES: readonly BenchCare[] = ['lamp', 'lampLeads'];

/** LOW, the leads by their handles, and the lamp proved: put right first where it will not light. */
export function beginLamp(hands: Hands): void {
  takeUp(hands);
  const cures = [...CURES];
  while (!proves(hands)) {
    const what = cures.shift();
    if (what === undefined) throw new Error('the lamp does not light with its tips together');
    hangUp(hands);
    setRight(hands, what);
    takeUp(hands);
  }
}

/** The lamp proved once more, hung up, the bench off. */
export function endLamp(hands: Hands): void {
  if (!proves(hands))
    throw new Error('the lamp proved before and not after: its dark results count for nothing');
  hangUp(hands);
}

function takeUp(hands: Hands): void {
  hands.do({ type: 'selector.turn', to: 'low' });
  takeLeads(hands);
}

function hangUp(hands: Hands): void {
  holsterLeads(hands);
  hands.do({ type: 'selector.turn', to: 'off' });
}

export function takeLeads(hands: Hands): void {
  hands.all(
    { type: 'lead.take', lead: 'lamp.1', grip: 'handle' },
    { type: 'lead.take', lead: 'lamp.2', grip: 'handle' },
  );
}

export function holsterLeads(hands: Hands): void {
  hands.all({ type: 'lead.holster', lead: 'lamp.1' }, { type: 'lead.holster', lead: 'lamp.2' });
}

function proves(hands: Hands): boolean {
  hands.do({ type: 'lead.touch', lead: 'lamp.1', place: 'tip:lamp.2' });
  const lights = hands.wait(LAMP_MS).lamp.glow >= PROOF_GLOW;
  lift(hands, 'lamp.1');
  return lights;
}

/** Takes a tip off and lets the filament go dark, so that its afterglow is not taken for a light. */
export function lift(hands: Hands, lead: LeadId): void {
  hands.do({ type: 'lead.lift', lead });
  while (hands.see().lamp.glow > 0) hands.wait(LAMP_MS);
}

/** The lamp looked at until it has made up its mind. */
export function watch(hands: Hands): Glow {
  if (hands.wait(LAMP_MS).lamp.glow === 0) return 'dark';
  const { glow } = hands.wait(3 * LAMP_MS).lamp;
  if (glow === 0) return 'dark';
  return glow < PLAIN_GLOW ? 'dim' : 'lit';
}

/** The lamp between two places, one after the other; both tips come off again. */
export function lampBetween(hands: Hands, one: Place, other: Place): Glow {
  hands.do({ type: 'lead.touch', lead: 'lamp.1', place: one });
  hands.do({ type: 'lead.touch', lead: 'lamp.2', place: other });
  const seen = watch(hands);
  lift(hands, 'lamp.2');
  hands.do({ type: 'lead.lift', lead: 'lamp.1' });
  return seen;
}
