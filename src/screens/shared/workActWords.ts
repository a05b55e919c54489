import type { Action, BenchCare, GaugeKind, Preparation } from '../../bench/action.ts';
import type { Place } from '../../bench/places.ts';
import { LEAD_WORDS } from '../../bench/placeWords.ts';
import { brushWords, PART_WORDS } from '../../bench/toolWords.ts';

/** Acts with mat, gauges, remedies and rail tools as lines of the debrief; null for any other act. */
export function workActWords(action: Action, at: (place: Place) => string): string | null {
  switch (action.type) {
    case 'part.takeUp':
      return `Took ${PART_WORDS[action.part]} up`;
    case 'part.putBack':
      return `Put ${PART_WORDS[action.part]} back`;
    case 'lead.lean':
      return `${action.on ? 'Leaned on' : 'Eased off'} ${LEAD_WORDS[action.lead]}`;
    case 'gauge.read':
      return action.brush === undefined ? GAUGED[action.gauge] : `Measured ${brushWords(action.brush)}`;
    case 'remedy.do':
      return action.bar === undefined ? CURED[action.remedy] : `Resoldered ${at(`riser:${action.bar}`)}`;
    case 'bench.setRight':
      return SET_RIGHT[action.what];
    case 'tester.volts':
      return `Set the insulation tester to ${action.to} V`;
    case 'tester.press':
      return action.on ? 'Pressed the tester’s button' : 'Let the tester’s button go';
    case 'drop.feed':
      return action.at === null
        ? 'Took the feed off'
        : `Clamped the feed on ${at(action.at[0])} and ${at(action.at[1])}`;
    case 'prepare.check':
      return PREPARED[action.item];
    default:
      return null;
  }
}

const GAUGED: Readonly<Record<GaugeKind, string>> = {
  diameter: 'Measured the commutator’s diameter',
  runOut: 'Measured the commutator’s run-out',
  undercut: 'Measured the depth of the mica',
  brushLength: 'Measured a brush',
};

const CURED: Readonly<Record<Extract<Action, { type: 'remedy.do' }>['remedy'], string>> = {
  brushBetweenBars: 'Brushed and cleaned between the bars',
  undercut: 'Undercut the mica',
  skimAndPolish: 'Skimmed and polished the commutator',
  resolderRiser: 'Resoldered a riser',
  cleanPlateInsulation: 'Cleaned the brush plate’s insulation',
  tightenRivets: 'Tightened the brush plate’s rivets',
};

const SET_RIGHT: Readonly<Record<BenchCare, string>> = {
  lamp: 'Put in a new bulb',
  lampLeads: 'Put on new lamp leads',
  ammeterLeads: 'Put on new ammeter leads',
  ammeterZero: 'Set the ammeter to zero',
};

const PREPARED: Readonly<Record<Preparation, string>> = {
  ringsOff: 'Took rings and watch off',
  eyeProtection: 'Put on eye protection',
  dryFloor: 'Saw that the floor is dry',
  secondPerson: 'Saw that a second person is about',
  emergencyStop: 'Saw where the emergency stop is',
  protectedSupply: 'Saw that the supply is protected',
  testLabel: 'Saw that the bench’s test label is in date',
  leadsSound: 'Saw that leads and handles are undamaged',
};
