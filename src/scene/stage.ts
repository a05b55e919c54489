import { Container, Mesh, Sprite, Texture } from 'pixi.js';
import type { GaugeView } from '../bench/observation.ts';
import type { Place } from '../bench/places.ts';
import type { ArmatureView, Job } from '../scenario/public/job.ts';
import { Aims } from './aims.ts';
import { ArmatureEnd } from './armatureEnd.ts';
import { ArmatureSide } from './armatureSide.ts';
import { BENCH_LEADS, type BenchLead } from './benchLeads.ts';
import { CloseUp } from './closeUp.ts';
import { growlerBox, growlerStage } from './growlerStage.ts';
import type { Ui } from './handling/desk.ts';
import { surfacesForLens } from './handling/metal.ts';
import type { Spot } from './handling/spot.ts';
import { HeatHaze } from './heat.ts';
import type { Instruments } from './instruments.ts';
import { HUNG_TOOLS, type HungTool, type Layout, type Rect } from './layout.ts';
import { Leads, restingPoses } from './leads.ts';
import { Lens } from './lens.ts';
import type { Makers } from './makers.ts';
import { Marks } from './marks.ts';
import { Flags } from './panel/flags.ts';
import { TestLamp } from './panel/lamp.ts';
import { Meter } from './panel/meter.ts';
import type { ScaleFraction } from './panel/meterScale.ts';
import { Ranges } from './panel/ranges.ts';
import { SelectorLever } from './panel/selector.ts';
import { leverAngle } from './panel/selectorShape.ts';
import type { PartBoard } from './partBoard.ts';
import { armatureLie, forwardPart, type LeadPose, type Situation } from './pose.ts';
import type { Point } from './project.ts';
import { INSTRUMENTS, isInUse, middleOf, tileRoom } from './railShape.ts';
import { roundOf } from './shapes.ts';
import { Strip } from './strip.ts';
import { Easel } from './studio/easel.ts';
import { around, type Paint } from './studio/order.ts';

export interface StageOptions {
  readonly reducedMotion: boolean;
  readonly showBarNumbers: boolean;
  readonly scaleFraction: ScaleFraction;
  /** Words on the bench; pictures compared by a test leave them out, for fonts differ. */
  readonly lettering: boolean;
  /** Puts a painted word into the usage the reader chose. */
  readonly say: (text: string) => string;
  readonly makers: Makers;
  /** Paints the still pictures. */
  readonly paint: Paint;
  /** Asks for another picture, when something that was fetched later has come. */
  readonly redraw: () => void;
}

/** Everything drawn for one size of the host, in the order it lies on the bench. */
export class Stage {
  readonly node = new Container();
  private readonly side: ArmatureSide | null;
  private readonly sideCarrier = new Container();
  private readonly end: ArmatureEnd;
  private endCradle = new Sprite();
  private endBlocks = new Sprite();
  private veil: Sprite | null = null;
  private matWords: Sprite[] = [];
  private readonly marks: Marks;
  private readonly meter: Meter;
  private readonly ranges: Ranges;
  private readonly selector: SelectorLever;
  private readonly lamp: TestLamp;
  private readonly flags: Flags;
  private readonly leads: Leads;
  private readonly strip: Strip;
  private readonly lens: Lens;
  private readonly gauge: CloseUp<GaugeView>;
  private readonly chalk: Sprite;
  private readonly heat: HeatHaze;
  private readonly boardCarrier = new Container();
  private readonly hung = new Map<HungTool, Sprite>();
  private readonly instrumentCarrier = new Container();
  private instruments: Instruments | 'coming' | null = null;
  private board: PartBoard | 'coming' | null = null;
  private gone = false;
  private readonly aims = new Aims();
  private poses: Record<BenchLead, LeadPose> | null = null;
  private readonly job: Job;
  private readonly layout: Layout;
  private readonly easel: Easel;
  private readonly options: StageOptions;

  constructor(job: Job, layout: Layout, resolution: number, options: StageOptions) {
    const part = job.armature;
    this.job = job;
    this.layout = layout;
    const easel = new Easel(resolution, options.paint, options.redraw);
    this.easel = easel;
    this.options = options;
    this.side = layout.side ? new ArmatureSide(part, layout.side, easel, options.makers) : null;
    this.end = new ArmatureEnd(part, layout.end, easel);
    this.marks = new Marks(part, layout.side, layout.end, easel, options.showBarNumbers);
    this.meter = new Meter(layout.panel.meter, easel, options.scaleFraction, options.lettering);
    this.ranges = new Ranges(layout.panel, easel, options.lettering);
    this.selector = new SelectorLever(layout.panel.selector, easel, options.lettering);
    this.lamp = new TestLamp(layout.panel.lamp, easel, options.lettering);
    this.flags = new Flags(layout.panel.flags, easel, options.lettering);
    this.leads = new Leads(easel, options.makers);
    this.strip = new Strip(layout, easel, options.makers);
    this.lens = new Lens(layout, easel, options);
    this.gauge = new CloseUp(layout, resolution, options, async () => {
      const { paintGauge } = await import('./paint/gaugeView.ts');
      return paintGauge;
    });
    this.chalk = chalkSprite(layout, easel);
    this.heat = new HeatHaze(layout, resolution, options.lettering);
    this.compose(part);
  }

  /** Kept once everything the first look needs has been painted. */
  get ready(): Promise<void> {
    return this.easel.ready;
  }

  private compose(part: ArmatureView): void {
    const { layout, easel } = this;
    const { lettering } = this.options;
    this.node.addChild(easel.placed('room', { layout, lettering }, this.whole));
    if (lettering) {
      this.matWords = [false, true].map((inCradle) =>
        easel.still('matWord', { layout, inCradle }, layout.mat),
      );
      this.node.addChild(...this.matWords);
    }
    this.hangTools();
    this.composeEnd(part);
    this.composeSide(part);
    this.node.addChild(
      this.leads.under,
      this.boardCarrier,
      this.selector.node,
      this.flags.node,
      this.meter.node,
      this.ranges.node,
      this.lamp.node,
    );
    this.node.addChild(this.strip.front, this.lens.tool, this.chalk, this.leads.front);
    this.node.addChild(
      this.instrumentCarrier,
      this.heat.node,
      this.lens.round,
      this.gauge.node,
      this.aims.node,
    );
  }

  private hangTools(): void {
    const { hung, mode } = this.layout;
    const { lettering } = this.options;
    for (const tool of HUNG_TOOLS) {
      const box = hung[tool];
      if (!box) continue;
      const picture = this.easel.still('hungTool', { box, tool, tile: mode === 'narrow', lettering }, box);
      this.hung.set(tool, picture);
      this.node.addChild(picture);
    }
  }

  private composeEnd(part: ArmatureView): void {
    const { layout, easel } = this;
    const { lettering } = this.options;
    const { outerRadius } = part;
    this.endCradle = easel.still('endCradle', { layout, outerRadius, lettering }, layout.endBox);
    this.endBlocks = easel.still('endBlocks', { layout, lettering }, layout.endBox);
    this.node.addChild(this.endBlocks);
    this.node.addChild(this.endCradle, this.end.node, this.marks.end, this.strip.end, this.leads.end);
  }

  private composeSide(part: ArmatureView): void {
    const { layout, side, easel } = this;
    const g = layout.side;
    if (!g || !side) return;
    const { outerRadius } = part;
    const floor = layout.panel.frame.y - 20;
    const k = growlerStage(g, outerRadius, floor);
    const plate = this.options.lettering ? 'QUARRY ROAD · BENCH 4' : '';
    const growler = { g, outerRadius, floor, plate };
    const { centre } = armatureLie(layout, g, true);
    this.sideCarrier.pivot.set(centre.x, centre.y);
    this.sideCarrier.addChild(side.node, this.marks.side);
    this.node.addChild(
      easel.still('growlerBack', growler, growlerBox(k, 'back')),
      this.leads.back,
      this.strip.back,
      this.sideCarrier,
      easel.still('growlerFront', growler, growlerBox(k, 'front')),
    );
  }

  /**
   * Draws one moment.
   * @param dtMs time since the last drawing, for things on their way
   * @returns true while something is still moving by itself
   */
  update(s: Situation, ui: Ui, hint: readonly Spot[], nowMs: number, dtMs: number): boolean {
    const { seen } = s;
    this.side?.turnTo(s.rotationDeg);
    this.end.turnTo(s.rotationDeg);
    this.marks.show(seen.chalkedBar, s.rotationDeg, seen.cradle === 'armature');
    this.layArmature(s, ui);
    this.meter.show(seen.rangeA, seen.needle);
    this.ranges.show(seen.rangeA);
    this.lamp.show(seen.lamp.glow);
    this.flags.show(seen.supply);
    this.showBoard(seen);
    this.showInstruments(s);
    this.showVeil(seen.stopped !== null);
    this.strip.show(s, seen.strip, ui.tools.strip ?? null);
    this.lens.show(seen.look, ui.closeUpShut, ui.tools.lens ?? null, lookTarget(s, seen.look?.place ?? null));
    this.gauge.show(seen.gauge, ui.closeUpShut);
    this.showChalk(ui.tools.chalk ?? null);
    const moving = [
      this.turnLever(s, dtMs),
      this.moveLeads(s, ui, dtMs),
      this.heat.show(seen, nowMs, this.options.reducedMotion),
    ];
    this.aims.show(s, ui, nowMs, hint);
    return moving.some(Boolean) || ui.tipHold !== null || (ui.refusal !== null && ui.refusal.untilMs > nowMs);
  }

  private showBoard(seen: Situation['seen']): void {
    if (this.board === null) void this.fetchBoard();
    else if (this.board !== 'coming') this.board.show(seen);
  }

  /** Field frame and brush plate are painted once the bench itself stands: nobody reaches for them first. */
  private async fetchBoard(): Promise<void> {
    this.board = 'coming';
    if (Object.keys(this.layout.partStands).length === 0) return;
    const { PartBoard } = await import('./partBoard.ts');
    if (this.gone) return;
    const { lettering, say } = this.options;
    this.board = new PartBoard(this.layout, this.job, this.easel.resolution, lettering ? say : null);
    this.boardCarrier.addChild(this.board.node);
    this.options.redraw();
  }

  private showInstruments(s: Situation): void {
    const inUse = INSTRUMENTS.filter((which) => isInUse(s.seen, which));
    for (const which of INSTRUMENTS) {
      const hung = this.hung.get(which);
      if (hung) hung.visible = !inUse.includes(which);
    }
    if (this.instruments === null && inUse.length > 0) void this.fetchInstruments();
    else if (this.instruments !== null && this.instruments !== 'coming') this.instruments.show(s);
  }

  /** Fetched when one is first taken down, which happens in few jobs. */
  private async fetchInstruments(): Promise<void> {
    this.instruments = 'coming';
    const { Instruments } = await import('./instruments.ts');
    if (this.gone) return;
    this.instruments = new Instruments(this.layout, this.easel.resolution, this.options.lettering);
    const { node, back, end } = this.instruments;
    this.instrumentCarrier.addChild(node);
    this.leads.back.addChild(back);
    this.leads.end.addChild(end);
    this.options.redraw();
  }

  /** Painted when it falls, which it does in few attempts. */
  private showVeil(stopped: boolean): void {
    const { layout } = this;
    if (stopped && this.veil === null) {
      this.veil = this.easel.placed('veil', { layout, lettering: this.options.lettering }, this.whole);
      this.node.addChild(this.veil);
    }
    if (this.veil !== null) this.veil.visible = stopped && this.easel.hasPainted(this.veil.texture);
  }

  private get whole(): Rect {
    return { x: 0, y: 0, w: this.layout.width, h: this.layout.height };
  }

  private showChalk(at: Point | null): void {
    const home = this.layout.tools.chalk;
    const rest = this.layout.side ? home.y + home.h * 0.42 : middleOf(tileRoom(home));
    this.chalk.position.set(at?.x ?? home.x + home.w / 2, at?.y ?? rest);
  }

  /** In the cradle, on the mat, or in two hands on the way. */
  private layArmature(s: Situation, ui: Ui): void {
    const inCradle = s.seen.cradle === 'armature';
    this.endCradle.visible = inCradle;
    this.endBlocks.visible = !inCradle;
    this.end.beyondReach.visible = inCradle;
    const boardOverMat = this.layout.mode !== 'narrow' && forwardPart(s) !== null;
    this.matWords.forEach((word, i) => {
      word.visible = (i === 1) === inCradle && !boardOverMat;
    });
    const g = this.layout.side;
    if (!g) return;
    const lie = armatureLie(this.layout, g, inCradle);
    const carried = ui.tools.armature;
    const at = carried ?? lie;
    this.sideCarrier.position.set(at.x, at.y);
    this.sideCarrier.scale.set(carried && !inCradle ? Math.max(lie.scale, 0.72) : lie.scale);
  }

  private turnLever(s: Situation, dtMs: number): boolean {
    const goal = leverAngle(s.seen.selector);
    // At the first look it stands where it stands; only a hand moves it.
    const next = this.poses === null ? goal : this.approach(this.selector.angle, goal, dtMs, 60);
    this.selector.pointTo(next);
    return next !== goal;
  }

  private moveLeads(s: Situation, ui: Ui, dtMs: number): boolean {
    const goals = restingPoses(s);
    let moving = false;
    for (const lead of BENCH_LEADS) {
      const from = this.poses?.[lead];
      const goal = this.carriedPose(s, ui, lead, goals[lead]);
      if (!from || this.options.reducedMotion) goals[lead] = goal;
      else {
        const pose = this.approachPose(from, goal, dtMs, ui.dragging.has(lead) ? 24 : 70);
        moving ||= pose !== goal;
        goals[lead] = pose;
      }
    }
    this.poses = goals;
    this.leads.show(s, goals);
    return moving;
  }

  /** Under a pointer a lead lies as it would on what it is aimed at, its tip where the hand is. */
  private carriedPose(s: Situation, ui: Ui, lead: BenchLead, rest: LeadPose): LeadPose {
    const tip = ui.dragging.has(lead) ? ui.leads[lead] : undefined;
    if (!tip || s.seen.leads[lead].at === 'holster') return rest;
    const up = tip.y < this.layout.height * 0.5 ? 0.34 : -0.5;
    return { ...rest, tip, angle: up, behind: false };
  }

  private approachPose(from: LeadPose, goal: LeadPose, dtMs: number, tau: number): LeadPose {
    const x = this.approach(from.tip.x, goal.tip.x, dtMs, tau, 0.4);
    const y = this.approach(from.tip.y, goal.tip.y, dtMs, tau, 0.4);
    const turn = Math.atan2(Math.sin(goal.angle - from.angle), Math.cos(goal.angle - from.angle));
    const angle = goal.angle - turn + this.approach(0, turn, dtMs, tau, 0.01);
    if (x === goal.tip.x && y === goal.tip.y && Math.abs(angle - goal.angle) < 0.001) return goal;
    return { ...goal, tip: { x, y }, angle };
  }

  private approach(from: number, goal: number, dtMs: number, tau: number, near = 0.005): number {
    if (this.options.reducedMotion) return goal;
    const next = goal + (from - goal) * Math.exp(-dtMs / tau);
    return Math.abs(next - goal) < near ? goal : next;
  }

  destroy(): void {
    this.gone = true;
    const textures = texturesIn(this.node, new Set());
    this.node.destroy({ children: true });
    for (const texture of textures) texture.destroy(true);
    this.easel.clear();
  }
}

/** Every texture the stage painted: several sprites may share one, and each must be freed once. */
function texturesIn(node: Container, found: Set<Texture>): Set<Texture> {
  if ((node instanceof Sprite || node instanceof Mesh) && node.texture !== Texture.EMPTY)
    found.add(node.texture);
  for (const child of node.children) texturesIn(child, found);
  return found;
}

function chalkSprite(layout: Layout, easel: Easel): Sprite {
  const { w, h } = layout.tools.chalk;
  const length = Math.max(20, Math.min(46, w * 0.6, (h - 12) * 1.4));
  const fine = { resolution: Math.max(2, easel.resolution) };
  const sprite = new Sprite(easel.picture('chalk', { length }, around(length * 1.5), fine));
  sprite.anchor.set(0.5);
  return sprite;
}

/** Where the place under the lens lies in the main view now, or null when it has turned out of sight. */
function lookTarget(s: Situation, place: Place | null): Point | null {
  if (!place || !s.layout.side) return null;
  const spot = surfacesForLens(s).find((each) => each.place === place && each.view !== 'end');
  return spot ? roundOf(spot.shape) : null;
}
