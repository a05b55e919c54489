import { CONDITIONS_OF, type Condition } from '../../bench/paper.ts';
import { type InsulationSuspect, insulationShows } from './insulation.ts';
import { chanceOf } from './judge.ts';
import { likenessOf } from './likeness.ts';
import type { EvidenceModel } from './model.ts';
import { CONDITION_OF, isCalled } from './naming.ts';
import type { Posterior } from './posterior.ts';
import type { WindingKind } from './priors.ts';
import { locate, type SuspectPlace, suspectAt } from './suspects.ts';

/**
 * One thing the part may have, in the trade's words. What the allowed tests cannot tell apart is one possibility:
 * `also` names what else it may be called.
 */
export interface Possibility {
  /** The same for the same possibility in every posterior of one model. */
  readonly id: string;
  /** `nothing`: nothing these tests can show; `dirty`: the whole running surface. */
  readonly what: Condition | 'nothing' | 'dirty' | 'noneOfThese';
  readonly also: readonly Condition[];
  readonly place: PossiblePlace | null;
  /** Probability that the part has it, alone or beside something else. */
  readonly chance: number;
}

/** A bar, the coil that starts at a bar, or the gap between a bar and the next. */
export interface PossiblePlace {
  readonly kind: 'bar' | 'coil' | 'pair';
  readonly at: number;
}

/** Which possibility each suspect belongs to. */
interface Field {
  readonly possibilities: readonly Omit<Possibility, 'chance'>[];
  /** By suspect: number of the possibility, or -1 where no allowed test can show it. */
  readonly of: Int32Array;
}

const fields = new WeakMap<EvidenceModel, Field>();

/** Everything the part may have, the likeliest first; chances of winding possibilities add up to more than one where two faults may be there at once. */
export function possibilitiesOf(posterior: Posterior): Possibility[] {
  const { model, cases, winding } = posterior;
  const field = fieldOf(model);
  const chances = new Float64Array(field.possibilities.length);
  const add = (at: number, chance: number) => {
    if (at >= 0) chances[at]! += chance;
  };
  for (let k = 0; k < cases.singles; k++) add(field.of[k]!, winding[k]!);
  cases.several.forEach(({ suspects }, k) => {
    const ats = suspects.map((suspect) => field.of[suspect]!);
    ats.forEach((at, n) => {
      if (ats.indexOf(at) === n) add(at, winding[cases.none + 1 + k]!);
    });
  });
  const found = field.possibilities.map((possibility, k) => ({ ...possibility, chance: chances[k]! }));
  return [...found, ...others(posterior)].sort((a, b) => b.chance - a.chance);
}

/** Possibilities that are not faults of the winding, and having nothing at all. */
function others(posterior: Posterior): Possibility[] {
  const { model, insulation, surface, winding, cases } = posterior;
  const chanceThat = (test: (suspect: InsulationSuspect) => boolean) =>
    insulation.reduce((sum, chance, i) => sum + (test(model.insulation[i]!) ? chance : 0), 0);
  const ground = chanceThat(isGround);
  const leak = chanceThat(
    (one) => !isGround(one) && (one.shows === 'dim' || insulationShows(one, model.tests)),
  );
  const whole = { also: [], place: null };
  return [
    { id: 'nothing', what: 'nothing', ...whole, chance: chanceOf(posterior, 'sound') },
    { id: 'ground', what: 'grounded', also: ['poorInsulation'], place: null, chance: ground },
    { id: 'leak', what: 'poorInsulation', also: ['grounded'], place: null, chance: leak },
    { id: 'dirty', what: 'dirty', also: ['bridgedBars', 'worn'], place: null, chance: surface[1]! },
    { id: 'none', what: 'noneOfThese', ...whole, chance: winding[cases.none]! },
  ];
}

const isGround = ({ shows }: InsulationSuspect) => shows === 'lit';

/** Faults of a bar's joint at the bar, of a coil at the coil, bridges between their bars. */
const PLACE_KIND: Readonly<Record<WindingKind, PossiblePlace['kind']>> = {
  openCoil: 'coil',
  jointBar: 'bar',
  jointOneEnd: 'bar',
  jointBothEnds: 'bar',
  bridge: 'pair',
  turnShort: 'coil',
  coilShort: 'coil',
  reversed: 'coil',
};

export function fieldOf(model: EvidenceModel): Field {
  const known = fields.get(model);
  if (known !== undefined) return known;
  const fresh = findField(model);
  fields.set(model, fresh);
  return fresh;
}

function findField(model: EvidenceModel): Field {
  const { suspects } = model;
  const likeness = likenessOf(model);
  const numbers = new Map<string, number>();
  const possibilities: { id: string; what: Condition; also: Condition[]; place: PossiblePlace }[] = [];
  const of = new Int32Array(suspects.count).fill(-1);
  for (let k = 1; k < suspects.count; k++) {
    if (likeness.showable[k] === 0) continue;
    const own = locate(suspects, k)!;
    const alike = likeness.alike(k).map((other) => locate(suspects, other)!);
    const first = alike.reduce(earlier, own);
    const id = idOf(first);
    let number = numbers.get(id);
    if (number === undefined) {
      number = possibilities.length;
      numbers.set(id, number);
      const { kind } = first.block;
      const place = { kind: PLACE_KIND[kind], at: first.place };
      possibilities.push({ id, what: CONDITION_OF[kind], also: [], place });
    }
    of[k] = number;
    const possibility = possibilities[number]!;
    for (const { block } of [own, ...alike]) {
      const names = CONDITIONS_OF.armature.filter((condition) => isCalled(block.kind, condition));
      for (const name of names)
        if (name !== possibility.what && !possibility.also.includes(name)) possibility.also.push(name);
    }
  }
  return { possibilities, of };
}

function idOf({ block, place }: SuspectPlace): string {
  return `${CONDITION_OF[block.kind]} ${PLACE_KIND[block.kind]} ${place}`;
}

function earlier(one: SuspectPlace, other: SuspectPlace): SuspectPlace {
  return suspectAt(other.block, other.place, 0) < suspectAt(one.block, one.place, 0) ? other : one;
}
