import { barOf } from '../../bench/places.ts';
import type { Point } from '../project.ts';
import { distanceTo } from '../shapes.ts';
import { type Desk, disarm, far, forgiveness, type Gesture, type Pointer, SLOP } from './desk.ts';
import { barsForChalk, surfacesForLens } from './metal.ts';
import { nearest, type PlaceSpot } from './spot.ts';
import { cradleShape } from './targets.ts';

/** What the lens or the chalk would be used on at a point. */
export function toolAim(desk: Desk, tool: 'lens' | 'chalk', at: Point, margin: number): PlaceSpot | null {
  const s = desk.situation();
  return nearest(tool === 'lens' ? surfacesForLens(s) : barsForChalk(s), at, margin);
}

export function useTool(desk: Desk, tool: 'lens' | 'chalk', spot: PlaceSpot, at: Point): boolean {
  if (tool === 'lens') {
    desk.ui.closeUpShut = false;
    return desk.act({ type: 'lens.look', place: spot.place }, at);
  }
  const bar = barOf(spot.place);
  return bar !== null && desk.act({ type: 'chalk.mark', bar }, at);
}

/** Lens and chalk: carried to a place and used there; a click arms them for the next click. */
export class ToolDrag implements Gesture {
  private readonly desk: Desk;
  private readonly tool: 'lens' | 'chalk';
  private readonly start: Point;
  private moving = false;

  constructor(desk: Desk, tool: 'lens' | 'chalk', p: Pointer) {
    this.desk = desk;
    this.tool = tool;
    this.start = p.at;
  }

  move(p: Pointer): void {
    if (!this.moving && far(p.at, this.start) < SLOP) return;
    const { ui } = this.desk;
    this.moving = true;
    disarm(ui);
    ui.tools[this.tool] = p.at;
    const aim = toolAim(this.desk, this.tool, p.at, forgiveness(p.kind));
    if (aim) ui.aims.set(p.id, aim);
    else ui.aims.delete(p.id);
    this.desk.redraw();
  }

  end(p: Pointer): void {
    const { ui } = this.desk;
    const aim = this.moving ? toolAim(this.desk, this.tool, p.at, forgiveness(p.kind)) : null;
    ui.aims.delete(p.id);
    delete ui.tools[this.tool];
    if (aim) useTool(this.desk, this.tool, aim, p.at);
    else if (!this.moving) this.click();
    this.desk.redraw();
  }

  cancel(): void {
    delete this.desk.ui.tools[this.tool];
    this.desk.redraw();
  }

  private click(): void {
    const { ui } = this.desk;
    const again = ui.armed?.kind === this.tool;
    disarm(ui);
    if (!again) ui.armed = { kind: this.tool };
  }
}

/** How near to the cradle the armature must be let go to lie down in it, px. */
const CRADLE_REACH = 70;
/** How far the shaft is drawn before the armature leaves the cradle, px. */
const LIFT_DISTANCE = 34;

/** Carrying the armature between mat and cradle; a plain click on it does the same. */
export class ArmatureDrag implements Gesture {
  private readonly desk: Desk;
  private readonly start: Point;
  private out: boolean;
  private moving = false;
  private dead = false;

  constructor(desk: Desk, p: Pointer) {
    this.desk = desk;
    this.start = p.at;
    this.out = desk.situation().seen.cradle === 'empty';
  }

  move(p: Pointer): void {
    if (this.dead) return;
    const distance = far(p.at, this.start);
    if (!this.moving && distance < SLOP) return;
    this.moving = true;
    if (!this.out && distance > LIFT_DISTANCE) {
      if (!this.desk.act({ type: 'armature.lift' }, p.at)) {
        this.cancel();
        return;
      }
      this.out = true;
    }
    if (this.out) this.desk.ui.tools.armature = p.at;
    this.desk.redraw();
  }

  end(p: Pointer): void {
    delete this.desk.ui.tools.armature;
    if (!this.dead && this.out && (this.overCradle(p.at) || !this.moving)) {
      this.desk.act({ type: 'armature.place' }, p.at);
    }
    this.desk.redraw();
  }

  cancel(): void {
    this.dead = true;
    delete this.desk.ui.tools.armature;
    this.desk.redraw();
  }

  idle(): boolean {
    return !this.moving && !this.dead;
  }

  private overCradle(at: Point): boolean {
    return distanceTo(cradleShape(this.desk.situation()), at) < CRADLE_REACH;
  }
}
