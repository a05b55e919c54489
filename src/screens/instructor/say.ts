import type { Vocabulary } from '../shared/words.ts';
import { spoken } from '../shared/words.ts';
import type { Effects, Fault, Hardness, TestEffect } from './desk.ts';
import type { FaultKind, Ring, Spot } from './spots.ts';

const RING_WORDS: Readonly<Record<Ring, string>> = {
  surface: 'Commutator surface',
  bar: 'Bar',
  gap: 'Mica between two bars',
  riser: 'Riser joint',
  coil: 'Coil',
  slot: 'Slot, where coils cross',
  core: 'Insulation to the core',
};
export const ringWords = (ring: Ring, vocabulary: Vocabulary) => spoken(RING_WORDS[ring], vocabulary);

/** A place in a sentence; places count from 0, as in the file. */
export function spotWords({ ring, n }: Spot, bars: number, vocabulary: Vocabulary): string {
  const words: Readonly<Record<Ring, string>> = {
    surface: 'the commutator surface',
    bar: `bar ${n}`,
    gap: `the mica between bars ${n} and ${(n + 1) % bars}`,
    riser: `the riser of bar ${n}`,
    coil: `coil ${n}`,
    slot: `slot ${n}`,
    core: 'the insulation to the core',
  };
  return spoken(words[ring], vocabulary);
}

const KIND_WORDS: Readonly<Record<FaultKind, string>> = {
  openCoil: 'Open coil',
  riserJoint: 'Bad joint at the riser',
  bridgedBars: 'Bridge to the next bar',
  turnShort: 'Shorted turns',
  coilShort: 'Two coils touching',
  groundedBar: 'Bar grounded',
  groundedCoil: 'Coil grounded',
  reversedCoil: 'Coil reversed',
  weakInsulation: 'Insulation gone weak',
  dirtyCommutator: 'Dirty commutator',
};
export const kindWords = (kind: FaultKind, vocabulary: Vocabulary) => spoken(KIND_WORDS[kind], vocabulary);

/** A resistance with a unit that keeps its figure short. */
export function ohmWords(ohm: number): string {
  const [scale, unit] =
    ohm >= 1e6 ? [1e-6, 'MΩ'] : ohm >= 1e3 ? [1e-3, 'kΩ'] : ohm >= 1 ? [1, 'Ω'] : [1e3, 'mΩ'];
  return `${Number((ohm * scale).toPrecision(2))} ${unit}`;
}

export function severityWords(fault: Fault): string {
  if (!('ohm' in fault)) return '';
  return fault.ohm === 'open' ? 'let go altogether' : ohmWords(fault.ohm);
}

export const HARDNESS_WORDS: Readonly<Record<Hardness, string>> = {
  sound: 'Nothing hidden',
  easy: 'Easy',
  medium: 'Medium',
  hard: 'Hard',
  beyond: 'Beyond the tests allowed',
};

const UNIT_WORDS: Readonly<Record<TestEffect['unit'], string>> = {
  bars: 'bars',
  pairs: 'pairs of bars',
  slots: 'slots',
  places: 'places',
};

/** "at 2 of 23 bars, furthest 34 % low" */
export function effectWords({ places, of, unit, strongest }: TestEffect, vocabulary: Vocabulary): string {
  const where = spoken(`${places} of ${of} ${UNIT_WORDS[unit]}`, vocabulary);
  if (strongest === null || places === 0) return where;
  const share = Math.abs(strongest) * 100;
  return `${where}; furthest ${share.toFixed(share < 10 ? 1 : 0)} % ${strongest < 0 ? 'low' : 'high'}`;
}

export function lookalikeWords({ lookalikes }: Effects): string {
  if (lookalikes === 0)
    return 'The evidence engine finds nothing else that these tests would confuse with it.';
  const others = lookalikes === 1 ? 'one other fault' : `${lookalikes} other faults`;
  return `The evidence engine finds ${others} that these tests, done in full, can hardly tell from it.`;
}
