import type { ScenarioHidden } from '../../../scenario/scenario.ts';
import { recordBar, type Speaking } from '../../shared/actionWords.ts';
import { spoken } from '../../shared/words.ts';

type Fault = ScenarioHidden['armature']['faults'][number];

/** A fault in words, its place counted from the learner's chalk where there was one. */
export function faultWords(fault: Fault, speaking: Speaking): string {
  return spoken(plainWords(fault, speaking), speaking.vocabulary);
}

function plainWords(fault: Fault, speaking: Speaking): string {
  const at = (bar: number) => recordBar(bar, speaking);
  const pair = (bar: number) => `${at(bar)} and the next`;
  switch (fault.kind) {
    case 'openCoil':
      return `open coil starting at ${at(fault.coil)}`;
    case 'riserJoint':
      return `${JOINT[fault.form]} ${at(fault.bar)}, ${ohmWords(fault.ohm)}`;
    case 'bridgedBars':
      return `${fault.by} lies between ${pair(fault.bar)}, ${ohmWords(fault.ohm)}`;
    case 'turnShort':
      return `${fault.turns} turns shorted in the coil starting at ${at(fault.coil)}, ${ohmWords(fault.ohm)}`;
    case 'coilShort':
      return `the coils starting at ${at(fault.topCoil)} and at ${at(fault.bottomCoil)} touch in their slot, ${ohmWords(fault.ohm)}`;
    case 'groundedBar':
      return `${at(fault.bar)} is grounded, ${ohmWords(fault.ohm)}`;
    case 'groundedCoil':
      return `the coil starting at ${at(fault.coil)} is grounded, ${ohmWords(fault.ohm)}`;
    case 'reversedCoil':
      return `the coil starting at ${at(fault.coil)} is joined the wrong way round`;
    case 'weakInsulation':
      return `the insulation to the core leaks, ${ohmWords(fault.ohm)}`;
    case 'dirtyCommutator':
      return 'the commutator is dirty: readings scatter';
  }
}

const JOINT = {
  bar: 'riser joint bad at',
  oneEnd: 'one coil end off',
  bothEnds: 'both coil ends off and apart at',
} as const;

/** Resistance as the trade writes it. @param ohm ohm, > 0, or no connection at all */
export function ohmWords(ohm: number | 'open'): string {
  if (ohm === 'open') return 'open';
  const [value, unit] =
    ohm < 1 ? [ohm * 1e3, 'mΩ'] : ohm < 1e3 ? [ohm, 'Ω'] : ohm < 1e6 ? [ohm / 1e3, 'kΩ'] : [ohm / 1e6, 'MΩ'];
  return `${Number(value.toPrecision(3))} ${unit}`;
}
