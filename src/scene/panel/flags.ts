import { Container, type Sprite } from 'pixi.js';
import type { Observation } from '../../bench/observation.ts';
import type { Rect } from '../layout.ts';
import type { Easel } from '../studio/easel.ts';

type Supply = Observation['supply'];
const SUPPLIES: readonly Supply[] = ['off', 'on', 'cutOut', 'isolated'];

/** Pilot light and the flag of the thermal cut-out: one picture per state, told apart by shape and word. */
export class Flags {
  readonly node = new Container();
  private readonly pictures = new Map<Supply, Sprite>();

  constructor(box: Rect, easel: Easel, lettering: boolean) {
    for (const supply of SUPPLIES) {
      const picture = easel.placed('flags', { w: box.w, h: box.h, supply, lettering }, box);
      this.pictures.set(supply, picture);
      this.node.addChild(picture);
    }
  }

  show(supply: Supply): void {
    for (const [each, picture] of this.pictures) picture.visible = each === supply;
  }
}
