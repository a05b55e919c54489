import type { ArmatureDesign } from '../../engine/parts/armature.ts';
import { coilBelow, type SuspectBlock } from './suspects.ts';

/** A place on the commutator as a learner marks it: a bar, or a pair by its first bar. */
export interface Mark {
  readonly kind: 'bar' | 'pair';
  readonly at: number;
}

/**
 * Coils that lie between a bar and the next, the short way through the winding: one on a lap winding, one for each
 * pole pair on a wave winding, where every one of them is felt at as many pairs of bars.
 */
export function coilsOfPair({ bars, commutatorPitch }: ArmatureDesign, pair: number): number[] {
  const wrap = (bar: number) => ((bar % bars) + bars) % bars;
  for (let steps = 1; steps <= bars; steps++) {
    const forward = wrap(steps * commutatorPitch) === 1;
    if (!forward && wrap(steps * commutatorPitch) !== bars - 1) continue;
    const from = forward ? pair : pair + 1;
    return Array.from({ length: steps }, (_, k) => wrap(from + k * commutatorPitch));
  }
  return [];
}

/** Whether a mark is a right place for a fault: never finer than bars and pairs can tell. */
export function liesAt(
  design: ArmatureDesign,
  { kind, variant }: Pick<SuspectBlock, 'kind' | 'variant'>,
  place: number,
  mark: Mark,
): boolean {
  const next = (bar: number) => (bar + 1) % design.bars;
  switch (kind) {
    case 'jointBar':
    case 'jointBothEnds':
      return mark.at === place || (mark.kind === 'pair' && next(mark.at) === place);
    case 'bridge':
      return mark.at === place || (mark.kind === 'bar' && mark.at === next(place));
    case 'openCoil':
    case 'jointOneEnd':
    case 'turnShort':
    case 'reversed':
      return coilLiesAt(design, place, mark);
    case 'coilShort':
      return [place, coilBelow(design, place, variant)].some((coil) => coilLiesAt(design, coil, mark));
  }
}

function coilLiesAt(design: ArmatureDesign, coil: number, { kind, at }: Mark): boolean {
  if (kind === 'pair') return coilsOfPair(design, at).includes(coil);
  return at === coil || at === (coil + design.commutatorPitch + design.bars) % design.bars;
}
