import type { ScenarioHidden } from '../../../scenario/scenario.ts';
import { countFromChalk } from '../../shared/count.ts';
import { countPhrase, spoken, type Vocabulary } from '../../shared/words.ts';
import { ohmWords } from './ohmWords.ts';

type Fault = ScenarioHidden['armature']['faults'][number];

/** How places of the truth are told: from the learner's chalk, or by the bench's own numbers when there was none. */
export interface Telling {
  readonly chalkedBar: number | null;
  readonly bars: number;
  readonly vocabulary: Vocabulary;
}

/** A fault in words, its place counted from the learner's chalk where there was one. */
export function faultWords(fault: Fault, telling: Telling): string {
  return spoken(plainWords(fault, telling), telling.vocabulary);
}

function plainWords(fault: Fault, telling: Telling): string {
  const at = (bar: number) => barName(bar, telling);
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

function barName(bar: number, { chalkedBar, bars }: Telling): string {
  const count = countFromChalk(bar, chalkedBar, bars);
  return count === null ? `bar ${bar} (the bench's own number)` : countPhrase(count);
}

const JOINT = {
  bar: 'riser joint bad at',
  oneEnd: 'one coil end off',
  bothEnds: 'both coil ends off and apart at',
} as const;
