import { lampShows } from '../../assess/evidence/reading.ts';
import { createSession } from '../../attempt/session.ts';
import type { Action } from '../../bench/action.ts';
import type { Observation } from '../../bench/observation.ts';
import { PANEL_LEADS } from '../../bench/places.ts';
import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { cluesAt } from '../../scenario/hidden/looks.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { BenchEffect } from '../../screens/instructor/desk.ts';

/** Time for a filament to light and for the needle to come to rest, ms. */
const SETTLE_MS = 4000;

/** What proving shows of the bench itself, beside one in good order; empty where nothing is the matter with it. */
export function benchEffects(scenario: Scenario, design: ArmatureDesign): BenchEffect[] {
  const { bench, ...hidden } = scenario.hidden;
  if (bench === undefined || bench.faults.length === 0) return [];
  const sound = proved({ ...scenario, hidden }, design);
  const shown = proved(scenario, design);
  return [
    ...sound.map(({ what, shows }, nth) => ({ what, sound: shows, shows: shown[nth]!.shows })),
    { what: 'Handles under the lens', sound: 'whole', shows: crackedWords(scenario, design) },
  ];
}

const LAMP: readonly Action[] = [
  { type: 'armature.place' },
  { type: 'selector.turn', to: 'low' },
  { type: 'lead.take', lead: 'lamp.1', grip: 'handle' },
  { type: 'lead.take', lead: 'lamp.2', grip: 'handle' },
  { type: 'lead.touch', lead: 'lamp.1', place: 'tip:lamp.2' },
];
function proved(scenario: Scenario, design: ArmatureDesign): { what: string; shows: string }[] {
  const lamp = after(LAMP, scenario, design);
  return [
    { what: 'Lamp, tips together on LOW', shows: lampShows(lamp.lamp.glow) },
    { what: 'Needle with no current', shows: needleWords(after([], scenario, design)) },
    { what: 'Ammeter across two bars on HIGH', shows: needleWords(acrossTwoBars(scenario, design)) },
  ];
}

function after(acts: readonly Action[], scenario: Scenario, design: ArmatureDesign): Observation {
  const session = createSession({ scenario, design, mode: 'practice' });
  for (const [nth, act] of acts.entries()) session.act(act, (nth + 1) * 100);
  return session.observe(acts.length * 100 + SETTLE_MS);
}

/** Two neighbouring bars that lie where the probes reach, whichever way the armature came to lie. */
function acrossTwoBars(scenario: Scenario, design: ArmatureDesign): Observation {
  const sound = { ...scenario, hidden: { ...scenario.hidden, armature: { faults: [] } } };
  const session = createSession({ scenario: sound, design, mode: 'practice' });
  const acts: Action[] = [
    { type: 'armature.place' },
    { type: 'selector.turn', to: 'high' },
    { type: 'lead.take', lead: 'ammeter.1', grip: 'handle' },
    { type: 'lead.take', lead: 'ammeter.2', grip: 'handle' },
  ];
  let atMs = 0;
  const does = (act: Action): boolean => {
    atMs += 100;
    return session.act(act, atMs).kind === 'done';
  };
  for (const act of acts) does(act);
  for (let bar = 0; bar < design.bars; bar++) {
    const next = (bar + 1) % design.bars;
    if (!does({ type: 'lead.touch', lead: 'ammeter.1', place: `bar:${bar}` })) continue;
    if (!does({ type: 'lead.touch', lead: 'ammeter.2', place: `bar:${next}` })) continue;
    const seen = session.observe(atMs + SETTLE_MS);
    if (seen.needle.deflection > 0.05 || bar > design.bars / 2) return seen;
  }
  return session.observe(atMs + SETTLE_MS);
}

function needleWords({ needle, rangeA }: Observation): string {
  if (needle.pegged) return 'against its stop';
  return `${Number((needle.deflection * rangeA).toFixed(1))} A on the ${rangeA} A range`;
}

function crackedWords({ hidden }: Scenario, design: ArmatureDesign): string {
  const cracked = PANEL_LEADS.filter((lead) =>
    cluesAt(hidden, design, `handle:${lead}`).includes('crackedHandle'),
  );
  if (cracked.length === 0) return 'whole';
  return `cracked: ${cracked.map((lead) => lead.replace('.', ' probe ')).join(', ')}`;
}
