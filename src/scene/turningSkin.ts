import { Container, Mesh, MeshGeometry, type Texture } from 'pixi.js';
import { fullTurn, onSide, TILT_DEG } from './project.ts';
import { SKIN_TURNS } from './skinPlan.ts';

/** A stretch of the armature as a solid of revolution: rings of given radius along the shaft, px. */
export interface Ring {
  /** Along the shaft in the main view, px. */
  readonly x: number;
  readonly radius: number;
  /** Along the unrolled skin, 0..1. */
  readonly u: number;
}

const ROWS = 40;

/**
 * The visible half of a turned part, with the unrolled skin laid over it. The shape never changes: turning the part
 * only shifts which rows of the skin it shows.
 */
export class TurningSkin {
  readonly node = new Container();
  private readonly geometry: MeshGeometry;
  private readonly rings: readonly Ring[];
  private readonly uvs: Float32Array;

  constructor(texture: Texture, axisY: number, rings: readonly Ring[]) {
    this.rings = rings;
    const count = rings.length * (ROWS + 1);
    this.uvs = new Float32Array(count * 2);
    this.geometry = new MeshGeometry({
      positions: surfacePoints(axisY, rings),
      uvs: this.uvs,
      indices: surfaceFaces(rings.length),
    });
    this.node.addChild(new Mesh({ geometry: this.geometry, texture }));
    this.turnTo(0);
  }

  /** @param rotationDeg rotation of the part, degrees */
  turnTo(rotationDeg: number): void {
    const first = fullTurn(-180 - TILT_DEG - rotationDeg);
    let at = 0;
    for (let row = 0; row <= ROWS; row++) {
      const v = (first + (180 * row) / ROWS) / (360 * SKIN_TURNS);
      for (const ring of this.rings) {
        this.uvs[at++] = ring.u;
        this.uvs[at++] = v;
      }
    }
    this.geometry.getBuffer('aUV').update();
  }
}

function surfacePoints(axisY: number, rings: readonly Ring[]): Float32Array {
  const points: number[] = [];
  for (let row = 0; row <= ROWS; row++) {
    for (const ring of rings) {
      const p = onSide(axisY, ring.x, ring.radius, -180 - TILT_DEG + (180 * row) / ROWS);
      points.push(p.x, p.y);
    }
  }
  return new Float32Array(points);
}

function surfaceFaces(columns: number): Uint32Array {
  const faces: number[] = [];
  for (let row = 0; row < ROWS; row++) {
    for (let column = 0; column + 1 < columns; column++) {
      const a = row * columns + column;
      const b = a + columns;
      faces.push(a, a + 1, b, a + 1, b + 1, b);
    }
  }
  return new Uint32Array(faces);
}
