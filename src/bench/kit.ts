import type { MatPart, PartKind } from './action.ts';
import type { PanelLead } from './places.ts';

/** What stands about the bench for one job, as anyone who looks round can find. */
export interface Kit {
  /** Parts on the mat. */
  readonly mat: readonly MatPart[];
  /** Whether insulation tester and millivolt-drop set hang on the rail. */
  readonly tester: boolean;
  readonly drop: boolean;
  /** Parts whose card asks for a ground test with the lamp, which comes before the insulation tester. */
  readonly lampFirst: readonly PartKind[];
  /** Panel leads whose handle lets fingers reach the metal inside. */
  readonly cracked: readonly PanelLead[];
}

/** An armature and the bench's own leads, all sound. */
export const ARMATURE_KIT: Kit = {
  mat: [],
  tester: false,
  drop: false,
  lampFirst: ['armature'],
  cracked: [],
};
