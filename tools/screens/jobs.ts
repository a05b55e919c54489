import type { ArmatureView, Job } from '../../src/scenario/public/job.ts';

const WAVE: ArmatureView = {
  typeId: 'wave23',
  name: 'Four-pole wave-wound starter armature',
  winding: 'wave',
  poles: 4,
  slots: 23,
  bars: 23,
  coilsPerSlot: 1,
  barZeroDeg: 7.8,
  outerRadius: 0.03,
  shaftRadius: 0.008,
  stackLength: 0.05,
  commutatorRadius: 0.018,
  slotMouth: 0.002,
};
const LAP: ArmatureView = {
  ...WAVE,
  typeId: 'lap24',
  name: 'Two-pole lap-wound dynamo armature',
  winding: 'lap',
  poles: 2,
  slots: 12,
  bars: 24,
  coilsPerSlot: 2,
};

const FIRST: Job = {
  id: 'q-0001',
  workshop: 'Quarry Road Training Workshop',
  card: {
    unit: 'Starter motor off a tipper truck',
    broughtInBy: 'The driver, on a Monday, with the battery still warm',
    complaint: 'Turns the engine over slowly and sparks at the brushes; new brushes made no difference.',
    askedFor: 'Test the armature and say what is wrong with it, where, and what should happen to it.',
  },
  mains: '230V50Hz',
  parts: ['armature'],
  fieldFrame: null,
  brushPlate: null,
  limits: {
    commutatorDiameterMm: 36,
    runOutMm: 0.05,
    undercutMm: 0.2,
    brushLengthMm: 7.9,
    insulationMohm: 1,
  },
  armature: WAVE,
  tests: ['look', 'spaced', 'neighbour', 'ground', 'strip'],
  mode: 'practice',
  minutes: null,
};

export const JOBS: readonly Job[] = [
  FIRST,
  {
    ...FIRST,
    id: 'q-0002',
    card: {
      ...FIRST.card,
      unit: 'Dynamo from a vintage tractor',
      complaint: 'Charges weakly at any speed, and the drive end smells hot after an hour.',
    },
    armature: LAP,
    mode: 'assessed',
    minutes: 30,
  },
  {
    ...FIRST,
    id: 'q-0003',
    card: {
      ...FIRST.card,
      unit: 'Starter motor, marine',
      complaint: 'Blows the main fuse as soon as it is engaged.',
    },
    mode: 'guided',
  },
  {
    ...FIRST,
    id: 'q-0004',
    card: { ...FIRST.card, unit: 'Starter motor from the stores', complaint: 'Nothing is known about it.' },
    mains: '120V60Hz',
  },
];
