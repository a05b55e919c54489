import { Mesh, MeshGeometry, type Texture } from 'pixi.js';
import type { Point } from './project.ts';

const COLUMNS = 14;

/** A ribbon of steel that can be bent: its middle line is given, its width stands upright on the screen. */
export class Blade {
  readonly node: Mesh;
  private readonly geometry: MeshGeometry;
  private readonly positions = new Float32Array((COLUMNS + 1) * 4);

  constructor(texture: Texture) {
    const uvs: number[] = [];
    const faces: number[] = [];
    for (let i = 0; i <= COLUMNS; i++) uvs.push(i / COLUMNS, 0, i / COLUMNS, 1);
    for (let i = 0; i < COLUMNS; i++) {
      const a = i * 2;
      faces.push(a, a + 2, a + 1, a + 2, a + 3, a + 1);
    }
    this.geometry = new MeshGeometry({
      positions: this.positions,
      uvs: new Float32Array(uvs),
      indices: new Uint32Array(faces),
    });
    this.node = new Mesh({ geometry: this.geometry, texture });
  }

  /** @param line middle line of the ribbon for a share 0..1 of its length, px; @param height drawn height, px */
  lay(line: (share: number) => Point, height: number): void {
    for (let i = 0; i <= COLUMNS; i++) {
      const p = line(i / COLUMNS);
      this.positions.set([p.x, p.y - height / 2, p.x, p.y + height / 2], i * 4);
    }
    this.geometry.getBuffer('aPosition').update();
  }
}
