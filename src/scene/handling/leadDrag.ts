import type { Place } from '../../bench/places.ts';
import { type BenchLead, otherOf, setOf } from '../benchLeads.ts';
import type { Point } from '../project.ts';
import { type Desk, disarm, far, forgiveness, type Gesture, type Pointer, SLOP } from './desk.ts';
import { metalFor } from './metal.ts';
import { nearest, type PlaceSpot, type Spot } from './spot.ts';
import { armatureSpots, holsterSpots } from './targets.ts';

/** A lead resting on metal leaves it once it is drawn this far away, px. */
const LIFT_AT = 14;
/** A finger held still over metal this long sets the tip down, ms: two fingers can so keep two probes on. */
const DWELL_MS = 450;
/** A handle held down without moving for this long, its tip on the brush plate, leans on the holder, ms. */
const LEAN_MS = 500;
/** How long a bare tip is pressed before it is taken, ms. */
export const TIP_HOLD_MS = 400;
/** A finger hides what it touches: the tip is carried this far up and to the left of it, px. */
const FINGER = { x: -26, y: -40 };

type Aim = PlaceSpot | Spot;

/** What a lead would be put on at a point: metal, its holster or, for the ammeter's, the stand. */
export function leadAim(desk: Desk, lead: BenchLead, points: readonly Point[], margin: number): Aim | null {
  const s = desk.situation();
  const homes: Spot[] = holsterSpots(s).filter((spot) => spot.id === `holster:${lead}`);
  if (setOf(lead) === 'ammeter') homes.push(...armatureSpots(s).filter((spot) => spot.id === 'stand'));
  const metal = metalFor(s, lead);
  for (const p of points) {
    const aim = nearest(metal, p, margin) ?? nearest(homes, p, margin * 0.6);
    if (aim) return aim;
  }
  return null;
}

export const isMetal = (spot: Spot | null): spot is PlaceSpot => spot !== null && 'place' in spot;

/** Puts a held lead on what it was aimed at. */
export function putLead(
  desk: Desk,
  lead: BenchLead,
  aim: Aim,
  at: Point,
  cameFrom: Place | null = null,
): boolean {
  if (isMetal(aim)) return desk.act({ type: 'lead.touch', lead, place: aim.place }, at);
  if (aim.id === 'stand') return clampLead(desk, lead, at, cameFrom);
  return desk.act({ type: 'lead.holster', lead }, at);
}

/** The stand keeps a lead on the metal it came from; one that hung in the air is set on the bar nearest to the arm. */
function clampLead(desk: Desk, lead: BenchLead, at: Point, cameFrom: Place | null): boolean {
  if (desk.situation().seen.leads[lead].touches === null) {
    const place = cameFrom ?? barByStand(desk, lead);
    if (!place || !desk.act({ type: 'lead.touch', lead, place }, at)) return false;
  }
  return desk.act({ type: 'lead.clamp', lead }, at);
}

function barByStand(desk: Desk, lead: BenchLead): Place | null {
  const s = desk.situation();
  const view = s.layout.side ? 'side' : 'end';
  const taken = s.seen.leads[otherOf(lead)].touches;
  const free = metalFor(s, lead).filter((spot) => spot.place.startsWith('bar:') && spot.place !== taken);
  return (
    nearest(
      free.filter((spot) => spot.view === view),
      standReach(desk),
      1e4,
    )?.place ?? null
  );
}

function standReach(desk: Desk): Point {
  const { layout } = desk.situation();
  const g = layout.side;
  return g
    ? { x: (g.x.commLeft + g.x.commRight) / 2, y: g.axisY }
    : { x: layout.end.x - layout.end.comm, y: layout.end.y };
}

export class LeadDrag implements Gesture {
  private readonly desk: Desk;
  private readonly lead: BenchLead;
  private readonly start: Point;
  private phase: 'pressed' | 'carried' | 'dead' = 'pressed';
  private aim: Aim | null = null;
  private onMetal: Place | null;
  private readonly cameFrom: Place | null;
  private dwell: ReturnType<typeof setTimeout> | null = null;
  private still: Point;
  private lean: ReturnType<typeof setTimeout> | null = null;
  private leaning = false;

  constructor(desk: Desk, lead: BenchLead, p: Pointer, inHand = false) {
    this.desk = desk;
    this.lead = lead;
    this.start = p.at;
    this.still = p.at;
    this.onMetal = desk.situation().seen.leads[lead].touches;
    this.cameFrom = this.onMetal;
    if (inHand) this.carry(p);
    else if (this.onMetal?.startsWith('plate:')) this.lean = setTimeout(() => this.leanOn(true), LEAN_MS);
  }

  move(p: Pointer): void {
    if (this.phase === 'dead') return;
    if (this.phase === 'pressed') {
      if (far(p.at, this.start) < SLOP) return;
      this.easeOff();
      if (!this.take(p.at)) {
        this.cancel();
        return;
      }
      this.phase = 'carried';
      disarm(this.desk.ui);
    }
    this.carry(p);
  }

  end(p: Pointer): void {
    this.stopDwell();
    const leant = this.easeOff();
    const { ui } = this.desk;
    ui.aims.delete(p.id);
    ui.dragging.delete(this.lead);
    if (this.phase === 'pressed' && !leant) this.click(p.at);
    else if (this.phase === 'carried') this.drop(p.at);
    this.desk.redraw();
  }

  cancel(): void {
    this.stopDwell();
    this.easeOff();
    this.phase = 'dead';
    this.desk.ui.dragging.delete(this.lead);
    this.desk.redraw();
  }

  private leanOn(on: boolean): void {
    if (this.phase === 'dead' || this.leaning === on) return;
    if (this.desk.act({ type: 'lead.lean', lead: this.lead, on }, this.start)) this.leaning = on;
  }

  /** Ends a press on a holder; true when there was one. */
  private easeOff(): boolean {
    if (this.lean !== null) clearTimeout(this.lean);
    this.lean = null;
    const leant = this.leaning;
    this.leanOn(false);
    return leant;
  }

  private take(at: Point): boolean {
    const { at: place } = this.desk.situation().seen.leads[this.lead];
    if (place === 'hand') return true;
    const taken = this.desk.act({ type: 'lead.take', lead: this.lead, grip: 'handle' }, at);
    // Taking a lead out of the stand takes its tip off the bar as well.
    this.onMetal = this.desk.situation().seen.leads[this.lead].touches;
    return taken;
  }

  private carry(p: Pointer): void {
    const { ui } = this.desk;
    this.phase = 'carried';
    const tip = p.kind === 'touch' ? { x: p.at.x + FINGER.x, y: p.at.y + FINGER.y } : p.at;
    if (this.onMetal !== null && far(p.at, this.start) > LIFT_AT && !this.overStand(p)) {
      this.onMetal = null;
      if (!this.desk.act({ type: 'lead.lift', lead: this.lead }, p.at)) {
        this.cancel();
        return;
      }
    }
    ui.leads[this.lead] = tip;
    ui.dragging.add(this.lead);
    this.aim = leadAim(this.desk, this.lead, [tip, p.at], forgiveness(p.kind));
    if (this.aim) ui.aims.set(p.id, this.aim);
    else ui.aims.delete(p.id);
    if (p.kind === 'touch' && far(p.at, this.still) > 4) this.restartDwell(p.at);
    this.desk.redraw();
  }

  /** On its way into the stand a lead keeps its place on the bar. */
  private overStand(p: Pointer): boolean {
    return setOf(this.lead) === 'ammeter' && leadAim(this.desk, this.lead, [p.at], 1)?.id === 'stand';
  }

  private restartDwell(at: Point): void {
    this.stopDwell();
    this.still = at;
    this.dwell = setTimeout(() => this.settle(), DWELL_MS);
  }

  private settle(): void {
    const aim = this.aim;
    if (this.phase !== 'carried' || !isMetal(aim) || this.onMetal === aim.place) return;
    if (this.desk.act({ type: 'lead.touch', lead: this.lead, place: aim.place }, this.still)) {
      this.onMetal = aim.place;
      this.desk.redraw();
    }
  }

  private drop(at: Point): void {
    if (!this.aim) return;
    if (isMetal(this.aim) && this.onMetal === this.aim.place) return;
    putLead(this.desk, this.lead, this.aim, at, this.cameFrom);
  }

  private click(at: Point): void {
    const { ui } = this.desk;
    const armed = ui.armed;
    if (armed?.kind === 'lead' && armed.lead === this.lead) {
      disarm(ui);
      return;
    }
    if (this.take(at)) ui.armed = { kind: 'lead', lead: this.lead };
  }

  private stopDwell(): void {
    if (this.dwell !== null) clearTimeout(this.dwell);
    this.dwell = null;
  }
}

/** A press on a bare tip: shown at once, taken only after a held press; letting go before costs nothing. */
export class TipPress implements Gesture {
  private readonly desk: Desk;
  private readonly lead: BenchLead;
  private readonly first: Pointer;
  private readonly timer: ReturnType<typeof setTimeout>;
  private drag: LeadDrag | null = null;
  private over = false;
  private last: Pointer;

  constructor(desk: Desk, lead: BenchLead, p: Pointer) {
    this.desk = desk;
    this.lead = lead;
    this.first = p;
    this.last = p;
    desk.ui.tipHold = { lead, sinceMs: desk.now() };
    this.timer = setTimeout(() => this.grip(), TIP_HOLD_MS);
    desk.redraw();
  }

  move(p: Pointer): void {
    this.last = p;
    if (this.drag) this.drag.move(p);
    else if (far(p.at, this.first.at) > 14) this.cancel();
  }

  end(p: Pointer): void {
    const drag = this.drag;
    this.cancel();
    drag?.end(p);
  }

  cancel(): void {
    this.over = true;
    clearTimeout(this.timer);
    this.desk.ui.tipHold = null;
    this.desk.redraw();
  }

  private grip(): void {
    if (this.over) return;
    this.desk.ui.tipHold = null;
    if (this.desk.act({ type: 'lead.take', lead: this.lead, grip: 'tip' }, this.first.at)) {
      this.drag = new LeadDrag(this.desk, this.lead, this.last, true);
    }
    this.desk.redraw();
  }
}
