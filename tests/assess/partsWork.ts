import { assess } from '../../src/assess/assess.ts';
import type { Marks } from '../../src/assess/mark.ts';
import { MAT_PARTS, type MatPart, PREPARATIONS } from '../../src/bench/action.ts';
import type { Condition, Disposition, Finding, FoundPlace, SheetLine } from '../../src/bench/paper.ts';
import type { FieldPlace, PlatePlace } from '../../src/bench/places.ts';
import { barPlace, FIELD_PLACES, PLATE_PLACES, partOf } from '../../src/bench/places.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { BenchDriver, type JobOptions, job } from '../support/benchDriver.ts';
import { attemptOf, library } from './attempts.ts';

export const somewhere: FoundPlace = { kind: 'somewhere' };
export const finding = (condition: Condition, place: FoundPlace = somewhere): Finding => ({
  condition,
  place,
});
export const branch = (brush: 1 | 2): FoundPlace => ({ kind: 'branch', brush });
export const holder = (at: Exclude<PlatePlace, 'plate:metal'>): FoundPlace => ({
  kind: 'holder',
  holder: at,
});

const FIELD_BRUSHES = ['field:brush1', 'field:brush2'] as const;
const INSULATED = ['plate:insulated1', 'plate:insulated2'] as const;
const EARTHED = ['plate:earthed1', 'plate:earthed2'] as const;

/**
 * Someone who works field frame and brush plate by the book, step by step, so that a test can leave a step out or do it
 * wrongly (common practice, no source).
 */
export class PartsWorker extends BenchDriver {
  readonly scenario: Scenario;

  constructor(options: JobOptions) {
    const scenario = job(options);
    super({ scenario });
    this.scenario = scenario;
  }

  writes(line: Partial<SheetLine> & Pick<SheetLine, 'test'>): this {
    return this.does({ type: 'sheet.write', line: { count: null, ...line } });
  }

  /** All that is seen to before power. */
  prepares(): this {
    for (const item of PREPARATIONS) this.does({ type: 'prepare.check', item });
    return this;
  }

  /** Preparation, then every place of every part on the mat under the lens, and a line for each part. */
  looksOver(prepare = true): this {
    if (prepare) this.prepares();
    for (const part of MAT_PARTS.filter((one) => this.scenario.public.parts.includes(one))) {
      this.takesUp(part);
      for (const place of [...FIELD_PLACES, ...PLATE_PLACES]) if (partOf(place) === part) this.looksAt(place);
      this.putsBack(part).writes({ test: 'look', part, remark: 'looked over' });
    }
    return this;
  }

  /** The part forward, an armature in the cradle, LOW, the lamp proved. */
  getsLampReady(part: MatPart): this {
    if (this.sees.cradle === 'empty') this.placesArmature();
    if (this.sees.mat[part] !== 'forward') this.takesUp(part);
    if (part === 'fieldFrame' && !this.sees.brushesApart) this.partsBrushes();
    return this.switches('low').provesLamp();
  }

  putsLampAway(): this {
    for (const lead of ['lamp.1', 'lamp.2'] as const) if (this.sees.leads[lead].touches) this.liftsTip(lead);
    return this.provesLamp().hangsUpBoth('lamp').switches('off');
  }

  private lampLine(test: SheetLine['test'], at: FieldPlace | PlatePlace, glow: number): this {
    return this.writes({ test, at, lamp: glow >= 8 ? 'lit' : glow > 0 ? 'dim' : 'dark' });
  }

  testsContinuity(): this {
    for (const at of FIELD_BRUSHES)
      this.lampLine('fieldContinuity', at, this.lampBetween('field:terminal', at));
    return this;
  }

  testsFieldInsulation(): this {
    for (const at of FIELD_BRUSHES) this.lampLine('fieldInsulation', at, this.lampBetween('field:case', at));
    return this;
  }

  /** Left alone, then leaned on. */
  private testsHolders(
    test: 'plateInsulation' | 'plateEarthed',
    holders: readonly PlatePlace[],
    lean: boolean,
  ): this {
    for (const at of holders) {
      const glows = [this.lampBetween('plate:metal', at)];
      if (lean) {
        this.leansOn('lamp.2').waits(3000);
        glows.push(this.watchesLamp());
        this.easesOff('lamp.2');
      }
      this.lampLine(test, at, test === 'plateInsulation' ? Math.max(...glows) : Math.min(...glows));
    }
    return this;
  }

  testsInsulatedHolders(lean = true): this {
    return this.testsHolders('plateInsulation', INSULATED, lean);
  }

  testsEarthedBrushes(lean = true): this {
    return this.testsHolders('plateEarthed', EARTHED, lean);
  }

  worksFrame(): this {
    return this.getsLampReady('fieldFrame').testsContinuity().testsFieldInsulation().putsLampAway();
  }

  worksPlate(): this {
    return this.getsLampReady('brushPlate').testsInsulatedHolders().testsEarthedBrushes().putsLampAway();
  }

  /** The tester across a part with the bench off; button, line, discharge, clips off. */
  measuresInsulation(part: MatPart): this {
    if (this.sees.mat[part] !== 'forward') this.takesUp(part);
    const pairs =
      part === 'fieldFrame'
        ? ([['field:case', 'field:brush1']] as const)
        : INSULATED.map((at) => ['plate:metal', at] as const);
    for (const [one, at] of pairs) {
      this.clipsOn('tester', one, at);
      const { megohms, over, volt } = this.testsInsulation();
      const read = over ? 'over' : megohms!;
      this.discharges().hangsUpBoth('tester');
      this.writes({ test: 'megohm', part, at, megohms: read, testVolt: volt });
    }
    return this;
  }

  measuresDrops(): this {
    if (this.sees.mat.fieldFrame !== 'forward') this.takesUp('fieldFrame');
    if (!this.sees.brushesApart) this.partsBrushes();
    for (const at of FIELD_BRUSHES) {
      this.feeds('field:terminal', at).holdsOn('drop', 'field:terminal', at);
      this.writes({ test: 'millivolt', at, millivolts: this.sees.drop.millivolts! });
      this.hangsUpBoth('drop').unfeeds();
    }
    return this;
  }

  measuresBrushes(part: MatPart): this {
    if (this.sees.mat[part] !== 'forward') this.takesUp(part);
    for (const brush of part === 'fieldFrame' ? ([0, 1] as const) : ([2, 3] as const)) {
      const millimetres = this.gauges('brushLength', brush)!;
      this.writes({ test: 'gauges', part, gauge: 'brushLength', brush, millimetres });
    }
    return this;
  }

  /** Shaft to every bar, half of them, then the other half. */
  testsGround(): this {
    const { bars } = this.geometry;
    const left = new Set(Array.from({ length: bars }, (_, bar) => bar));
    const glows: number[] = [];
    this.placesArmature().switches('low').provesLamp();
    while (left.size > 0) {
      for (const bar of [...left].filter((one) => this.reaches(one))) {
        glows.push(this.lampBetween('shaft', barPlace(bar)));
        left.delete(bar);
      }
      this.hangsUpBoth('lamp').turns(180);
    }
    this.provesLamp().hangsUpBoth('lamp').switches('off').liftsArmature();
    return this.writes({ test: 'ground', lamp: Math.max(...glows) > 0 ? 'lit' : 'dark' });
  }

  measuresArmatureInsulation(): this {
    this.clipsOn('tester', 'shaft', 'bar:0');
    const { megohms, over, volt } = this.testsInsulation();
    this.discharges().hangsUpBoth('tester');
    return this.writes({
      test: 'megohm',
      part: 'armature',
      megohms: over ? 'over' : megohms!,
      testVolt: volt,
    });
  }

  /** The drop of every pair of bars, the feed moved along so many bars at a time. */
  measuresBarDrops(step = 1): this {
    const { bars } = this.geometry;
    const bar = (n: number) => barPlace(n % bars);
    for (let from = 0; from < bars; from += step) {
      this.feeds(bar(from), bar(from + step));
      for (let n = from; n < from + step; n += 1) this.readsDrop(n);
      this.hangsUpBoth('drop').unfeeds();
    }
    return this;
  }

  /** One pair of bars, fed by itself. */
  measuresBarDrop(n: number): this {
    this.feeds(barPlace(n), barPlace(n + 1)).readsDrop(n);
    return this.hangsUpBoth('drop').unfeeds();
  }

  private readsDrop(n: number): void {
    const { bars } = this.geometry;
    this.holdsOn('drop', barPlace(n % bars), barPlace((n + 1) % bars));
    const millivolts = this.sees.drop.millivolts!;
    this.writes({ test: 'millivolt', part: 'armature', count: n, millivolts });
  }

  measuresCommutator(): this {
    for (const gauge of ['diameter', 'runOut', 'undercut'] as const)
      this.writes({ test: 'gauges', part: 'armature', gauge, millimetres: this.gauges(gauge)! });
    return this;
  }

  looksAtArmature(): this {
    this.prepares();
    for (let bar = 0; bar < this.geometry.bars; bar += 1) this.looksAt(`riser:${bar}`).looksAt(barPlace(bar));
    return this.looksAt('core').writes({ test: 'look', part: 'armature', remark: 'looked over' });
  }

  decides(part: MatPart | 'armature', findings: readonly Finding[], disposition: Disposition): this {
    return this.does({
      type: 'verdict.write',
      verdict: { part, findings, disposition, sure: 0.9, because: 'readings' },
    });
  }

  /** Puts everything away and hands in; what was earned and what was not. */
  marks(): Marks {
    for (const part of MAT_PARTS) if (this.sees.mat[part] === 'forward') this.putsBack(part);
    if (this.sees.cradle === 'armature' && this.sees.stopped === null) this.liftsArmature();
    this.handsIn();
    return assess(attemptOf(this.session, this.scenario, this.atMs + 500), library);
  }

  /** Ids of the marks that were not earned in full; what own readings prove is tested in evidence/mat.test.ts. */
  lost(): string[] {
    const { marks } = this.marks();
    return marks
      .filter(({ id, earned, of }) => earned < of && !id.endsWith('.proven'))
      .map(({ id }) => id)
      .sort();
  }

  get refused(): string[] {
    return this.session.log.flatMap(({ action, outcome }) =>
      outcome.kind === 'refused' ? [`${action.type}: ${outcome.sentence}`] : [],
    );
  }
}
