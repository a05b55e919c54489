import type { BrushPlateFault } from '../../../engine/parts/brushPlate.ts';
import { FOUR_HOLDERS } from '../../../engine/parts/brushPlate.ts';
import type { FieldFrameDesign, FieldFrameFault } from '../../../engine/parts/fieldFrame.ts';
import { JOB_FRAMES } from '../../../engine/parts/fieldFrameDesigns.ts';
import { type FieldAnswers, fieldAnswers, type PlateAnswers, plateAnswers } from '../matAnswers.ts';

/** Every condition of a field frame or brush plate, with what the tests show of it. */
export interface FieldRow {
  readonly name: string;
  readonly shown: FieldAnswers;
}
export interface PlateRow {
  readonly name: string;
  readonly shown: PlateAnswers;
}

/** The bench of the matrix. */
const BENCH = '230V50Hz';

/** The coil that is at fault: the first of the branch that ends at brush 1. */
const COIL = 0;
const weakCoil = (ohm: number, breakdownV: number | null = null): FieldFrameFault => ({
  kind: 'weakInsulation',
  coil: COIL,
  ohm,
  breakdownV,
});
const shorted = (share: number): FieldFrameFault => ({ kind: 'shortedTurns', coil: COIL, share, ohm: 2e-5 });
const grounded = (ohm: number): FieldFrameFault => ({ kind: 'groundedCoil', coil: COIL, fraction: 0.5, ohm });

const FIELD: readonly (readonly [string, ...FieldFrameFault[]])[] = [
  ['sound'],
  ['coil open', { kind: 'openCoil', coil: COIL }],
  ['joint of brush 1 open', { kind: 'brushJoint', brush: 1, ohm: 'open' }],
  ['joint of brush 1, 10 mΩ', { kind: 'brushJoint', brush: 1, ohm: 0.01 }],
  ['coil grounded in its middle, 0.5 Ω', grounded(0.5)],
  ['coil grounded in its middle, 1 kΩ', grounded(1000)],
  ['weak insulation, 10 kΩ', weakCoil(1e4)],
  ['weak insulation, 300 kΩ', weakCoil(3e5)],
  ['weak insulation, 5 MΩ, breaking down above 400 V', weakCoil(5e6, 400)],
  ['a fifth of a coil’s turns shorted', shorted(0.2)],
  ['half of a coil’s turns shorted', shorted(0.5)],
  [
    'coil open and the same coil grounded at its start',
    { kind: 'openCoil', coil: COIL },
    { ...grounded(0.5), fraction: 0 } as FieldFrameFault,
  ],
];

const PLATE: readonly (readonly [string, ...BrushPlateFault[]])[] = [
  ['sound'],
  ['dirt across insulated holder 1, 50 Ω', { kind: 'dirt', holder: 'plate:insulated1', ohm: 50 }],
  ['dirt across insulated holder 1, 300 kΩ', { kind: 'dirt', holder: 'plate:insulated1', ohm: 3e5 }],
  [
    'insulator of holder 1 down, 50 Ω',
    { kind: 'insulatorDown', holder: 'plate:insulated1', ohm: 50, breakdownV: null },
  ],
  [
    'insulator of holder 1 down above 400 V',
    { kind: 'insulatorDown', holder: 'plate:insulated1', ohm: 9e4, breakdownV: 400 },
  ],
  [
    'rivet of insulated holder 1 makes when pressed',
    { kind: 'looseRivet', holder: 'plate:insulated1', makes: 'pressed', ohm: 0.1 },
  ],
  [
    'rivet of insulated holder 1 makes when left alone',
    { kind: 'looseRivet', holder: 'plate:insulated1', makes: 'released', ohm: 0.1 },
  ],
  [
    'rivet of earthed holder 1 makes when pressed',
    { kind: 'looseRivet', holder: 'plate:earthed1', makes: 'pressed', ohm: 0.1 },
  ],
  [
    'rivet of earthed holder 1 makes when left alone',
    { kind: 'looseRivet', holder: 'plate:earthed1', makes: 'released', ohm: 0.1 },
  ],
  ['pigtail of earthed holder 1 broken', { kind: 'brokenPigtail', holder: 'plate:earthed1' }],
  ['pigtail of insulated holder 1 broken', { kind: 'brokenPigtail', holder: 'plate:insulated1' }],
];

export function fieldRows(frame: FieldFrameDesign): readonly FieldRow[] {
  return FIELD.map(([name, ...faults]) => ({ name, shown: fieldAnswers(frame, faults, BENCH) }));
}

export function plateRows(): readonly PlateRow[] {
  return PLATE.map(([name, ...faults]) => ({ name, shown: plateAnswers(FOUR_HOLDERS, faults, BENCH) }));
}

export const MATRIX_FRAMES: readonly FieldFrameDesign[] = [...JOB_FRAMES.values()];
