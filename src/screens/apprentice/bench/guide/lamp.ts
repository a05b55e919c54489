import { barAngleDeg, canReach } from '../../../../bench/geometry.ts';
import { barPlace, type LeadId } from '../../../../bench/places.ts';
import { countFromChalk } from '../../../shared/count.ts';
import { standing } from '../sheetEntry.ts';
import { lampBar, tipsTogether } from './known.ts';
import { doing, powered, type Situation, type Step, writing } from './step.ts';

const STEEL: LeadId = 'lamp.1';
const COPPER: LeadId = 'lamp.2';

/** The ground test between two proofs of the lamp. */
export function lampStep(at: Situation): Step | null {
  const { known, job } = at;
  const tested = known.lampBars.length === job.armature.bars;
  if (tested && known.provedAgain) return resultStep(at);
  const why = 'LOW is the only place where the lamp is live. From now on both tips carry mains voltage.';
  const ready = powered('low', at, why) ?? litStep(at);
  if (ready) return ready;
  if (!known.proved || tested) return proveStep(at);
  return barStep(at);
}

/** A lamp that lights over a bar is written down at once. */
function litStep({ seen, lines, job }: Situation): Step | null {
  const bar = lampBar(seen);
  if (bar === null || seen.lamp.glow === 0) return null;
  const count = countFromChalk(bar, seen.chalkedBar, job.armature.bars);
  const has = [...standing(lines, 'ground').keys()].length > 0;
  if (has || count === null) return null;
  return writing(
    'ground',
    'The lamp lights: write the line.',
    'Winding or commutator has found the steel. The lamp does not say where.',
  );
}

function takeStep(leads: readonly LeadId[], { seen }: Situation): Step | null {
  const lead = leads.find((one) => seen.leads[one].at !== 'hand');
  if (!lead) return null;
  const why = 'Behind the guard, never in front of it: a few millimetres further are mains.';
  return doing(
    { type: 'lead.take', lead, grip: 'handle' },
    `Take lamp probe ${lead === STEEL ? 1 : 2} by its handle.`,
    why,
  );
}

function proveStep(at: Situation): Step {
  const take = takeStep([STEEL, COPPER], at);
  if (take) return take;
  const why = at.known.proved
    ? 'Only now do the dark results count: the lamp was alive before them and after.'
    : 'A dead lamp is as dark as good insulation. See it light before you trust it dark.';
  if (tipsTogether(at.seen)) return { say: 'See the lamp light.', why, act: null };
  return doing({ type: 'lead.touch', lead: STEEL, place: 'tip:lamp.2' }, 'Touch the two tips together.', why);
}

function barStep(at: Situation): Step {
  const { seen, job, known } = at;
  const left = Array.from({ length: job.armature.bars }, (_, bar) => bar).filter(
    (bar) => !known.lampBars.includes(bar),
  );
  const next = left.find((bar) => canReach(barAngleDeg(job.armature, bar, seen.rotationDeg)));
  if (next === undefined) return turnStep(at);
  const take = takeStep([STEEL, COPPER], at);
  if (take) return take;
  if (seen.leads[STEEL].touches !== 'core') {
    return doing(
      { type: 'lead.touch', lead: STEEL, place: 'core' },
      'Set lamp probe 1 on the core.',
      'Core and shaft are one piece of steel: either will do. Keep your hands off both.',
    );
  }
  return doing(
    { type: 'lead.touch', lead: COPPER, place: barPlace(next) },
    'Set lamp probe 2 on the next bar not tested yet, and watch the lamp.',
    'Every bar: a winding that is open may reach the steel from one part only.',
  );
}

/** Probes off the part and one lead away, for a hand to turn with. */
function turnStep({ seen }: Situation): Step {
  const why = 'Never a hand on the part while a live tip is on it. And a hand must be free to turn.';
  const touching = [COPPER, STEEL].find((lead) => seen.leads[lead].touches !== null);
  if (touching) return doing({ type: 'lead.lift', lead: touching }, 'Lift both tips off the part.', why);
  if (seen.leads[COPPER].at === 'hand')
    return doing({ type: 'lead.holster', lead: COPPER }, 'Put one lamp probe into its holster.', why);
  return doing(
    { type: 'armature.turn', byDeg: 180 },
    'Turn the armature half round.',
    'The bars on the far side are out of reach.',
  );
}

function resultStep(at: Situation): Step | null {
  if (at.lines.some(({ test }) => test === 'ground')) return null;
  return writing(
    'ground',
    'Write down what the lamp did.',
    'Dark at every bar, between two proofs: no ground that a lamp can find. Tens of kilohms stay dark.',
  );
}

/** Lamp probes away: first off the metal, then into the holsters. */
export function holsterLamp({ seen }: Situation): Step | null {
  const touching = [STEEL, COPPER].find(
    (lead) => seen.leads[lead].touches !== null && seen.leads[lead].at === 'hand',
  );
  if (touching)
    return doing(
      { type: 'lead.lift', lead: touching },
      'Take the tips apart.',
      'Then nothing is joined to a live probe any more.',
    );
  const lead = [STEEL, COPPER].find((one) => seen.leads[one].at !== 'holster');
  if (!lead) return null;
  return doing(
    { type: 'lead.holster', lead },
    'Put the lamp probe into its holster.',
    'Live leads are not laid down on a bench.',
  );
}
