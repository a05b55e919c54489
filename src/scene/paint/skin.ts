import { COPPER, CORD, ENAMEL, MICA, SOLDER, STEEL } from '../materials.ts';
import { grain, linear, type Pen } from '../pen.ts';
import { SKIN_TURNS, type SkinPlan, type Stretch } from '../skinPlan.ts';

/** Calls back with the skin's y of every repeat of an angle that can show. */
function eachRepeat(plan: SkinPlan, deg: number, draw: (y: number) => void): void {
  for (let turn = -1; turn <= Math.ceil(SKIN_TURNS); turn++) {
    const y = (deg + 360 * turn) * plan.perDeg;
    if (y > -plan.height * 0.2 && y < plan.height * 1.2) draw(y);
  }
}

function paintCore(pen: Pen, plan: SkinPlan): void {
  const { from, to } = plan.core;
  pen.fillStyle = '#a7b1b3';
  pen.fillRect(from, 0, to - from, plan.height);
  for (let x = from, i = 0; x < to; x += 1.9, i++) {
    const g = grain(i);
    pen.fillStyle =
      g > 0.5 ? `rgba(235,242,242,${0.1 + 0.25 * (g - 0.5)})` : `rgba(36,48,54,${0.22 + 0.3 * g})`;
    pen.fillRect(x, 0, 0.8, plan.height);
  }
  pen.fillStyle = 'rgba(30,42,48,.55)';
  pen.fillRect(from, 0, 2, plan.height);
  pen.fillRect(to - 2, 0, 2, plan.height);
}

function paintSlots(pen: Pen, plan: SkinPlan): void {
  const { part } = plan;
  const mouth = Math.max(6, (part.slotMouth / (2 * Math.PI * part.outerRadius)) * 360 * plan.perDeg * 1.3);
  for (let s = 0; s < part.slots; s++) {
    eachRepeat(plan, (360 * s) / part.slots, (y) => paintSlot(pen, plan.core, y, mouth));
  }
}

/** A slot's mouth: deep shadow under the upper arris, the fibre wedge, a glint of copper, light on the lower arris. */
function paintSlot(pen: Pen, core: Stretch, y: number, mouth: number): void {
  const w = core.to - core.from;
  const top = y - mouth / 2;
  pen.fillStyle = linear(pen, 0, top, 0, top + mouth, [
    [0, '#05080a'],
    [0.34, '#0a0d0e'],
    [0.42, '#23160c'],
    [0.8, '#4a311b'],
    [0.92, '#1d120a'],
    [1, '#0a0e10'],
  ]);
  pen.fillRect(core.from, top, w, mouth);
  pen.fillStyle = 'rgba(236,158,94,.8)';
  for (let x = core.from + 5, i = 0; x < core.to - 8; i++) {
    const run = 10 + 34 * grain(i + y);
    pen.fillRect(x, top + mouth * 0.68, Math.min(run, core.to - 5 - x), Math.max(0.7, mouth * 0.09));
    x += run + 8 + 22 * grain(i + y + 9);
  }
  pen.fillStyle = 'rgba(18,26,30,.55)';
  pen.fillRect(core.from, top - 1.4, w, 1.4);
  pen.fillStyle = 'rgba(250,254,254,.75)';
  pen.fillRect(core.from, top + mouth, w, 1.3);
}

/** One round conductor laid along a curve: dark edge, body, a line of light. */
function strand(pen: Pen, path: Path2D, width: number, tone: number): void {
  pen.lineCap = 'butt';
  pen.strokeStyle = '#2c120a';
  pen.lineWidth = width;
  pen.stroke(path);
  pen.strokeStyle = tone > 0.5 ? ENAMEL.mid : '#83401f';
  pen.lineWidth = width * 0.78;
  pen.stroke(path);
  pen.save();
  pen.translate(0, -width * 0.14);
  pen.strokeStyle = ENAMEL.light;
  pen.globalAlpha = 0.55 + 0.2 * tone;
  pen.lineWidth = width * 0.26;
  pen.stroke(path);
  pen.restore();
}

function windingPath(from: number, y0: number, to: number, y1: number): Path2D {
  const path = new Path2D();
  const third = (to - from) / 3;
  path.moveTo(from - 1, y0);
  path.bezierCurveTo(from + third * 0.6, y0, to - third * 1.2, y1, to + 1, y1);
  return path;
}

/** One layer of the end winding: every coil side leaves its slot and leans `leanDeg` round on its way. */
function paintLayer(pen: Pen, plan: SkinPlan, span: Stretch, leanDeg: number, snap: boolean): void {
  const { part } = plan;
  const strands = part.coilsPerSlot > 1 ? part.coilsPerSlot * 2 : 1;
  const count = part.slots * strands;
  const width = (360 / count) * plan.perDeg * (strands > 1 ? 0.92 : 0.7);
  for (let i = 0; i < count; i++) {
    const start = (360 * (i + 0.5)) / count - 180 / part.slots;
    const bar = Math.round((start + leanDeg - part.barZeroDeg) / (360 / part.bars));
    const end = snap && strands === 1 ? part.barZeroDeg + (bar * 360) / part.bars : start + leanDeg;
    eachRepeat(plan, start, (y) => {
      const path = windingPath(span.from, y, span.to, y + (end - start) * plan.perDeg);
      strand(pen, path, width, grain(i + 7));
    });
  }
}

function paintWinding(pen: Pen, plan: SkinPlan): void {
  const lean = 300 / plan.part.poles / 2;
  for (const [span, sign, snap] of [
    [plan.windLeft, -1, false],
    [plan.windRight, 1, true],
  ] as const) {
    pen.save();
    pen.beginPath();
    pen.rect(span.from, 0, span.to - span.from, plan.height);
    pen.clip();
    pen.fillStyle = '#1d0e08';
    pen.fillRect(span.from, 0, span.to - span.from, plan.height);
    paintLayer(pen, plan, span, -sign * lean * 0.8, false);
    pen.fillStyle = 'rgba(16,8,5,.45)';
    pen.fillRect(span.from, 0, span.to - span.from, plan.height);
    paintLayer(pen, plan, span, sign * lean * 0.55, snap);
    pen.restore();
  }
  paintCord(pen, plan, plan.windLeft.from + (plan.windLeft.to - plan.windLeft.from) * 0.3);
}

/** The cord band that holds the far end winding in. */
function paintCord(pen: Pen, plan: SkinPlan, x: number): void {
  for (let i = 0; i < 5; i++) {
    const at = x + i * 3.2;
    pen.fillStyle = linear(pen, at, 0, at + 3.2, 0, [
      [0, CORD.dark],
      [0.45, CORD.light],
      [1, CORD.dark],
    ]);
    pen.fillRect(at, 0, 3, plan.height);
  }
}

function paintRisers(pen: Pen, plan: SkinPlan): void {
  const { part, riser } = plan;
  const pitch = (360 / part.bars) * plan.perDeg;
  const w = riser.to - riser.from;
  pen.fillStyle = MICA;
  pen.fillRect(riser.from, 0, w, plan.height);
  for (let b = 0; b < part.bars; b++) {
    eachRepeat(plan, part.barZeroDeg + (360 * b) / part.bars, (y) =>
      paintRiser(pen, riser, y, pitch, grain(b)),
    );
  }
}

/** A riser: copper lug, its slit, the coil end in it and the solder round the joint. */
function paintRiser(pen: Pen, riser: Stretch, y: number, pitch: number, tone: number): void {
  const h = pitch * 0.84;
  const w = riser.to - riser.from;
  pen.fillStyle = linear(pen, 0, y - h / 2, 0, y + h / 2, [
    [0, '#d28a50'],
    [0.2, tone > 0.5 ? COPPER.mid : '#a95d2a'],
    [1, '#7e421d'],
  ]);
  pen.fillRect(riser.from, y - h / 2, w, h);
  pen.fillStyle = '#3a1e10';
  pen.fillRect(riser.from, y - h * 0.24, w * 0.86, h * 0.48);
  pen.fillStyle = linear(pen, 0, y - h * 0.2, 0, y + h * 0.2, [
    [0, SOLDER.light],
    [0.5, '#b9c0c2'],
    [1, SOLDER.dark],
  ]);
  pen.beginPath();
  pen.roundRect(riser.from, y - h * 0.19, w * 0.8, h * 0.38, h * 0.16);
  pen.fill();
  pen.fillStyle = ENAMEL.mid;
  pen.fillRect(riser.from, y - h * 0.11, w * 0.28, h * 0.22);
  pen.fillStyle = 'rgba(255,235,210,.5)';
  pen.fillRect(riser.from, y - h / 2, w, 1);
}

function paintBars(pen: Pen, plan: SkinPlan): void {
  const { part, comm } = plan;
  const pitch = (360 / part.bars) * plan.perDeg;
  pen.fillStyle = MICA;
  pen.fillRect(comm.from, 0, comm.to - comm.from, plan.height);
  for (let b = 0; b < part.bars; b++) {
    eachRepeat(plan, part.barZeroDeg + (360 * b) / part.bars, (y) => paintBar(pen, comm, y, pitch, b));
  }
  paintTurning(pen, plan);
}

function paintBar(pen: Pen, comm: Stretch, y: number, pitch: number, bar: number): void {
  const h = pitch - Math.max(2.4, pitch * 0.1);
  const w = comm.to - comm.from;
  const tone = grain(bar + 31);
  pen.fillStyle = linear(pen, 0, y - h / 2, 0, y + h / 2, [
    [0, '#f0b57c'],
    [0.09, '#d98e52'],
    [0.5, tone > 0.5 ? '#cd7f44' : '#c4763c'],
    [0.93, '#a9602d'],
    [1, '#6b3717'],
  ]);
  pen.fillRect(comm.from, y - h / 2, w, h);
}

/** Marks of the lathe and the darker track the brushes leave on a commutator that has worked. */
function paintTurning(pen: Pen, plan: SkinPlan): void {
  const { from, to } = plan.comm;
  const w = to - from;
  pen.fillStyle = linear(pen, from, 0, to, 0, [
    [0, 'rgba(60,26,10,.0)'],
    [0.2, 'rgba(60,26,10,.30)'],
    [0.72, 'rgba(60,26,10,.26)'],
    [0.84, 'rgba(60,26,10,0)'],
  ]);
  pen.fillRect(from, 0, w, plan.height);
  for (let x = from + 1, i = 0; x < to; x += 2.3, i++) {
    const g = grain(i + 90);
    pen.fillStyle = g > 0.5 ? 'rgba(255,226,190,.09)' : 'rgba(50,20,6,.11)';
    pen.fillRect(x, 0, 0.7 + g * 0.5, plan.height);
  }
  pen.fillStyle = 'rgba(50,20,6,.55)';
  pen.fillRect(from, 0, 1.6, plan.height);
  pen.fillStyle = 'rgba(255,222,180,.5)';
  pen.fillRect(to - 2.4, 0, 1.2, plan.height);
}

/** Paints the whole outside of the armature, unrolled: x along the shaft, y the angle on the part. */
export function paintSkin(pen: Pen, plan: SkinPlan): void {
  paintCore(pen, plan);
  paintSlots(pen, plan);
  paintWinding(pen, plan);
  paintRisers(pen, plan);
  paintBars(pen, plan);
  pen.fillStyle = STEEL.dark;
}
