import type { RangeA } from './action.ts';
import { capital } from './capital.ts';
import type { CommutatorGeometry } from './geometry.ts';
import type { Clue, HumView, LampView, LeadView, NeedleView, Observation, StripView } from './observation.ts';
import { ALL_LEADS, type LeadId } from './places.ts';
import { angleWords, LEAD_WORDS, placeWords } from './placeWords.ts';
import { betweenStrokes, CROWDED_BELOW, printedA } from './scale.ts';
import { bookWords, dropWords, gaugeWords, matWords, testerWords } from './toolWords.ts';

export { actionWords } from './actWords.ts';

/**
 * An observation in plain words: what eyes, ears and fingers would get and no more. One sentence per thing, each
 * beginning with a capital; things with nothing to say are left out.
 */
export function sayObservation(geometry: CommutatorGeometry, seen: Observation): readonly string[] {
  return [
    panelWords(seen),
    cradleWords(seen),
    ...matWords(seen),
    ...ALL_LEADS.map((lead) => leadWords(geometry, seen, lead)),
    needleWords(seen.needle, seen.rangeA),
    lampWords(seen.lamp),
    testerWords(seen.tester),
    dropWords(geometry, seen),
    stripWords(seen.strip),
    humWords(seen.hum),
    heatWords(seen),
    lookWords(geometry, seen),
    gaugeWords(seen.gauge),
    bookWords(seen),
    seen.stopped === null ? '' : `Stopped: ${seen.stopped.sentence}`,
  ].filter((sentence) => sentence !== '');
}

const SUPPLY_WORDS: Readonly<Record<Observation['supply'], string>> = {
  off: 'pilot light out',
  on: 'pilot light on',
  cutOut: 'cut-out flag up, no supply',
  isolated: 'supply isolated',
};

function panelWords({ selector, supply, rangeA }: Observation): string {
  return `Selector at ${selector.toUpperCase()}, ${SUPPLY_WORDS[supply]}; ammeter on ${rangeA} A.`;
}

function cradleWords({ cradle, hands, chalkedBar }: Observation): string {
  if (cradle === 'empty') return 'The cradle is empty; the armature lies on the mat.';
  const held = hands.some((hand) => hand.holds === 'armature') ? ', a hand on it' : '';
  return `The armature lies in the cradle${held}${chalkedBar === null ? ', no bar chalked' : ''}.`;
}

/** Where a lead is and what it touches; nothing for one in its holster. */
export function leadWords(geometry: CommutatorGeometry, seen: Observation, lead: LeadId): string {
  const { at, grip, touches, leaning } = seen.leads[lead];
  if (at === 'holster' || at === 'absent') return '';
  const where = touches === null ? 'touching nothing' : `on ${placeWords(geometry, seen, touches)}`;
  const held = grip === 'tip' ? 'held by the bare tip' : leaning ? 'in the hand, leaned on' : 'in the hand';
  return capital(`${LEAD_WORDS[lead]} ${where}, ${KEPT_WORDS[at] ?? held}.`);
}
const KEPT_WORDS: Readonly<Partial<Record<LeadView['at'], string>>> = {
  stand: 'in the stand',
  clip: 'clipped on',
};

/** "Needle between 30 and 32, nearer 30." */
export function needleWords(needle: NeedleView, rangeA: RangeA): string {
  if (needle.pegged) return `Needle hard against the stop beyond ${rangeA}.`;
  const still = needle.atRest ? 'Needle' : 'Needle moving, now';
  if (needle.deflection <= 1 / 400) return needle.atRest ? 'Needle at zero.' : 'Needle moving, near zero.';
  if (printedA(needle, rangeA) < CROWDED_BELOW * rangeA) {
    return `${still} off zero but below ${CROWDED_BELOW * rangeA}, where the strokes crowd.`;
  }
  const { lowA, highA, nearer } = betweenStrokes(needle, rangeA);
  if (nearer === 'on low') return `${still} on ${lowA}.`;
  if (nearer === 'on high') return `${still} on ${highA}.`;
  if (nearer === 'middle') return `${still} about halfway between ${lowA} and ${highA}.`;
  return `${still} between ${lowA} and ${highA}, nearer ${nearer === 'low' ? lowA : highA}.`;
}

const GLOW_WORDS = [
  'The lamp is dark.',
  'The lamp glows dull red.',
  'The lamp glows red.',
  'The lamp glows orange.',
  'The lamp glows orange.',
  'The lamp is lit, yellowish.',
  'The lamp is lit, yellowish.',
  'The lamp is lit, nearly full.',
  'The lamp is full on.',
] as const;

export function lampWords({ glow }: LampView): string {
  return GLOW_WORDS[glow] ?? GLOW_WORDS[0];
}

const PULL_WORDS = [
  'no pull',
  'a pull just felt',
  'a plain pull',
  'a strong pull',
  'snapped on to the iron',
] as const;

/** Nothing while the strip hangs on the rail. */
export function stripWords({ at, angleDeg, heightMm, pull, buzz }: StripView): string {
  if (at === 'rail') return '';
  if (at === 'hand' || angleDeg === null || heightMm === null) return 'The strip is in the hand.';
  const trembles =
    buzz === 0
      ? 'still'
      : buzz <= 2
        ? 'trembling'
        : buzz <= 5
          ? 'buzzing'
          : buzz < 8
            ? 'buzzing hard'
            : 'rattling';
  return `The strip is held ${heightMm} mm above the core, ${angleWords(angleDeg)}: ${PULL_WORDS[pull] ?? 'a pull'}, ${trembles}.`;
}

export function humWords({ level, harshness }: HumView): string {
  if (level === 0) return '';
  const loud = level <= 6 ? 'hums quietly' : level <= 13 ? 'hums' : 'hums loudly';
  const rough = harshness >= 7 ? ', growling harshly' : harshness >= 4 ? ', with a rattle in it' : '';
  return `The growler ${loud}${rough}.`;
}

const GROWLER_HEAT: Readonly<Record<Observation['growlerHeat'], string>> = {
  cool: '',
  warm: 'The growler winding is warm.',
  hot: 'The growler winding is hot.',
  tooHotToTouch: 'The growler winding is too hot to touch.',
};
const PART_HEAT: Readonly<Record<Observation['partHeat'], string>> = {
  cool: '',
  warm: 'The armature is warm somewhere.',
  hot: 'The armature is hot somewhere.',
  smoking: 'The armature smokes.',
};

function heatWords({ growlerHeat, partHeat }: Observation): string {
  return [GROWLER_HEAT[growlerHeat], PART_HEAT[partHeat]].filter((words) => words !== '').join(' ');
}

export const CLUE_WORDS: Readonly<Record<Clue, string>> = {
  brightSolder: 'bright, even solder',
  solderThrown: 'solder thrown outwards',
  burntBarEdge: 'a burnt bar edge',
  metalAcrossMica: 'metal lying across the mica',
  carbonAcrossMica: 'carbon lying across the mica',
  charredInsulation: 'charred insulation',
  rubbedCore: 'a rubbed core',
  dirt: 'dirt',
  wornSurface: 'a worn surface',
  looseRivet: 'a loose rivet',
  brokenPigtail: 'a broken pigtail',
  burntPigtail: 'a burnt pigtail',
  charredFieldCoil: 'a charred coil wrapping',
  looseFieldCoil: 'a coil loose on its pole',
  darkenedInsulator: 'a darkened insulator',
  crackedHandle: 'a cracked handle',
  frayedCable: 'a frayed cable',
  brokenFilament: 'a broken filament',
  blackenedBulb: 'a blackened bulb',
};

function lookWords(geometry: CommutatorGeometry, seen: Observation): string {
  if (seen.look === null) return '';
  const clues = seen.look.sees.map((clue) => CLUE_WORDS[clue]).join(', ');
  const place = placeWords(geometry, seen, seen.look.place);
  return `Under the lens, ${place}: ${clues === '' ? 'nothing to see' : clues}.`;
}
