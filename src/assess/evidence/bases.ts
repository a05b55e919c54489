import type { AlterableWinding, Standing } from './altered.ts';
import { standingOf } from './besides.ts';
import type { EvidenceModel } from './model.ts';
import type { WindingKind } from './priors.ts';
import type { Against, StripScale } from './strips.ts';
import type { SuspectPlace } from './suspects.ts';

/** One fault of several, as a suspect of the fine or of the coarse list. */
export interface Member {
  /** The single suspect that comes nearest. */
  readonly suspect: number;
  readonly at: SuspectPlace;
  /** Logarithm of its odds, its other severities with it. */
  readonly oddsLog: number;
  /** Bar it cuts off from the winding, or -1. */
  readonly cutOff: number;
  readonly look: number;
}

/** What already stands out and may have one more fault beside it: faults of the winding, or two grounds. */
export interface Base {
  /** Names what is worked out for it. */
  readonly key: string;
  readonly members: readonly Member[];
  readonly oddsLog: number;
  readonly grounded: boolean;
  standing(): AlterableWinding & Standing;
  felt(): Against;
}

export function kindsOf({ members }: Base): WindingKind[] {
  return members.map(({ at }) => at.block.kind);
}

export function isSameSite(one: SuspectPlace, other: SuspectPlace): boolean {
  return (
    one.block.kind === other.block.kind &&
    one.block.variant === other.block.variant &&
    one.place === other.place
  );
}

/** @param members none but the first may short a coil inside */
export function baseOf(
  { model, strips }: { readonly model: EvidenceModel; readonly strips: StripScale },
  members: readonly Member[],
): Base {
  const names = members.map(({ suspect, at }) => `${suspect}/${at.block.severities.length}`);
  return {
    key: names.join(' '),
    members,
    oddsLog: members.reduce((sum, { oddsLog }) => sum + oddsLog, 0),
    grounded: false,
    standing: () =>
      standingOf(
        model.dictionary,
        members.map(({ at }) => at),
      ),
    felt: () => strips.ofSeveral(members.map(({ suspect }) => suspect)),
  };
}
