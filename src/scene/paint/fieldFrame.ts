import type { FieldFrameView } from '../../scenario/public/job.ts';
import { BRASS, COPPER } from '../materials.ts';
import type { FrameGeometry } from '../partShape.ts';
import { disc, grain, linear, type Pen, polygon, radial, roundRect, shadowed } from '../pen.ts';
import type { Point } from '../project.ts';

const RAD = Math.PI / 180;
type Joint = { readonly from: string; readonly to: string };

/** Angles of the four poles from the bottom, in the order in which the coils are joined. */
function polesOf(view: FieldFrameView): readonly number[] {
  const oneAfterAnother = view.coils[2]?.from === view.coils[1]?.to;
  return oneAfterAnother ? [-135, -45, 45, 135] : [-135, -45, 135, 45];
}

const at = (g: FrameGeometry, radius: number, deg: number): Point => ({
  x: g.x + g.r * radius * Math.sin(deg * RAD),
  y: g.y + g.r * radius * Math.cos(deg * RAD),
});

/** The yoke with pole shoes and coils, the straps between them, the insulated terminal; the brushes move and come apart. */
export function paintFieldFrame(pen: Pen, g: FrameGeometry, view: FieldFrameView): void {
  paintYoke(pen, g);
  const poles = polesOf(view);
  view.coils.forEach((coil, i) => {
    const deg = poles[i % 4]!;
    paintShoe(pen, g, deg);
    paintCoil(pen, g, deg, coil.to.startsWith('shunt') || coil.to === 'field:case');
  });
  paintStraps(pen, g, view, poles);
  paintTerminal(pen, g);
}

function paintYoke(pen: Pen, g: FrameGeometry): void {
  const { x, y, r } = g;
  shadowed(pen, 18, 3, 8, 'rgba(0,0,0,.65)', () => disc(pen, x, y, r, '#26343a'));
  disc(
    pen,
    x,
    y,
    r,
    radial(pen, x - r * 0.3, y - r * 0.5, r * 0.2, r * 1.5, [
      [0, '#7f9299'],
      [0.5, '#4d5f67'],
      [1, '#27353b'],
    ]),
  );
  pen.lineWidth = r * 0.045;
  pen.strokeStyle = 'rgba(236,246,246,.55)';
  pen.beginPath();
  pen.arc(x, y, r * 0.965, 0, Math.PI * 2);
  pen.stroke();
  disc(pen, x, y, r * 0.815, '#0c1519');
  disc(
    pen,
    x,
    y,
    r * 0.79,
    radial(pen, x, y, r * 0.2, r * 0.8, [
      [0, '#0a1114'],
      [1, '#1b272c'],
    ]),
  );
  paintBareSpot(pen, g);
}

/** Filed bright on the near side of the case, where a probe finds metal. */
function paintBareSpot(pen: Pen, g: FrameGeometry): void {
  pen.save();
  pen.beginPath();
  const from = (90 + 105 - 30) * RAD;
  const to = (90 + 105 + 30) * RAD;
  pen.arc(g.x, g.y, g.r * 0.985, from, to);
  pen.arc(g.x, g.y, g.r * 0.83, to, from, true);
  pen.closePath();
  pen.clip();
  pen.fillStyle = '#aebbbe';
  pen.fillRect(g.x - g.r, g.y - g.r, g.r, g.r * 2);
  for (let i = 0; i < 40; i++) {
    pen.strokeStyle = grain(i) > 0.5 ? 'rgba(255,255,255,.6)' : 'rgba(70,86,92,.5)';
    pen.lineWidth = 0.9;
    const y = g.y - g.r * 0.6 + grain(i + 5) * g.r * 1.3;
    pen.beginPath();
    pen.moveTo(g.x - g.r, y);
    pen.lineTo(g.x - g.r * 0.6, y + g.r * 0.16);
    pen.stroke();
  }
  pen.restore();
}

/** The iron a coil sits on, narrowing from the yoke and spreading again into its shoe. */
function paintShoe(pen: Pen, g: FrameGeometry, deg: number): void {
  const p = (radius: number, off: number): [number, number] => {
    const q = at(g, radius, deg + off);
    return [q.x, q.y];
  };
  polygon(pen, [
    p(0.8, -13),
    p(0.58, -17),
    p(0.5, -30),
    p(0.46, -33),
    p(0.46, 33),
    p(0.5, 30),
    p(0.58, 17),
    p(0.8, 13),
  ]);
  const a = at(g, 0.8, deg);
  const b = at(g, 0.46, deg);
  pen.fillStyle = linear(pen, a.x, a.y, b.x, b.y, [
    [0, '#53646c'],
    [0.7, '#8c9ca3'],
    [1, '#c7d2d5'],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(8,14,18,.7)';
  pen.lineWidth = 1.2;
  pen.stroke();
}

/** Heavy strip on edge, or for a shunt coil many turns of fine wire; bound with tape either way. */
function paintCoil(pen: Pen, g: FrameGeometry, deg: number, fine: boolean): void {
  pen.save();
  const c = at(g, 0.665, deg);
  pen.translate(c.x, c.y);
  pen.rotate(-deg * RAD);
  const w = g.r * 0.74;
  const h = g.r * 0.2;
  shadowed(pen, 5, 0, 3, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, -w / 2, -h / 2, w, h, h * 0.4);
    pen.fillStyle = fine ? '#5a1e14' : COPPER.dark;
    pen.fill();
  });
  pen.save();
  roundRect(pen, -w / 2, -h / 2, w, h, h * 0.4);
  pen.clip();
  const turns = fine ? 11 : 4;
  for (let i = 0; i < turns; i++) {
    const y = -h / 2 + (i * h) / turns;
    pen.fillStyle = linear(
      pen,
      0,
      y,
      0,
      y + h / turns,
      fine
        ? [
            [0, '#d0583c'],
            [1, '#5f1a10'],
          ]
        : [
            [0, '#f0b27a'],
            [0.4, COPPER.mid],
            [1, COPPER.dark],
          ],
    );
    pen.fillRect(-w / 2, y, w, h / turns - (fine ? 0.4 : 1));
  }
  pen.restore();
  for (const side of [-0.37, -0.13, 0.13, 0.37]) {
    roundRect(pen, w * side - g.r * 0.035, -h * 0.56, g.r * 0.07, h * 1.12, 2);
    pen.fillStyle = '#d9cba6';
    pen.fill();
    pen.strokeStyle = 'rgba(60,44,16,.6)';
    pen.lineWidth = 0.8;
    pen.stroke();
  }
  pen.restore();
}

function band(pen: Pen, width: number, draw: () => void): void {
  for (const [w, colour] of [
    [width, '#2c1208'],
    [width * 0.74, COPPER.mid],
    [width * 0.28, COPPER.light],
  ] as const) {
    pen.lineWidth = w;
    pen.strokeStyle = colour;
    pen.lineCap = 'round';
    pen.beginPath();
    draw();
    pen.stroke();
  }
}

/** Copper straps from the terminal and from coil to coil. */
function paintStraps(pen: Pen, g: FrameGeometry, view: FieldFrameView, poles: readonly number[]): void {
  const width = Math.max(4, g.r * 0.055);
  view.coils.forEach((coil: Joint, i) => {
    const deg = poles[i % 4]!;
    if (coil.from === 'field:terminal') {
      const end = at(g, 0.7, deg + (deg < 0 ? -26 : 26));
      band(pen, coil.to.startsWith('shunt') ? width * 0.45 : width, () => {
        pen.moveTo(g.terminal.x, g.y - g.r * 0.82);
        pen.quadraticCurveTo((g.terminal.x + end.x) / 2, g.y - g.r * 0.8, end.x, end.y);
      });
    }
    const next = view.coils.findIndex((other, k) => k > i && other.from === coil.to);
    if (next > 0) strapBetween(pen, g, deg, poles[next % 4]!, width);
  });
}

function strapBetween(pen: Pen, g: FrameGeometry, a: number, b: number, width: number): void {
  const turn = ((b - a + 540) % 360) - 180;
  const from = at(g, 0.74, a + Math.sign(turn) * 27);
  const to = at(g, 0.74, b - Math.sign(turn) * 27);
  const middle = at(g, 0.8, a + turn / 2);
  band(pen, width, () => {
    pen.moveTo(from.x, from.y);
    pen.quadraticCurveTo(middle.x, middle.y, to.x, to.y);
  });
}

/** A brass stud in an insulating bush through the yoke. */
function paintTerminal(pen: Pen, g: FrameGeometry): void {
  const { x, y } = g.terminal;
  const w = g.r * 0.15;
  roundRect(pen, x - w * 1.5, g.y - g.r * 1.03, w * 3, g.r * 0.22, 4);
  pen.fillStyle = '#5e2d1c';
  pen.fill();
  pen.strokeStyle = '#1f0d07';
  pen.lineWidth = 1;
  pen.stroke();
  roundRect(pen, x - w * 0.55, y - w * 1.1, w * 1.1, g.r * 0.32, 3);
  const brass = linear(pen, x - w, 0, x + w, 0, [
    [0, BRASS.dark],
    [0.35, BRASS.light],
    [1, '#5a3f12'],
  ]);
  pen.fillStyle = brass;
  pen.fill();
  for (let i = 0; i < 4; i++) {
    pen.fillStyle = 'rgba(50,32,4,.55)';
    pen.fillRect(x - w * 0.55, y - w * 1.0 + i * w * 0.34, w * 1.1, 1.2);
  }
  shadowed(pen, 3, 0, 2, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, x - w * 1.05, y + w * 0.35, w * 2.1, w * 0.85, 2);
    pen.fillStyle = brass;
    pen.fill();
  });
}

/** The end of each branch: a braided pigtail from its coil and the carbon brush it carries. */
export function paintFieldBrushes(pen: Pen, g: FrameGeometry, view: FieldFrameView): void {
  const poles = polesOf(view);
  const coilAt = (node: string) => view.coils.findIndex((coil) => coil.to === node);
  g.brushes.forEach((p, i) => {
    const node = `end:${i + 1}`;
    const own = coilAt(node);
    const by = own >= 0 ? own : coilAt(view.links.find((link) => link.to === node)?.from ?? '');
    const deg = poles[Math.max(0, by) % 4]!;
    const reach = i === 0 ? -1 : 1;
    const start = at(g, 0.72, own >= 0 ? deg : deg - 8);
    braid(pen, start, { x: p.x, y: p.y - g.brush.h * 0.4 }, reach * g.r * 0.1, Math.max(4, g.r * 0.06));
    carbon(pen, p, g.brush.w, g.brush.h);
  });
}

function braid(pen: Pen, a: Point, b: Point, bow: number, width: number): void {
  const draw = () => {
    pen.moveTo(a.x, a.y);
    pen.bezierCurveTo(a.x + bow, a.y + (b.y - a.y) * 0.5, b.x + bow, b.y - (b.y - a.y) * 0.4, b.x, b.y);
  };
  band(pen, width, draw);
  pen.save();
  pen.setLineDash([2.5, 3]);
  pen.strokeStyle = 'rgba(60,22,6,.7)';
  pen.lineWidth = width * 0.6;
  pen.lineCap = 'butt';
  pen.beginPath();
  draw();
  pen.stroke();
  pen.restore();
}

function carbon(pen: Pen, p: Point, w: number, h: number): void {
  shadowed(pen, 6, 1, 4, 'rgba(0,0,0,.6)', () => {
    roundRect(pen, p.x - w / 2, p.y - h / 2, w, h, 4);
    pen.fillStyle = linear(pen, p.x - w / 2, p.y - h / 2, p.x + w / 2, p.y + h / 2, [
      [0, '#565c60'],
      [0.4, '#34393c'],
      [1, '#17191b'],
    ]);
    pen.fill();
  });
  pen.strokeStyle = 'rgba(210,218,220,.4)';
  pen.lineWidth = 1;
  pen.stroke();
  roundRect(pen, p.x - w * 0.16, p.y - h * 0.5, w * 0.32, h * 0.24, 2);
  pen.fillStyle = COPPER.mid;
  pen.fill();
}

/** The fibre slip: between the brushes when they are kept apart, lying beside them when they are not. */
export function paintSlip(pen: Pen, g: FrameGeometry, apart: boolean): void {
  const [a, b] = g.brushes;
  const w = apart ? g.r * 0.12 : g.r * 0.5;
  const h = apart ? g.brush.h * 1.25 : g.r * 0.12;
  const x = (a.x + b.x) / 2;
  const y = apart ? a.y : a.y + g.brush.h * 0.5 + 11;
  shadowed(pen, 4, 0, 2, 'rgba(0,0,0,.5)', () => {
    roundRect(pen, x - w / 2, y - h / 2, w, h, 2);
    pen.fillStyle = linear(pen, x - w / 2, y, x + w / 2, y, [
      [0, '#d9b47c'],
      [1, '#9c6f39'],
    ]);
    pen.fill();
  });
}
