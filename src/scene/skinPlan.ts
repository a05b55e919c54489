import type { ArmatureView } from '../scenario/public/job.ts';
import type { SideGeometry } from './project.ts';

/** The skin is painted over a turn and a half, so that half a turn can be cut out of it anywhere without a seam. */
export const SKIN_TURNS = 1.5;

/** One stretch of the armature's outside, unrolled: `from`..`to` along the shaft, px. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface SkinPlan {
  readonly part: ArmatureView;
  readonly width: number;
  readonly height: number;
  /** px of skin height per degree. */
  readonly perDeg: number;
  readonly windLeft: Stretch;
  readonly core: Stretch;
  readonly windRight: Stretch;
  readonly riser: Stretch;
  readonly comm: Stretch;
}

export function skinPlan(part: ArmatureView, g: SideGeometry): SkinPlan {
  const at = (x: number) => x - g.x.windLeft;
  const around = 2 * Math.PI * g.r.core;
  return {
    part,
    width: at(g.x.commRight),
    height: around * SKIN_TURNS,
    perDeg: around / 360,
    windLeft: { from: 0, to: at(g.x.coreLeft) },
    core: { from: at(g.x.coreLeft), to: at(g.x.coreRight) },
    windRight: { from: at(g.x.coreRight), to: at(g.x.riserLeft) },
    riser: { from: at(g.x.riserLeft), to: at(g.x.commLeft) },
    comm: { from: at(g.x.commLeft), to: at(g.x.commRight) },
  };
}
