import { rootRadius, toothWidth } from '../magnetics/toothNetwork.ts';
import type { ArmatureDesign } from './armature.ts';

/** One thing wrong with a part or a fault: the field, and one sentence with what was expected and what came. */
export interface Objection {
  readonly path: string;
  readonly sentence: string;
}

type Numeric = {
  [K in keyof ArmatureDesign]-?: ArmatureDesign[K] extends number ? K : never;
}[keyof ArmatureDesign];

const COUNTS: readonly (readonly [Numeric, number, number])[] = [
  ['poles', 2, 8],
  ['slots', 5, 120],
  ['coilsPerSlot', 1, 3],
  ['bars', 5, 240],
  ['turns', 1, 200],
  ['spanSlots', 1, 119],
];

/** Lengths m, area m², with the range a part that fits this bench can have. */
const SIZES: readonly (readonly [Numeric, number, number])[] = [
  ['outerRadius', 0.015, 0.045],
  ['shaftRadius', 0.001, 0.03],
  ['stackLength', 0.01, 0.2],
  ['jawGap', 0.00005, 0.005],
  ['slotMouth', 0.0002, 0.02],
  ['lipHeight', 0.0001, 0.01],
  ['wedgeHeight', 0, 0.01],
  ['slotWidth', 0.0002, 0.03],
  ['layerHeight', 0.0002, 0.02],
  ['relativePermeability', 100, 20000],
  ['conductorArea', 1e-9, 1e-3],
  ['commutatorRadius', 0.003, 0.045],
];

/**
 * Refuses a winding or a core that cannot exist, with the reason; an empty list means it can be wound.
 * @source winding rules W01-W20 of the standard theory of closed drum windings
 */
export function checkWinding(a: ArmatureDesign): Objection[] {
  const ranges = [
    ...COUNTS.flatMap(([f, low, high]) => checkCount(f, a[f], low, high)),
    ...SIZES.flatMap(([f, low, high]) => checkSize(f, a[f], low, high)),
  ];
  if (ranges.length > 0) return ranges;
  return [...checkPlaces(a), ...checkPitch(a), ...checkSpan(a), ...checkEqualisers(a), ...checkCore(a)];
}

function checkCount(path: string, value: number, low: number, high: number): Objection[] {
  if (Number.isInteger(value) && value >= low && value <= high) return [];
  return [{ path, sentence: `Expected a whole number from ${low} to ${high}, but ${value} came.` }];
}

function checkSize(path: string, value: number, low: number, high: number): Objection[] {
  if (value >= low && value <= high) return [];
  return [{ path, sentence: `Expected a number from ${low} to ${high} in SI units, but ${value} came.` }];
}

function refuse(path: string, wrong: boolean, sentence: string): Objection[] {
  return wrong ? [{ path, sentence }] : [];
}

/** Two coil sides in every place: slots × coils per slot = bars, or one more when a dummy coil fills a place (W08, W20). */
function checkPlaces(a: ArmatureDesign): Objection[] {
  const places = a.slots * a.coilsPerSlot;
  const odd = refuse('poles', a.poles % 2 !== 0, `Expected an even number of poles, but ${a.poles} came.`);
  if (a.dummyPlace === undefined)
    return [
      ...odd,
      ...refuse(
        'bars',
        places !== a.bars,
        `Expected ${places} bars (${a.slots} slots with ${a.coilsPerSlot} coil sides a layer), but ${a.bars} came.`,
      ),
    ];
  return [
    ...odd,
    ...refuse(
      'dummyPlace',
      a.winding !== 'wave',
      'Expected no dummy coil on a lap winding: only a wave winding is forced.',
    ),
    ...refuse(
      'bars',
      places !== a.bars + 1,
      `Expected ${places - 1} bars (${places} places in the slots, one of them for the dummy coil), but ${a.bars} came.`,
    ),
    ...refuse(
      'dummyPlace',
      !Number.isInteger(a.dummyPlace) || a.dummyPlace < 0 || a.dummyPlace >= places,
      `Expected a place from 0 to ${places - 1}, but ${a.dummyPlace} came.`,
    ),
  ];
}

/** Simplex lap: +1 or -1. Simplex wave: (bars ± 1)/pole pairs, a whole number (W01, W02). */
function checkPitch(a: ArmatureDesign): Objection[] {
  const pitch = a.commutatorPitch;
  if (a.winding === 'lap')
    return refuse(
      'commutatorPitch',
      pitch !== 1 && pitch !== -1,
      `Expected a commutator pitch of 1 or -1 for a simplex lap winding, but ${pitch} came.`,
    );
  const pairs = a.poles / 2;
  const possible = [(a.bars - 1) / pairs, (a.bars + 1) / pairs].filter(Number.isInteger);
  if (possible.length === 0)
    return refuse(
      'bars',
      true,
      `A simplex wave winding on ${a.poles} poles needs (bars ± 1)/${pairs} to be whole, but ${a.bars} bars give ` +
        `${round((a.bars - 1) / pairs)} and ${round((a.bars + 1) / pairs)}.`,
    );
  return refuse(
    'commutatorPitch',
    !possible.includes(pitch),
    `Expected a commutator pitch of ${possible.join(' or ')} for a simplex wave winding of ${a.bars} bars on ` +
      `${a.poles} poles, but ${pitch} came.`,
  );
}

/** A coil spans about one pole pitch; it may be chorded by up to a third of it (W15). */
function checkSpan(a: ArmatureDesign): Objection[] {
  const pole = a.slots / a.poles;
  const low = Math.max(1, Math.ceil((2 / 3) * pole - 1e-9));
  const high = Math.max(low, Math.floor((4 / 3) * pole + 1e-9));
  return refuse(
    'spanSlots',
    a.spanSlots < low || a.spanSlots > high,
    `Expected a coil span of ${low} to ${high} slots (a pole pitch is ${round(pole)} slots), but ${a.spanSlots} came.`,
  );
}

/** Equalisers belong to lap windings of four poles and more, and join points a whole number of bars apart (W17, W18). */
function checkEqualisers(a: ArmatureDesign): Objection[] {
  if (!a.equalised) return [];
  const pairs = a.poles / 2;
  return [
    ...refuse(
      'equalised',
      a.winding !== 'lap' || pairs < 2,
      `Expected equalisers only on a lap winding of four poles or more, but a ${a.winding} winding on ${a.poles} poles came.`,
    ),
    ...refuse(
      'equalised',
      a.bars % pairs !== 0,
      `Equalisers join bars one pole pair apart, which needs bars divisible by ${pairs}, but ${a.bars} bars came.`,
    ),
  ];
}

function checkCore(a: ArmatureDesign): Objection[] {
  const root = rootRadius(a);
  const pitch = (2 * Math.PI * a.outerRadius) / a.slots;
  const tooth = toothWidth(a, root);
  const copper = 2 * a.coilsPerSlot * a.turns * a.conductorArea;
  const room = 2 * a.layerHeight * a.slotWidth;
  return [
    ...refuse(
      'layerHeight',
      root <= a.shaftRadius,
      `Expected slots that leave iron above the shaft (radius ${mm(a.shaftRadius)}), but they reach down to ${mm(root)}.`,
    ),
    ...refuse(
      'slotWidth',
      root > a.shaftRadius && tooth <= 0,
      `Expected slots narrow enough to leave teeth between them, but the tooth root would be ${mm(tooth)} wide.`,
    ),
    ...refuse(
      'slotMouth',
      a.slotMouth > a.slotWidth,
      `Expected a slot mouth no wider than the slot (${mm(a.slotWidth)}), but ${mm(a.slotMouth)} came.`,
    ),
    ...refuse(
      'slotMouth',
      a.slotMouth >= 0.8 * pitch,
      `Expected a slot mouth below four fifths of the slot pitch (${mm(pitch)}), but ${mm(a.slotMouth)} came.`,
    ),
    ...refuse(
      'conductorArea',
      copper > room,
      `Expected conductors that fit the slot (${sqmm(room)}), but ${2 * a.coilsPerSlot * a.turns} of them need ${sqmm(copper)}.`,
    ),
    ...refuse(
      'commutatorRadius',
      a.commutatorRadius <= a.shaftRadius || a.commutatorRadius > a.outerRadius,
      `Expected a commutator between the shaft (${mm(a.shaftRadius)}) and the core (${mm(a.outerRadius)}), but ` +
        `${mm(a.commutatorRadius)} came.`,
    ),
  ];
}

function round(x: number): number {
  return Math.round(x * 100) / 100;
}

function mm(metres: number): string {
  return `${round(metres * 1e3)} mm`;
}

function sqmm(area: number): string {
  return `${round(area * 1e6)} mm²`;
}
