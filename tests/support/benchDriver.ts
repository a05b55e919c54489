import { createSession, type Session } from '../../src/attempt/session.ts';
import type {
  Action,
  BenchCare,
  BrushIndex,
  GaugeKind,
  Grip,
  MatPart,
  RangeA,
  Selector,
} from '../../src/bench/action.ts';
import { barAngleDeg, barAt, type CommutatorGeometry, canReach } from '../../src/bench/geometry.ts';
import type { InterlockCode } from '../../src/bench/interlocks.ts';
import type { Observation, TesterView } from '../../src/bench/observation.ts';
import { barPlace, type LeadId, type LeadSet, type Place } from '../../src/bench/places.ts';
import type { Mode, Outcome } from '../../src/bench/port.ts';
import type { RemedyKind } from '../../src/engine/parts/remedies.ts';
import { barZeroDeg } from '../../src/engine/parts/winding.ts';
import type { Scenario } from '../../src/scenario/scenario.ts';
import { type JobOptions, job, type PartId, partType } from './jobs.ts';

export { type JobOptions, job, PARTS, type PartId, partType } from './jobs.ts';

/** Time a practised hand takes for one act, ms. */
const PACE_MS = 400;
/** Time a needle is given to come to rest, ms. */
const NEEDLE_MS = 4000;
/** Time the insulation tester's button is held down, ms. */
const TESTER_MS = 6000;
/** Time in which a lit filament goes dark, ms. */
const AFTERGLOW_MS = 3000;
/** Time a lamp is watched before it is called lit or dark, ms. */
const LAMP_MS = 600;

/**
 * Someone at the bench: presses, turns and waits as a person would, through the public surface of a session. Methods
 * read as what the person does; each takes its time.
 */
export class BenchDriver {
  readonly session: Session;
  readonly geometry: CommutatorGeometry;
  atMs = 0;
  /** What became of the last act. */
  last: Outcome = { kind: 'done', breaches: [] };

  constructor(options: JobOptions | { readonly scenario: Scenario; readonly mode?: Mode } = {}) {
    const scenario = 'scenario' in options ? options.scenario : job(options);
    const design = partType(scenario.public.armature as PartId);
    this.session = createSession({ scenario, design, mode: options.mode ?? scenario.public.mode });
    this.geometry = { bars: design.bars, barZeroDeg: barZeroDeg(design) };
  }

  get sees(): Observation {
    return this.session.observe(this.atMs);
  }

  /** Codes of the rules the last act broke. */
  get broke(): string[] {
    return this.last.breaches.map((breach) => breach.interlock);
  }

  /** Codes of every rule broken so far, acts and what came about by itself, in order. */
  get everythingBroken(): string[] {
    const { log } = this.session;
    const told = log.flatMap(({ since = [], outcome }) => [
      ...since.flatMap((happened) => happened.breaches),
      ...outcome.breaches,
    ]);
    const still = this.session.sinceLastAct(this.atMs).flatMap((happened) => happened.breaches);
    return [...told, ...still].map((breach) => breach.interlock);
  }

  hasBroken(code: InterlockCode): boolean {
    return this.everythingBroken.includes(code);
  }

  get refusal(): string | null {
    return this.last.kind === 'refused' ? this.last.sentence : null;
  }

  does(action: Action, takesMs = PACE_MS): this {
    this.atMs += takesMs;
    this.last = this.session.act(action, this.atMs);
    return this;
  }

  waits(ms: number): this {
    this.atMs += ms;
    return this;
  }

  placesArmature(): this {
    return this.does({ type: 'armature.place' });
  }
  liftsArmature(): this {
    return this.does({ type: 'armature.lift' });
  }
  layHandOnArmature(): this {
    return this.does({ type: 'armature.hold' });
  }
  letsGoOfArmature(): this {
    return this.does({ type: 'armature.release' });
  }
  turns(byDeg: number): this {
    return this.does({ type: 'armature.turn', byDeg });
  }
  turnsOneBar(): this {
    return this.turns(360 / this.geometry.bars);
  }
  switches(to: Selector): this {
    return this.does({ type: 'selector.turn', to });
  }
  setsRange(to: RangeA): this {
    return this.does({ type: 'range.turn', to });
  }
  takes(lead: LeadId, grip: Grip = 'handle'): this {
    return this.does({ type: 'lead.take', lead, grip });
  }
  touches(lead: LeadId, place: Place): this {
    return this.does({ type: 'lead.touch', lead, place });
  }
  liftsTip(lead: LeadId): this {
    return this.does({ type: 'lead.lift', lead });
  }
  clamps(lead: LeadId): this {
    return this.does({ type: 'lead.clamp', lead });
  }
  hangsUp(lead: LeadId): this {
    return this.does({ type: 'lead.holster', lead });
  }
  takesStrip(): this {
    return this.does({ type: 'strip.take' });
  }
  holdsStrip(angleDeg: number, heightMm = 0.5): this {
    return this.does({ type: 'strip.hold', angleDeg, heightMm });
  }
  hangsStrip(): this {
    return this.does({ type: 'strip.hang' });
  }
  looksAt(place: Place): this {
    return this.does({ type: 'lens.look', place });
  }
  chalks(bar: number): this {
    return this.does({ type: 'chalk.mark', bar });
  }
  handsIn(): this {
    return this.does({ type: 'job.handIn' });
  }
  takesUp(part: MatPart): this {
    return this.does({ type: 'part.takeUp', part });
  }
  putsBack(part: MatPart): this {
    return this.does({ type: 'part.putBack', part });
  }
  partsBrushes(): this {
    return this.does({ type: 'brushes.part' });
  }
  joinsBrushes(): this {
    return this.does({ type: 'brushes.join' });
  }
  leansOn(lead: LeadId): this {
    return this.does({ type: 'lead.lean', lead, on: true });
  }
  easesOff(lead: LeadId): this {
    return this.does({ type: 'lead.lean', lead, on: false });
  }
  cures(remedy: RemedyKind, bar?: number): this {
    return this.does({ type: 'remedy.do', remedy, ...(bar === undefined ? {} : { bar }) });
  }
  setsRight(what: BenchCare): this {
    return this.does({ type: 'bench.setRight', what });
  }
  presses(on: boolean): this {
    return this.does({ type: 'tester.press', on });
  }
  discharges(): this {
    return this.does({ type: 'tester.discharge' });
  }
  feeds(one: Place, other: Place): this {
    return this.does({ type: 'drop.feed', at: [one, other] });
  }
  unfeeds(): this {
    return this.does({ type: 'drop.feed', at: null });
  }

  /** Puts a gauge to the part and reads it, mm; null when that was refused. */
  gauges(gauge: GaugeKind, brush?: BrushIndex): number | null {
    this.does({ type: 'gauge.read', gauge, ...(brush === undefined ? {} : { brush }) });
    return this.refusal === null ? (this.sees.gauge?.mm ?? null) : null;
  }

  /** Tips of a set on two places, one after the other; both stay in the hands. */
  holdsOn(set: LeadSet, one: Place, other: Place): this {
    for (const [end, place] of [one, other].entries()) {
      const lead: LeadId = `${set}.${end === 0 ? '1' : '2'}`;
      if (this.sees.leads[lead].at !== 'hand') this.takes(lead);
      if (this.sees.leads[lead].touches !== place) this.touches(lead, place);
    }
    return this;
  }

  /** Clips of a rail set on two places, both hands free again. */
  clipsOn(set: 'tester' | 'drop', one: Place, other: Place): this {
    for (const [end, place] of [one, other].entries()) {
      const lead: LeadId = `${set}.${end === 0 ? '1' : '2'}`;
      this.takes(lead).touches(lead, place).clamps(lead);
    }
    return this;
  }

  /** Lamp between two places, watched until any afterglow is gone; the tips stay where they are. */
  lampBetween(one: Place, other: Place): number {
    return this.holdsOn('lamp', one, other).waits(AFTERGLOW_MS).watchesLamp();
  }

  /** Both leads of a set back where they hang. */
  hangsUpBoth(set: LeadSet): this {
    return this.hangsUp(`${set}.1`).hangsUp(`${set}.2`);
  }

  /** Presses the tester's button until its display stands still and lets go; the display as it stood. */
  testsInsulation(): TesterView {
    const shown = this.presses(true).waits(TESTER_MS).sees.tester;
    this.presses(false);
    return shown;
  }

  /** The bar nearest to a place in space, as the armature lies now. */
  barNear(angleDeg: number): number {
    return barAt(this.geometry, angleDeg, this.sees.rotationDeg);
  }

  reaches(bar: number): boolean {
    return canReach(barAngleDeg(this.geometry, bar, this.sees.rotationDeg));
  }

  /** Both lamp leads in the hands, tips together until the lamp lights, tips apart. */
  provesLamp(): this {
    const { leads } = this.sees;
    if (leads['lamp.1'].at !== 'hand') this.takes('lamp.1');
    if (leads['lamp.2'].at !== 'hand') this.takes('lamp.2');
    return this.touches('lamp.1', 'tip:lamp.2').waits(LAMP_MS).liftsTip('lamp.1');
  }

  /** Ammeter tips in the stand on two stations of the commutator, degrees from the bottom. */
  setsProbesAt(firstDeg: number, secondDeg: number): this {
    this.takes('ammeter.1')
      .touches('ammeter.1', barPlace(this.barNear(firstDeg)))
      .clamps('ammeter.1');
    return this.takes('ammeter.2')
      .touches('ammeter.2', barPlace(this.barNear(secondDeg)))
      .clamps('ammeter.2');
  }

  /** Waits until the needle is still and gives its deflection. */
  readsNeedle(): number {
    this.waits(NEEDLE_MS);
    return this.sees.needle.deflection;
  }

  watchesLamp(): number {
    return this.waits(LAMP_MS).sees.lamp.glow;
  }
}
