import { Batcher, BatcherPipe, BatchGeometry, type InstructionSet, type Shader } from 'pixi.js';

/** Pictures in the order they lie. The plain canvas takes each from its sprite: no corners to pack, no shader to make. */
class PlainBatcher extends Batcher {
  override readonly name = 'default';
  override readonly geometry = new BatchGeometry();
  // The plain canvas is handed the shader and leaves it; making one would ask the browser for WebGL.
  override readonly shader = null as unknown as Shader;
  // The library divides by it.
  protected override readonly vertexSize = 1;

  override packAttributes(): void {}
  override packQuadAttributes(): void {}
  override packIndex(): void {}
  override packQuadIndex(): void {}
}

/** Gathers pictures for the plain canvas. */
export class PlainBatches extends BatcherPipe {
  override buildStart(instructionSet: InstructionSet): void {
    // The library would make the batcher of a graphics processor where there is none yet.
    // biome-ignore lint/complexity/useLiteralKeys: the library keeps it private, and offers no other way in.
    this['_batchersByInstructionSet'][instructionSet.uid] ??= {
      default: new PlainBatcher({ maxTextures: this.renderer.limits.maxBatchableTextures }),
    };
    super.buildStart(instructionSet);
  }
}
