import type { RemedyKind } from '../engine/parts/remedies.ts';
import type { Action, BenchCare, GaugeKind, Preparation } from './action.ts';
import type { CommutatorGeometry } from './geometry.ts';
import type { Observation } from './observation.ts';
import type { Place } from './places.ts';
import { angleWords, LEAD_WORDS, placeWords } from './placeWords.ts';
import { brushWords, PART_WORDS } from './toolWords.ts';

/** An act as a button or a log line would name it. */
export function actionWords(geometry: CommutatorGeometry, seen: Observation, action: Action): string {
  const at = (place: Place) => placeWords(geometry, seen, place);
  switch (action.type) {
    case 'selector.turn':
      return `Turn the selector to ${action.to.toUpperCase()}`;
    case 'range.turn':
      return `Set the ammeter to ${action.to} A`;
    case 'armature.turn':
      return `Turn the armature ${turnWords(geometry, action.byDeg)}`;
    case 'lead.take':
    case 'lead.touch':
    case 'lead.lift':
    case 'lead.lean':
    case 'lead.clamp':
    case 'lead.holster':
      return leadActWords(action, at);
    case 'strip.hold':
      return `Hold the strip ${angleWords(action.angleDeg)}, ${action.heightMm} mm above the core`;
    case 'part.takeUp':
      return `Take ${PART_WORDS[action.part]} up`;
    case 'part.putBack':
      return `Put ${PART_WORDS[action.part]} back`;
    case 'lens.look':
      return `Look at ${at(action.place)} under the lens`;
    case 'chalk.mark':
      return `Chalk ${at(`bar:${action.bar}`)}`;
    case 'gauge.read':
      return action.brush === undefined ? GAUGE_ACTS[action.gauge] : `Measure ${brushWords(action.brush)}`;
    case 'remedy.do':
      return action.bar === undefined ? REMEDY_ACTS[action.remedy] : `Resolder ${at(`riser:${action.bar}`)}`;
    case 'bench.setRight':
      return CARE_ACTS[action.what];
    case 'tester.volts':
      return `Set the insulation tester to ${action.to} V`;
    case 'tester.press':
      return action.on
        ? 'Press the button of the insulation tester'
        : 'Let the button of the insulation tester go';
    case 'drop.feed':
      return action.at === null
        ? 'Take the feed off'
        : `Clamp the feed on ${at(action.at[0])} and ${at(action.at[1])}`;
    case 'prepare.check':
      return PREPARE_ACTS[action.item];
    default:
      return PLAIN_ACTS[action.type];
  }
}

function leadActWords(
  action: Extract<Action, { type: `lead.${string}` }>,
  at: (place: Place) => string,
): string {
  const lead = LEAD_WORDS[action.lead];
  switch (action.type) {
    case 'lead.take':
      return `Take ${lead} by the ${action.grip === 'tip' ? 'bare tip' : 'handle'}`;
    case 'lead.touch':
      return `Put ${lead} on ${at(action.place)}`;
    case 'lead.lift':
      return `Lift ${lead}`;
    case 'lead.lean':
      return action.on ? `Lean on ${lead}` : `Ease off ${lead}`;
    case 'lead.clamp':
      return action.lead.startsWith('ammeter') ? `Leave ${lead} in the stand` : `Leave ${lead} clipped on`;
    case 'lead.holster':
      return `Put ${lead} back into its holster`;
  }
}

const GAUGE_ACTS: Readonly<Record<GaugeKind, string>> = {
  diameter: 'Measure the commutator’s diameter',
  runOut: 'Measure the commutator’s run-out',
  undercut: 'Measure the depth of the mica',
  brushLength: 'Measure a brush',
};

const REMEDY_ACTS: Readonly<Record<RemedyKind, string>> = {
  brushBetweenBars: 'Brush and clean between the bars',
  undercut: 'Undercut the mica',
  skimAndPolish: 'Skim and polish the commutator',
  resolderRiser: 'Resolder a riser',
  cleanPlateInsulation: 'Clean the brush plate’s insulation',
  tightenRivets: 'Tighten the brush plate’s rivets',
};

const CARE_ACTS: Readonly<Record<BenchCare, string>> = {
  lamp: 'Put in a new bulb',
  lampLeads: 'Put on new lamp leads',
  ammeterLeads: 'Put on new ammeter leads',
  ammeterZero: 'Set the ammeter to zero',
};

const PREPARE_ACTS: Readonly<Record<Preparation, string>> = {
  ringsOff: 'Take rings and watch off',
  eyeProtection: 'Put on eye protection',
  dryFloor: 'See that the floor is dry',
  secondPerson: 'See that a second person is about',
  emergencyStop: 'See where the emergency stop is',
  protectedSupply: 'See that the supply is protected: residual-current device or isolating transformer',
  testLabel: 'See that the bench’s test label is in date',
  leadsSound: 'See that leads and handles are undamaged',
};

const PLAIN_ACTS = {
  'armature.place': 'Lay the armature in the cradle',
  'armature.lift': 'Lift the armature out',
  'armature.hold': 'Lay a hand on the armature',
  'armature.release': 'Let go of the armature',
  'brushes.part': 'Keep the field brushes apart',
  'brushes.join': 'Let the field brushes lie together',
  'tester.discharge': 'Discharge the part through the tester',
  'strip.take': 'Take the strip',
  'strip.away': 'Take the strip away from the core',
  'strip.hang': 'Hang the strip up',
  'sheet.write': 'Write on the test sheet',
  'verdict.write': 'Write the verdict',
  'job.handIn': 'Hand the job in',
} as const;

/** Bar numbers rise towards the bottom on the near side, so a positive turn brings the top towards the person. */
function turnWords(geometry: CommutatorGeometry, byDeg: number): string {
  const bars = (Math.abs(byDeg) * geometry.bars) / 360;
  const far = Math.abs(bars - Math.round(bars)) < 0.01 && Math.round(bars) > 0;
  const amount = far
    ? `${Math.round(bars)} bar${Math.round(bars) === 1 ? '' : 's'}`
    : `${tidy(Math.abs(byDeg))}°`;
  return `${amount}, top ${byDeg > 0 ? 'towards' : 'away from'} you`;
}

function tidy(value: number): string {
  return String(Number(value.toFixed(1)));
}
