import type { FieldFrameView } from '../../scenario/public/job.ts';
import { benchFaultWords, fieldFaultWords, plateFaultWords } from '../apprentice/debrief/matFaultWords.ts';
import { matPlaceWords } from '../shared/lineWords.ts';
import type { Vocabulary } from '../shared/words.ts';
import { capital, partWords, spoken } from '../shared/words.ts';
import type {
  BenchFault,
  Effects,
  Fault,
  FieldFault,
  Hardness,
  PartFinding,
  PartType,
  PlateFault,
  TestEffect,
} from './desk.ts';
import type { Other, OtherFault, OtherKind, OtherSpot } from './matSpots.ts';
import { type FaultKind, type Ring, type Spot, spotOf } from './spots.ts';

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

const OTHER_KIND_WORDS: Readonly<Record<OtherKind, string>> = {
  openCoil: 'Open coil',
  shortedTurns: 'Shorted turns',
  groundedCoil: 'Coil grounded to the case',
  weakInsulation: 'Insulation gone weak',
  brushJoint: 'Bad joint to the brush',
  dirt: 'Packed dirt across the insulation',
  insulatorDown: 'Insulator broken down',
  looseRivet: 'Loose rivet',
  brokenPigtail: 'Broken pigtail',
  blownLamp: 'Lamp blown',
  ammeterZero: 'Needle off zero',
  brokenLead: 'Broken inside',
  crackedHandle: 'Handle cracked',
};
export const otherKindWords = (kind: OtherKind, vocabulary: Vocabulary) =>
  spoken(OTHER_KIND_WORDS[kind], vocabulary);

/** A place of frame, plate or bench in a sentence; coils count from 1, as where the truth is told. */
export function otherSpotWords(
  spot: OtherSpot,
  frame: FieldFrameView | null,
  vocabulary: Vocabulary,
): string {
  const nth = spot.slice(spot.indexOf(':') + 1);
  if (spot.startsWith('coil:')) {
    const coil = frame?.coils[Number(nth)];
    return coil ? `coil ${Number(nth) + 1}` : spot;
  }
  if (spot.startsWith('brush:')) return `the joint to field brush ${nth}`;
  if (spot.startsWith('plate:')) return matPlaceWords(spot as PlateFault['holder'], vocabulary);
  if (spot === 'lamp') return 'the test lamp';
  return spot === 'ammeter' ? 'the ammeter' : spot.replace('.', ' lead ');
}

export function otherFaultWords(
  fault: OtherFault,
  other: Other,
  frame: FieldFrameView | null,
  vocabulary: Vocabulary,
): string {
  const words = {
    fieldFrame: () => fieldFaultWords(fault as FieldFault, frame),
    brushPlate: () => plateFaultWords(fault as PlateFault, vocabulary),
    bench: () => benchFaultWords(fault as BenchFault),
  };
  return capital(words[other]());
}

const WORN_WORDS = {
  diameter: 'commutator too thin',
  runOut: 'commutator out of true',
  undercut: 'mica too high',
  brushLength: 'brush too short',
} as const;

/** Something the matter with a part, as the list of what finds it names it. */
export function findingWords(
  finding: PartFinding,
  part: PartType,
  frame: FieldFrameView | null,
  vocabulary: Vocabulary,
): string {
  const { fault } = finding;
  if (fault.kind === 'worn') {
    const what = fault.what.map((one) => WORN_WORDS[one]).join(', ');
    return `${partWords(finding.part)} worn beyond the card’s limit, ${what}`;
  }
  if (finding.part !== 'armature')
    return otherFaultWords(fault as OtherFault, finding.part, frame, vocabulary);
  const own = fault as Fault;
  return `${kindWords(own.kind, vocabulary)}, ${spotWords(spotOf(own, part), part.view.bars, vocabulary)}`;
}
