import type { Condition } from '../../../bench/paper.ts';
import { PLATE_HOLDERS } from '../../../engine/parts/brushPlate.ts';
import type { TrueFinding } from '../../diagnosis/finding.ts';
import { branchName, type PlaceClass } from '../../diagnosis/place.ts';
import type { StoryPlace, StoryPossibility } from '../story/shape.ts';
import type { Case, Group } from './case.ts';
import { isTold, type Weighed } from './judge.ts';

/** Faults that the allowed tests cannot tell apart: alike in what they may rightly be called and where. */
interface FaultClass {
  readonly id: string;
  /** What the faults themselves are called, those listed first by the priors before others. */
  readonly called: Condition[];
  readonly place: StoryPlace | null;
}

/** Everything a part of the mat may have, by class; the same for all weighings by one model. */
export class Classes<F> {
  private readonly classes: FaultClass[] = [];
  /** Number of its class by fault, or -1 where no allowed test can show it. */
  private readonly ofFault = new Map<F, number>();

  constructor(everyFault: readonly F[], tellingOf: Weighed<F>['tellingOf']) {
    for (const fault of new Set(everyFault)) this.ofFault.set(fault, this.classOf(tellingOf(fault)));
  }

  /** Chances with all readings weighed. */
  field(groups: readonly Group<F>[]): StoryPossibility[] {
    const free = this.classes.map(() => 1);
    let [nothing, listed] = [1, 1];
    for (const group of groups) {
      const found = this.sums(group);
      for (let nth = 0; nth < free.length; nth++) free[nth]! *= 1 - found.has[nth]!;
      nothing *= found.nothing;
      listed *= 1 - found.unlisted;
    }
    return [
      ...this.classes.map(({ id, called, place }, nth): StoryPossibility => {
        return { id, what: called[0]!, alike: called.slice(1), place, chance: 1 - free[nth]! };
      }),
      { id: 'nothing', what: 'nothing', place: null, chance: nothing },
      { id: 'none', what: 'noneOfThese', place: null, chance: 1 - listed },
    ];
  }

  /** Names the classes of the faults of a case together. */
  nameOf({ faults }: Case<F>): string {
    const classes = new Set(this.classesIn(faults ?? []));
    return [...classes].sort((a, b) => a - b).join();
  }

  private classesIn(faults: readonly F[]): number[] {
    return faults.map((fault) => this.ofFault.get(fault)!).filter((nth) => nth >= 0);
  }

  /** Chances in one group: of having each class, of nothing that can be shown, of something not listed. */
  private sums(group: Group<F>) {
    const has = new Float64Array(this.classes.length);
    let [nothing, unlisted] = [0, 0];
    for (const { faults, after } of group) {
      const classes = this.classesIn(faults ?? []);
      if (faults === null) unlisted += after;
      else if (classes.length === 0) nothing += after;
      classes.forEach((nth, k) => {
        if (classes.indexOf(nth) === k) has[nth]! += after;
      });
    }
    return { has, nothing, unlisted };
  }

  private classOf(told: TrueFinding | null): number {
    if (told === null || !isTold(told)) return -1;
    const names = Object.entries(told.expected.conditions).flatMap(([name, worth]) =>
      worth === 1 ? [name as Condition] : [],
    );
    const [own] = names;
    const id = `${[...names].sort().join(' ')} ${[...(told.place.named?.keys() ?? [])].sort().join(' ')}`;
    const known = this.classes.findIndex((one) => one.id === id);
    const nth = known < 0 ? this.classes.length : known;
    this.classes[nth] ??= { id, called: [], place: storyPlace(told.place) };
    const { called } = this.classes[nth];
    if (own !== undefined && !called.includes(own)) called.push(own);
    return nth;
  }
}

function storyPlace({ named }: PlaceClass): StoryPlace | null {
  const brushes = ([1, 2] as const).filter((brush) => named?.has(branchName(brush)));
  if (brushes.length > 0) return { kind: 'branch', brushes };
  const holder = PLATE_HOLDERS.find((one) => named?.has(one));
  return holder === undefined ? null : { kind: 'holder', holder };
}
