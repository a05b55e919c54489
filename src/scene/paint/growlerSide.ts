import {
  COIL,
  FACE_FROM,
  FACE_TO,
  FAR_LEG,
  FOOT,
  NEAR_LEG,
  OUTER,
  restHeight,
  SHOULDER_TOP,
} from '../growlerShape.ts';
import { BRASS, font, TAPE } from '../materials.ts';
import { projectSide, type SideGeometry } from '../project.ts';
import { disc, grain, linear, type Pen, polygon, radial, roundRect, type Stop } from '../surface.ts';

/** The growler of the main view: where a point of its section, mm, stands on screen at a place along the shaft. */
export interface GrowlerStage {
  readonly left: number;
  readonly right: number;
  readonly s: number;
  readonly axisY: number;
  readonly at: (along: number, x: number, y: number) => [number, number];
}

export function growlerStage(g: SideGeometry, outerRadiusM: number): GrowlerStage {
  const s = g.pxPerM / 1000;
  const rest = restHeight(outerRadiusM);
  return {
    left: g.x.coreLeft + 2,
    right: g.x.coreRight - 2,
    s,
    axisY: g.axisY,
    at: (along, x, y) => {
      const p = projectSide(g.axisY, along, -x * s, (y - rest) * s);
      return [p.x, p.y];
    },
  };
}

/** A flat of the iron between two places of the section, drawn along the whole stack with its laminations. */
function flat(
  pen: Pen,
  k: GrowlerStage,
  a: readonly [number, number],
  b: readonly [number, number],
  stops: readonly Stop[],
): void {
  const corners = [k.at(k.left, ...a), k.at(k.right, ...a), k.at(k.right, ...b), k.at(k.left, ...b)];
  pen.save();
  polygon(pen, corners);
  pen.fillStyle = linear(pen, 0, corners[0]![1], 0, corners[2]![1], stops);
  pen.fill();
  pen.clip();
  const [ax, ay] = k.at(0, ...a);
  const [bx, by] = k.at(0, ...b);
  for (let x = k.left, i = 0; x < k.right; x += 2.1, i++) {
    pen.strokeStyle = grain(i) > 0.5 ? 'rgba(226,238,240,.13)' : 'rgba(8,16,20,.30)';
    pen.lineWidth = 0.8;
    pen.beginPath();
    pen.moveTo(x + ax, ay);
    pen.lineTo(x + bx, by);
    pen.stroke();
  }
  pen.restore();
}

function endFace(pen: Pen, k: GrowlerStage, section: typeof NEAR_LEG, dark: boolean): void {
  polygon(
    pen,
    section.map(([x, y]) => k.at(k.right, x, y)),
  );
  const [, top] = k.at(k.right, 0, FACE_TO);
  const [, foot] = k.at(k.right, 0, FOOT);
  pen.fillStyle = linear(pen, 0, top, 0, foot, [
    [0, dark ? '#3d4e57' : '#6d808a'],
    [0.4, dark ? '#2d3c44' : '#4b5d66'],
    [1, '#1d2a31'],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(214,230,232,.3)';
  pen.lineWidth = 1;
  pen.stroke();
}

/** The taped end of the winding that stands out of the iron to one side. */
function coilEnd(pen: Pen, k: GrowlerStage, side: 'left' | 'right'): void {
  const sign = side === 'right' ? 1 : -1;
  const edge = side === 'right' ? k.right : k.left;
  const [nearX, topY] = k.at(edge, COIL.left, COIL.top);
  const [farX] = k.at(edge, COIL.right, COIL.top);
  const [, footY] = k.at(edge, COIL.left, COIL.bottom - 12);
  const bulge = 15 * k.s * sign;
  const inner = side === 'right' ? nearX - 6 : farX + 6;
  const outer = (side === 'right' ? (nearX + farX) / 2 : nearX) + bulge;
  const r = 8 * k.s;
  pen.beginPath();
  pen.moveTo(inner, topY - 2 * k.s);
  pen.lineTo(outer - sign * r, topY);
  pen.quadraticCurveTo(outer, topY, outer, topY + r);
  pen.lineTo(outer, footY);
  pen.lineTo(inner, footY);
  pen.closePath();
  pen.fillStyle = linear(pen, inner, 0, outer, 0, [
    [0, '#2b2319'],
    [0.35, TAPE.mid],
    [0.62, '#c2ab80'],
    [0.8, TAPE.mid],
    [1, '#3d3122'],
  ]);
  pen.fill();
  pen.save();
  pen.clip();
  for (let i = 0; i < 30; i++) {
    const y = topY - 8 * k.s + i * 3.4 * k.s;
    pen.strokeStyle = i % 2 ? 'rgba(40,28,14,.5)' : 'rgba(255,240,205,.14)';
    pen.lineWidth = 1.2;
    pen.beginPath();
    pen.moveTo(inner, y);
    pen.quadraticCurveTo((inner + outer) / 2, y + 2.4 * k.s, outer, y + 7 * k.s);
    pen.stroke();
  }
  pen.fillStyle = linear(pen, 0, topY, 0, footY, [
    [0, 'rgba(0,0,0,.35)'],
    [0.14, 'rgba(0,0,0,0)'],
    [0.6, 'rgba(0,0,0,.2)'],
    [1, 'rgba(0,0,0,.7)'],
  ]);
  pen.fillRect(Math.min(inner, outer), topY - 10, Math.abs(outer - inner), footY - topY + 10);
  pen.restore();
}

/** What stands behind the armature: far jaw, the bottom of the V, the winding's ends. */
export function paintGrowlerBack(pen: Pen, k: GrowlerStage): void {
  coilEnd(pen, k, 'left');
  flat(
    pen,
    k,
    [FACE_TO + 4.4, FACE_TO - 0.4],
    [FACE_TO, FACE_TO],
    [
      [0, '#9fb0b7'],
      [1, '#c2d0d4'],
    ],
  );
  flat(
    pen,
    k,
    [FACE_TO, FACE_TO],
    [FACE_FROM, FACE_FROM],
    [
      [0, '#8ea0a8'],
      [0.25, '#5c6f79'],
      [1, '#26343c'],
    ],
  );
  flat(
    pen,
    k,
    [FACE_FROM, FACE_FROM],
    [-FACE_FROM, -6],
    [
      [0, '#16222a'],
      [1, '#070c10'],
    ],
  );
  endFace(pen, k, FAR_LEG, true);
  coilEnd(pen, k, 'right');
}

/** What stands before the armature: the near jaw, its outer flat with the maker's plate left blank but for the bench. */
export function paintGrowlerFront(pen: Pen, k: GrowlerStage, plate: string): void {
  endFace(pen, k, NEAR_LEG, false);
  flat(
    pen,
    k,
    [-FACE_TO, FACE_TO],
    [-38.5, FACE_TO - 0.4],
    [
      [0, '#b9c7cc'],
      [1, '#dfe8ea'],
    ],
  );
  flat(
    pen,
    k,
    [-38.5, FACE_TO - 0.4],
    [-OUTER, SHOULDER_TOP],
    [
      [0, '#c9d5d9'],
      [1, '#7f929b'],
    ],
  );
  flat(
    pen,
    k,
    [-OUTER, SHOULDER_TOP],
    [-OUTER, FOOT],
    [
      [0, '#6f838d'],
      [0.3, '#54666f'],
      [0.8, '#36464f'],
      [1, '#25333b'],
    ],
  );
  bolts(pen, k);
  benchPlate(pen, k, plate);
}

function bolts(pen: Pen, k: GrowlerStage): void {
  const r = 3 * k.s;
  for (const share of [0.08, 0.92]) {
    for (const y of [18, -12]) {
      const [x, cy] = k.at(k.left + (k.right - k.left) * share, -OUTER, y);
      disc(pen, x, cy + r * 0.25, r * 1.12, 'rgba(4,10,14,.6)');
      disc(
        pen,
        x,
        cy,
        r,
        radial(pen, x - r * 0.3, cy - r * 0.4, 0, r * 1.1, [
          [0, '#e4ecee'],
          [0.55, '#8a9ca5'],
          [1, '#475862'],
        ]),
      );
      pen.strokeStyle = 'rgba(20,30,36,.8)';
      pen.lineWidth = r * 0.24;
      pen.beginPath();
      pen.moveTo(x - r * 0.55, cy + r * 0.3);
      pen.lineTo(x + r * 0.55, cy - r * 0.3);
      pen.stroke();
    }
  }
}

function benchPlate(pen: Pen, k: GrowlerStage, text: string): void {
  if (text === '') return;
  const [cx, cy] = k.at((k.left + k.right) / 2, -OUTER, 4);
  const w = (k.right - k.left) * 0.56;
  const h = 10.5 * k.s;
  roundRect(pen, cx - w / 2, cy - h / 2, w, h, 3);
  pen.fillStyle = linear(pen, 0, cy - h / 2, 0, cy + h / 2, [
    [0, BRASS.light],
    [0.5, BRASS.mid],
    [1, BRASS.dark],
  ]);
  pen.fill();
  pen.strokeStyle = 'rgba(40,26,6,.7)';
  pen.lineWidth = 1;
  pen.stroke();
  pen.fillStyle = '#33240a';
  pen.font = font(Math.max(7, Math.min(h * 0.4, 13)), 700);
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.fillText(text, cx, cy + 0.5, w - 10);
}
