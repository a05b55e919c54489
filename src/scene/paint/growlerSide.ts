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
import type { Rect } from '../layout.ts';
import { BRASS, font, TAPE } from '../materials.ts';
import { projectSide, type SideGeometry } from '../project.ts';
import {
  disc,
  grain,
  linear,
  type Pen,
  polygon,
  radial,
  roundRect,
  type Stop,
  shadowed,
} from '../surface.ts';

/** The growler of the main view: where a point of its section, mm, stands on screen at a place along the shaft. */
export interface GrowlerStage {
  readonly left: number;
  readonly right: number;
  readonly s: number;
  readonly axisY: number;
  /** Screen height of the base's upper side at the near leg, px. */
  readonly floor: number;
  /** Height over the apex at which the near leg's outer flat meets the base, mm. */
  readonly foot: number;
  readonly at: (along: number, x: number, y: number) => [number, number];
}

export function growlerStage(g: SideGeometry, outerRadiusM: number, floor: number): GrowlerStage {
  const s = g.pxPerM / 1000;
  const rest = restHeight(outerRadiusM);
  const at = (along: number, x: number, y: number): [number, number] => {
    const p = projectSide(g.axisY, along, -x * s, (y - rest) * s);
    return [p.x, p.y];
  };
  const [, y0] = at(0, -OUTER, 0);
  const [, y1] = at(0, -OUTER, 1);
  return {
    left: g.x.coreLeft + 2,
    right: g.x.coreRight - 2,
    s,
    axisY: g.axisY,
    floor,
    foot: (floor - y0) / (y1 - y0),
    at,
  };
}

/** Part of the main view that the growler covers behind or before the armature, px. */
export function growlerBox(k: GrowlerStage, which: 'back' | 'front'): Rect {
  const edge = which === 'back' ? 46 * k.s : 4;
  const [left] = k.at(k.left, which === 'back' ? 0 : -OUTER, 0);
  const [, top] = which === 'back' ? k.at(0, FACE_TO + 5, FACE_TO) : k.at(0, -FACE_TO, FACE_TO);
  const x = left - edge - 4;
  return { x, y: top - 4, w: k.right + 8 * k.s + edge * 1.2 - x, h: k.floor + 24 - top + 4 };
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
  pen.save();
  pen.beginPath();
  pen.rect(k.left - 200, 0, 4000, k.floor + (dark ? -8 * k.s : 1));
  pen.clip();
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
  pen.restore();
}

/** How far the winding's ends stand out of the iron, and the height of their upper side over the apex, mm. */
const COIL_BULGE = 17;
const COIL_RISE = 5;

/** The taped end of the winding that stands out of the iron to one side, lying from the near leg to the far one. */
function coilEnd(pen: Pen, k: GrowlerStage, side: 'left' | 'right'): void {
  const sign = side === 'right' ? 1 : -1;
  const edge = side === 'right' ? k.right : k.left;
  const near = k.at(edge, COIL.left, COIL_RISE);
  const far = k.at(edge, COIL.right, COIL_RISE);
  const b = COIL_BULGE * k.s * sign;
  const r = 7 * k.s;
  const face = side === 'right' ? far[0] + b : near[0] + b;
  pen.save();
  pen.beginPath();
  pen.moveTo(near[0] - sign * 8, k.floor);
  pen.lineTo(near[0] - sign * 8, near[1]);
  pen.lineTo(far[0] - sign * 8, far[1]);
  pen.lineTo(far[0] + b - sign * r, far[1]);
  pen.quadraticCurveTo(far[0] + b, far[1], face, far[1] + r * 1.2);
  pen.lineTo(face, k.floor);
  pen.closePath();
  pen.fillStyle = linear(pen, near[0], 0, face, 0, [
    [0, '#4d4029'],
    [0.4, TAPE.mid],
    [0.66, TAPE.light],
    [1, TAPE.dark],
  ]);
  pen.fill();
  pen.clip();
  tapeTurns(pen, k, near, far, b, r, sign);
  const top = Math.min(near[1], far[1]);
  pen.fillStyle = linear(pen, 0, top, 0, k.floor, [
    [0, 'rgba(255,240,205,.16)'],
    [0.3, 'rgba(0,0,0,.06)'],
    [0.7, 'rgba(0,0,0,.34)'],
    [1, 'rgba(0,0,0,.72)'],
  ]);
  pen.fillRect(Math.min(near[0], face) - 30, top - 4, Math.abs(face - near[0]) + 60, k.floor - top + 8);
  pen.restore();
}

/** Turn upon turn of cotton tape round the bundle, from the near leg to the far one. */
function tapeTurns(
  pen: Pen,
  k: GrowlerStage,
  near: readonly [number, number],
  far: readonly [number, number],
  b: number,
  r: number,
  sign: number,
): void {
  for (let i = -1; i <= 11; i++) {
    const t = i / 11;
    const x = near[0] + (far[0] - near[0]) * t;
    const y = near[1] + (far[1] - near[1]) * t;
    for (const [dx, colour, width] of [
      [0, 'rgba(38,27,12,.62)', 1.5],
      [1.6, 'rgba(255,243,214,.22)', 1.1],
    ] as const) {
      pen.strokeStyle = colour;
      pen.lineWidth = width;
      pen.beginPath();
      pen.moveTo(x - sign * 10, y + dx);
      pen.lineTo(x + b - sign * r, y + dx);
      pen.quadraticCurveTo(x + b, y + dx, x + b + dx, y + r * 1.3);
      pen.lineTo(x + b + dx - sign * 3, k.floor);
      pen.stroke();
    }
  }
}

/** The cast base the growler stands on. */
function castBase(pen: Pen, k: GrowlerStage): void {
  const front = k.floor + 5;
  const back = k.floor - 22 * k.s;
  const left = k.left - 28 * k.s;
  const right = k.right + 30 * k.s;
  const shift = 16 * k.s;
  shadowed(pen, 26, 10, 8, 'rgba(0,0,0,.6)', () => {
    polygon(pen, [
      [left, front + 30],
      [left, front],
      [left + shift, back],
      [right + shift * 0.6, back],
      [right, front],
      [right, front + 30],
    ]);
    pen.fillStyle = '#1a262b';
    pen.fill();
  });
  polygon(pen, [
    [left, front],
    [left + shift, back],
    [right + shift * 0.6, back],
    [right, front],
  ]);
  pen.fillStyle = linear(pen, left, back, right, front, [
    [0, '#3a4b52'],
    [0.5, '#2a383e'],
    [1, '#1d292e'],
  ]);
  pen.fill();
  pen.fillStyle = linear(pen, 0, front, 0, front + 26, [
    [0, '#55676e'],
    [0.14, '#2a393f'],
    [1, '#10191d'],
  ]);
  pen.fillRect(left, front, right - left, 40);
}

/** What stands behind the armature: far jaw, the bottom of the V, the winding's ends. */
export function paintGrowlerBack(pen: Pen, k: GrowlerStage): void {
  castBase(pen, k);
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
    [-OUTER, k.foot],
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
    for (const y of [k.foot + 0.72 * (SHOULDER_TOP - k.foot)]) {
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
  const [cx, cy] = k.at((k.left + k.right) / 2, -OUTER, k.foot + 0.3 * (SHOULDER_TOP - k.foot));
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
