import type { Condition, Finding } from '../../bench/paper.ts';
import { insulationShows } from './insulation.ts';
import { likenessOf } from './likeness.ts';
import { remembered } from './memory.ts';
import type { EvidenceModel } from './model.ts';
import { liesAt, type Mark } from './placing.ts';
import type { WindingKind } from './priors.ts';
import { locate } from './suspects.ts';

/** A finding with its place counted out to a bar; null where it leaves the place open. */
export interface Claim {
  readonly condition: Condition;
  readonly mark: Mark | null;
}

/**
 * A finding with its place counted out from the chalk; a place counted from no chalk is left open.
 * @param chalkedBar bar the chalk was on when the verdict was written
 */
export function claimOf({ condition, place }: Finding, chalkedBar: number | null, bars: number): Claim {
  if ((place.kind !== 'bar' && place.kind !== 'pair') || chalkedBar === null)
    return { condition, mark: null };
  const at = (((chalkedBar + place.count) % bars) + bars) % bars;
  return { condition, mark: { kind: place.kind, at } };
}

/** What a winding fault is called first. */
export const CONDITION_OF: Readonly<Record<WindingKind, Condition>> = {
  openCoil: 'openCoil',
  jointBar: 'badRiserJoint',
  jointOneEnd: 'badRiserJoint',
  jointBothEnds: 'badRiserJoint',
  bridge: 'bridgedBars',
  turnShort: 'shortedCoil',
  coilShort: 'shortedCoil',
  reversed: 'reversed',
};

/**
 * Other names that are right as well (trade, common practice). A strip that is pulled tells of current leaking between
 * neighbouring coils or bars, not of which, until the bars have been cleaned; a coil end off or hardly on its bar is an
 * open coil to every instrument of the bench.
 */
const ALSO_CALLED: Readonly<Partial<Record<WindingKind, Condition>>> = {
  jointOneEnd: 'openCoil',
  bridge: 'shortedCoil',
  turnShort: 'bridgedBars',
  coilShort: 'bridgedBars',
};

/** Whether a condition is a right name for a kind of fault; others may be where no allowed test could tell them apart. */
export function isCalled(kind: WindingKind, condition: Condition): boolean {
  return CONDITION_OF[kind] === condition || ALSO_CALLED[kind] === condition;
}

/** What a claim is about: the winding, the insulation or the surface; each as a yes or no to every state. */
export interface Meaning {
  /** By single suspect: 1 where the claim is right, counting what the allowed tests cannot tell from it. */
  readonly winding: Uint8Array;
  readonly insulation: Uint8Array;
  readonly dirty: boolean;
}

/** Meanings remembered of each model. */
const MEANINGS_REMEMBERED = 400;
const meanings = new WeakMap<EvidenceModel, Map<string, Meaning>>();

/** Which states of a part make a claim of a fault true. Not for `sound` and `notTested`. */
export function meaningOf(model: EvidenceModel, claim: Claim): Meaning {
  const known = meanings.get(model) ?? new Map<string, Meaning>();
  meanings.set(model, known);
  const { condition, mark } = claim;
  const key = mark === null ? condition : `${condition} ${mark.kind} ${mark.at}`;
  return remembered(known, key, MEANINGS_REMEMBERED, () => findMeaning(model, claim));
}

function findMeaning(model: EvidenceModel, { condition, mark }: Claim): Meaning {
  const { suspects, design } = model;
  const likeness = likenessOf(model);
  const own = Uint8Array.from({ length: suspects.count }, (_, k) => {
    const at = locate(suspects, k);
    if (at === null || likeness.showable[k] === 0) return 0;
    const placed = mark === null || liesAt(design, at.block, at.place, mark) || isShownAt(model, k, mark);
    return isCalled(at.block.kind, condition) && placed ? 1 : 0;
  });
  const winding = own.map((right, k) =>
    right === 1 || likeness.alike(k).some((other) => own[other] === 1) ? 1 : 0,
  );
  return {
    winding,
    insulation: insulationMeaning(model, condition, mark),
    dirty: mark === null && (condition === 'bridgedBars' || condition === 'worn'),
  };
}

/** A coil or a leak between bars may be marked at any pair that shows it as much as its own; a bar's joint is at its bar. */
function isShownAt(model: EvidenceModel, suspect: number, { kind, at }: Mark): boolean {
  const block = locate(model.suspects, suspect)?.block.kind;
  if (kind !== 'pair' || block === 'jointBar' || block === 'jointBothEnds') return false;
  return likenessOf(model).shownAt(suspect).includes(at);
}

/** A lamp does not tell hard grounds from insulation that breaks down under it: both names are right for both. */
function insulationMeaning(
  { insulation, tests }: EvidenceModel,
  condition: Condition,
  mark: Mark | null,
): Uint8Array {
  return Uint8Array.from(insulation, (suspect) => {
    if (!insulationShows(suspect, tests)) return 0;
    if (condition === 'grounded') return mark === null || suspect.bar === mark.at ? 1 : 0;
    return condition === 'poorInsulation' && mark === null ? 1 : 0;
  });
}
