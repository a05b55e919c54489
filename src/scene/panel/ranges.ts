import { Container, type Sprite } from 'pixi.js';
import { RANGES_A, type RangeA } from '../../bench/action.ts';
import type { PanelLayout } from '../layout.ts';
import type { Easel } from '../studio/easel.ts';

/** Four plates beside the ammeter; the one pressed in is the range in use. */
export class Ranges {
  readonly node = new Container();
  private readonly plates: { range: RangeA; up: Sprite; down: Sprite }[] = [];

  constructor(panel: PanelLayout, easel: Easel, lettering: boolean) {
    RANGES_A.forEach((range, i) => {
      const box = panel.ranges[i]!;
      const [up, down] = [false, true].map((pressed) =>
        easel.placed('rangePlate', { w: box.w, h: box.h, range, pressed, lettering }, box),
      ) as [Sprite, Sprite];
      this.node.addChild(up, down);
      this.plates.push({ range, up, down });
    });
  }

  show(range: RangeA): void {
    for (const plate of this.plates) {
      plate.down.visible = plate.range === range;
      plate.up.visible = plate.range !== range;
    }
  }
}
