import type { FieldFrameDesign } from './fieldFrame.ts';

/** Heavy strip coil of a starter, shunt coil of fine wire, ohm at 20 C; sound insulation. Invented figures. */
const STRIP_COIL = 1.2e-3;
const SHUNT_COIL = 1.1;
const COMMON = { brushJointOhm: 0.3e-3, insulationOhm: 200e6 } as const;

/** Two branches of two coils from the motor terminal, each ending at its own brush: the usual four-pole starter. */
export const TWO_BRANCHES: FieldFrameDesign = {
  id: 'field-two-branches',
  name: 'Starter field frame, two branches of two coils',
  coils: [
    { from: 'field:terminal', to: 'joint:1', ohm: STRIP_COIL },
    { from: 'joint:1', to: 'end:1', ohm: STRIP_COIL },
    { from: 'field:terminal', to: 'joint:2', ohm: STRIP_COIL },
    { from: 'joint:2', to: 'end:2', ohm: STRIP_COIL },
  ],
  links: [],
  ...COMMON,
};

/** All four coils one after another; both brushes hang on the end of the last. */
export const ALL_IN_SERIES: FieldFrameDesign = {
  id: 'field-all-in-series',
  name: 'Starter field frame, four coils in series',
  coils: [
    { from: 'field:terminal', to: 'joint:1', ohm: STRIP_COIL },
    { from: 'joint:1', to: 'joint:2', ohm: STRIP_COIL },
    { from: 'joint:2', to: 'joint:3', ohm: STRIP_COIL },
    { from: 'joint:3', to: 'end:1', ohm: STRIP_COIL },
  ],
  // The strip that leads on to the second brush.
  links: [{ a: 'end:1', b: 'end:2', ohm: 0.1e-3 }],
  ...COMMON,
};

/**
 * Three series coils and a shunt coil from the motor terminal, whose earth lead is undone from the case for the
 * tests, as it must be: otherwise the lamp lights between case and brush on a sound frame.
 */
export const SERIES_AND_SHUNT: FieldFrameDesign = {
  id: 'field-series-and-shunt',
  name: 'Starter field frame, three series coils and a shunt coil',
  coils: [
    { from: 'field:terminal', to: 'joint:1', ohm: STRIP_COIL },
    { from: 'joint:1', to: 'end:1', ohm: STRIP_COIL },
    { from: 'field:terminal', to: 'end:2', ohm: STRIP_COIL },
    { from: 'field:terminal', to: 'shunt:end', ohm: SHUNT_COIL },
  ],
  links: [],
  ...COMMON,
};

/** The same with the earth lead of the shunt coil still screwed to the case. */
export const SHUNT_STILL_EARTHED: FieldFrameDesign = {
  ...SERIES_AND_SHUNT,
  id: 'field-shunt-still-earthed',
  name: 'Starter field frame, three series coils and a shunt coil joined to the case',
  coils: SERIES_AND_SHUNT.coils.map((coil) =>
    coil.to === 'shunt:end' ? { ...coil, to: 'field:case' } : coil,
  ),
};

/** Frames a job can be about: with the shunt coil's earth lead undone, as it must be for the tests. */
export const JOB_FRAMES: ReadonlyMap<string, FieldFrameDesign> = new Map(
  [TWO_BRANCHES, ALL_IN_SERIES, SERIES_AND_SHUNT].map((frame) => [frame.id, frame]),
);

export const FIELD_FRAMES: readonly FieldFrameDesign[] = [
  TWO_BRANCHES,
  ALL_IN_SERIES,
  SERIES_AND_SHUNT,
  SHUNT_STILL_EARTHED,
];
