/**
 * Cross-section of the growler's iron, mm from the apex of its V: x to the far side, y up. The faces of the V and what
 * the armature rests on are to scale; below the V it is drawn shallower than it is, because the bench top hides it.
 */
export type Section = readonly (readonly [x: number, y: number])[];

export const FACE_FROM = 8.66;
export const FACE_TO = 34.12;
export const OUTER = 43;
export const SHOULDER_TOP = 27;
export const FOOT = -44;

const NEAR_HALF: Section = [
  [-FACE_FROM, FACE_FROM],
  [-FACE_TO, FACE_TO],
  [-38.5, FACE_TO - 0.4],
  [-OUTER, SHOULDER_TOP],
  [-OUTER, FOOT],
];

/** The near leg alone, closed along the window. */
export const NEAR_LEG: Section = [...NEAR_HALF, [-21, FOOT], [-21, -4], [-7.6, 2.5]];

function mirrored(section: Section): Section {
  return section.map(([x, y]) => [-x, y] as const).reverse();
}

export const FAR_LEG: Section = mirrored(NEAR_LEG);

/** The whole iron with the window for the winding open below the V. */
export const WHOLE: Section = [
  ...NEAR_HALF,
  ...mirrored(NEAR_HALF),
  [7.6, 2.5],
  [21, -4],
  [21, -28],
  [-21, -28],
  [-21, -4],
  [-7.6, 2.5],
];

/** Rivets through the legs, mm from the apex, and how far the largest reaches. */
export const RIVETS: Section = [
  [-35, 20],
  [35, 20],
  [-32, -18],
  [32, -18],
];
export const RIVET_RADIUS = 2.5;
/** The lower of them. */
export const LOW_RIVET = Math.min(...RIVETS.map(([, y]) => y));

/** The winding in its window. */
export const COIL = { left: -20, right: 20, top: -3.5, bottom: -27 } as const;

/** Height of the armature's middle above the apex of a right-angled V, mm. */
export function restHeight(outerRadiusM: number): number {
  return (outerRadiusM * 1000 + 0.25) * Math.SQRT2;
}
